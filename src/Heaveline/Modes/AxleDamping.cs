using Heaveline.Models;
using Heaveline.Numerics;

namespace Heaveline.Modes;

/// <summary>
/// One axle's damping at zero velocity about the trim, and the ratio it makes: ζ = c/(2√(k·m)) with k the axle's rate without tyres while
/// the body swings on it and m the sprung mass on the axle. A fluid line's resistance is in it, friction is not.
/// </summary>
public sealed record AxleDamping
{
    /// <summary>c of the whole axle at the wheels while they rise, N s/m.</summary>
    public required double Bump { get; init; }

    /// <summary>c of the whole axle at the wheels while they fall, N s/m.</summary>
    public required double Rebound { get; init; }

    /// <summary>2√(k·m) that the ratios refer to, N s/m.</summary>
    public required double Critical { get; init; }

    /// <summary>Mean of both slopes: what a linear model counts with, and the limit of equivalent linearisation for small motions, N s/m.</summary>
    public double Mean => 0.5 * (Bump + Rebound);

    /// <summary>Damping ratio of the mean (–).</summary>
    public double Ratio => Mean / Critical;

    /// <summary>Damping ratio of the bump slope (–).</summary>
    public double BumpRatio => Bump / Critical;

    /// <summary>Damping ratio of the rebound slope (–).</summary>
    public double ReboundRatio => Rebound / Critical;

    internal static AxleDamping Of(RideModel model, int firstWheel, double axleRate, double sprungMass, double lineDamping) => new()
    {
        Bump = Slope(model.Numbers, firstWheel, +1.0) + lineDamping,
        Rebound = Slope(model.Numbers, firstWheel, -1.0) + lineDamping,
        Critical = 2.0 * Math.Sqrt(axleRate * sprungMass),
    };

    // The elements' own slopes a hair to one side of zero velocity, both wheels of the axle moving together.
    private static double Slope(RideNumbers numbers, int first, double side)
    {
        var slope = 0.0;
        foreach (var element in numbers.Elements.All)
        {
            var share = element.Sight.Wheels[first] + element.Sight.Wheels[first + 1];
            var at = DualLane.Of(numbers.AtTrim(element.Sight));
            slope += share * element.Force(at, new DualLane(side * 1e-12 * share, share)).Slope;
        }

        return slope;
    }
}
