using System.Collections.Immutable;

namespace Heaveline.Drives.Identification;

/// <summary>The gentler or the harder half of a drive's windows, and the car that it tells by itself.</summary>
public sealed record MotionHalf
{
    /// <summary>How many windows it holds.</summary>
    public required int Windows { get; init; }

    /// <summary>Root mean square speed of the dampers over them, front and rear together, m/s.</summary>
    public required double TravelSpeed { get; init; }

    /// <summary>Root mean square pitch over them, rad.</summary>
    public required double PitchMotion { get; init; }

    /// <summary>Its numbers with their 90 % intervals, in the order of <see cref="CarNumber"/>.</summary>
    public required ImmutableArray<CarEstimate> Estimates { get; init; }

    /// <summary>The estimate of a number.</summary>
    public CarEstimate Of(CarNumber number) => Estimates[(int)number];
}
