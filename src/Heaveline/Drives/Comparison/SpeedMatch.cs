namespace Heaveline.Drives.Comparison;

/// <summary>How far the speeds of two drives meet, over a site or a kind of site.</summary>
public sealed record SpeedMatch
{
    /// <summary>Slowest and fastest pass before, m/s.</summary>
    public required (double Slowest, double Fastest) Before { get; init; }

    /// <summary>Slowest and fastest pass after, m/s.</summary>
    public required (double Slowest, double Fastest) After { get; init; }

    /// <summary>The slowest speed that counts, m/s: the higher of the two slowest, less a margin.</summary>
    public required double From { get; init; }

    /// <summary>The fastest speed that counts, m/s: the lower of the two fastest, and a margin.</summary>
    public required double To { get; init; }

    /// <summary>Whether speeds are alike: they meet, and the means of what counts are less than the width of the meeting apart.</summary>
    public required bool IsAlike { get; init; }

    /// <summary>Whether a speed counts.</summary>
    public bool Holds(double speed) => speed >= From && speed <= To;
}
