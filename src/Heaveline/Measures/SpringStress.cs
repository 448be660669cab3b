using Heaveline.Cars;
using Heaveline.Models;

namespace Heaveline.Measures;

/// <summary>Largest stress of one spring whose wire, leaves or bar are known: standing, and with the wheel in full bump.</summary>
public sealed record SpringStress
{
    /// <summary>Which stress ("shear", "bending").</summary>
    public required string Kind { get; init; }

    /// <summary>Force on the spring at trim, N.</summary>
    public required double ForceAtTrim { get; init; }

    /// <summary>Stress at trim, Pa.</summary>
    public required double AtTrim { get; init; }

    /// <summary>
    /// Stress when both wheels of the axle meet their bump stops' hard end (their stops' first touch when no end
    /// is given), Pa; null without a bump stop.
    /// </summary>
    public required double? AtFullBump { get; init; }

    /// <summary>Wheel travel from the reference state at which <see cref="AtFullBump"/> holds, m; null without a bump stop.</summary>
    public required double? FullBump { get; init; }

    internal static SpringStress? Of(RideModel model, int i)
    {
        var axle = model.Car.Axles[i / 2];
        if (axle.Spring.Law is not LinearSpring { Dimensions: { } dimensions })
        {
            return null;
        }

        var spring = model.Numbers.Elements.Springs[i];
        // A two-wheeler's corners are halves of one spring.
        var whole = model.Rolls ? 1.0 : 2.0;
        double ForceAt(double own, double other)
        {
            var share = spring.Sight.Wheels[i];
            var travel = axle.Spring.MotionRatio.Travel((share * own) + ((1.0 - share) * other));
            return whole * spring.OwnForceAt(travel);
        }

        var trim = model.Trim.Travel;
        var force = ForceAt(trim[i], trim[i ^ 1]);
        double? full = axle.BumpStop is { } stop ? stop.Clearance.Si + (stop.SolidAfter?.Si ?? 0.0) : null;
        return new SpringStress
        {
            Kind = dimensions.StressKind,
            ForceAtTrim = force,
            AtTrim = dimensions.StressUnder(force),
            AtFullBump = full is { } s ? dimensions.StressUnder(ForceAt(s, s)) : null,
            FullBump = full,
        };
    }
}
