namespace Heaveline.Ties;

/// <summary>One reading beside what the car of the file and the fitted car would have shown.</summary>
public sealed record TieMatch
{
    /// <summary>What was read, in words: "front left at 20 km/h".</summary>
    public required string Words { get; init; }

    /// <summary>Number of the pass from 0; null for swings and heights.</summary>
    public required int? Pass { get; init; }

    /// <summary>Whether it is of swings counted.</summary>
    public bool IsSwings { get; init; }

    /// <summary>The reading: a tie's travel at the rod or a fall of the body, m; a frequency, Hz.</summary>
    public required double Read { get; init; }

    /// <summary>One standard deviation of it, with where friction lets the car stand.</summary>
    public required double Spread { get; init; }

    /// <summary>Whether it is the least that was reached.</summary>
    public required bool IsAtLeast { get; init; }

    /// <summary>The car file's car.</summary>
    public required double ByFile { get; init; }

    /// <summary>The fitted car.</summary>
    public required double ByFit { get; init; }

    /// <summary>Reading less the fitted car over the standard deviation; 0 for a least that was passed.</summary>
    public double Miss => IsAtLeast && ByFit >= Read ? 0.0 : (Read - ByFit) / Spread;
}
