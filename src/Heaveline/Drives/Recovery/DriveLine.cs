using System.Collections.Immutable;
using System.Globalization;
using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Drives.Recovery;

/// <summary>How a car is driven over time: from point to point speed and yaw rate go over as 3u² − 2u³.</summary>
public sealed record DriveLine
{
    private readonly ChangingSpeed turns = null!;

    /// <summary>The points, in time, two or more, the first at 0 s.</summary>
    public required ImmutableArray<DrivePoint> Points
    {
        get;
        init
        {
            field = IsInOrder(value)
                ? value
                : throw new RefusedValueException(
                    "points of a planted drive",
                    value.IsDefault ? "none" : value.Length.ToString(CultureInfo.InvariantCulture),
                    "two or more with rising times from 0 s on, speeds from 0 to 120 m/s",
                    "Sort the points by time.");
            double[] times = [.. value.Select(p => p.Time)];
            Speeds = new(times, [.. value.Select(p => p.Speed)]);
            turns = new(times, [.. value.Select(p => p.YawRate)]);
        }
    }

    /// <summary>How long it is, s.</summary>
    public double Length => Points[^1].Time;

    internal ChangingSpeed Speeds { get; private init; } = null!;

    /// <summary>Distance from the start, m.</summary>
    public double Distance(double time)
    {
        Speeds.At(time, out var distance, out _);
        return distance;
    }

    /// <summary>Speed, m/s.</summary>
    public double Speed(double time)
    {
        Speeds.At(time, out _, out var speed);
        return speed;
    }

    /// <summary>Rate of the speed, m/s².</summary>
    public double SpeedRate(double time) => Speeds.Rate(time);

    /// <summary>Yaw rate, rad/s.</summary>
    public double YawRate(double time)
    {
        turns.At(time, out _, out var rate);
        return rate;
    }

    /// <summary>When a distance is reached, s; not a number where it is not.</summary>
    public double TimeAt(double distance)
    {
        if (!(distance >= 0.0 && distance <= Distance(Length)))
        {
            return double.NaN;
        }

        var (low, high) = (0.0, Length);
        for (var k = 0; k < 60; k++)
        {
            var middle = 0.5 * (low + high);
            (low, high) = Distance(middle) < distance ? (middle, high) : (low, middle);
        }

        return 0.5 * (low + high);
    }

    private static bool IsInOrder(ImmutableArray<DrivePoint> points) =>
        !points.IsDefault && points.Length > 1 && points[0].Time == 0.0
        && points.All(p => p.Speed >= 0.0 && p.Speed <= DrivingSpeed.Fastest && double.IsFinite(p.YawRate))
        && Enumerable.Range(1, points.Length - 1).All(i => points[i].Time > points[i - 1].Time);
}
