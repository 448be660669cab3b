using System.Collections.Immutable;

namespace Heaveline.Drives.Recovery;

/// <summary>What a change would do on the very road of a drive. Its differences are to be believed, its levels less.</summary>
public sealed record Forecast
{
    /// <summary>The car before, in words.</summary>
    public required string Car { get; init; }

    /// <summary>The change, in words.</summary>
    public required string Change { get; init; }

    /// <summary>The events, in time.</summary>
    public required ImmutableArray<ForecastPass> Passes { get; init; }

    /// <summary>The headline's change over all events, the mean of its logarithms (–).</summary>
    public required Bracket Headline { get; init; }

    /// <summary>The hit's change over all events, likewise (–).</summary>
    public required Bracket Hit { get; init; }

    /// <summary>How many times car and road were drawn for the intervals.</summary>
    public required int Draws { get; init; }

    /// <summary>Whether a car file was driven, or the car identified from the drive.</summary>
    public required bool IsOfFile { get; init; }
}
