using Heaveline.Roads;

namespace Heaveline.Drives.Recovery;

/// <summary>How rough a stretch of the road of a drive is between its bumps, both tracks averaged.</summary>
public sealed record RoughStretch
{
    /// <summary>Where it begins, m along the drive.</summary>
    public required double From { get; init; }

    /// <summary>Where it ends, m along the drive.</summary>
    public required double To { get; init; }

    /// <summary>When it is entered, s since the log's start.</summary>
    public required double At { get; init; }

    /// <summary>How much of it was read, m: bumps, standstill and what the log drops are left out.</summary>
    public required double Read { get; init; }

    /// <summary>Mean speed over what was read, m/s.</summary>
    public required double Speed { get; init; }

    /// <summary>Displacement density at 0.1 cycles/m of a road of density G·(n/0.1)⁻², one-sided, m³.</summary>
    public required double Density { get; init; }

    /// <summary>Lower end of its 90 % interval, m³.</summary>
    public required double Low { get; init; }

    /// <summary>Upper end of its 90 % interval, m³.</summary>
    public required double High { get; init; }

    /// <summary>The shortest wave that it rests on, m.</summary>
    public required double ShortestWave { get; init; }

    /// <summary>The longest wave that it rests on, m.</summary>
    public required double LongestWave { get; init; }

    /// <summary>Whether it is told: its interval spans less than the four times that a class does.</summary>
    public bool IsTold => High < 4.0 * Low;

    /// <summary>The class of ISO 8608 that its density falls into.</summary>
    public RoadClass Class => RoadClass.Of(new(Density));

    /// <summary>The smoothest class that the interval reaches.</summary>
    public RoadClass Smoothest => RoadClass.Of(new(Low));

    /// <summary>The roughest class that the interval reaches.</summary>
    public RoadClass Roughest => RoadClass.Of(new(High));
}
