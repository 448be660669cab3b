using Heaveline.Cars;
using Heaveline.Tuning;

namespace Heaveline.Drives.Recovery;

/// <summary>A car with its things multiplied, one factor each of <see cref="TwinScale"/>.</summary>
internal static class TwinScales
{
    /// <summary>How many there are.</summary>
    public const int Count = 6;

    /// <summary>The car with factors.</summary>
    /// <param name="car">The car.</param>
    /// <param name="factor">Factors in the order of <see cref="TwinScale"/>, above 0, shape (6).</param>
    public static Car Of(Car car, ReadOnlySpan<double> factor)
    {
        var friction = factor[(int)TwinScale.Friction];
        var inertia = factor[(int)TwinScale.PitchInertia];
        return car with
        {
            Front = Axle(car.Front, factor[(int)TwinScale.FrontSpring], factor[(int)TwinScale.FrontDamper], friction),
            Rear = Axle(car.Rear, factor[(int)TwinScale.RearSpring], factor[(int)TwinScale.RearDamper], friction),
            Body = car.Body.PitchInertia is { } given
                ? car.Body with { PitchInertia = given.Times(inertia) }
                : car.Body with { DynamicIndex = car.Body.DynamicIndex.Times(inertia) },
        };
    }

    private static Axle Axle(Axle axle, double spring, double damper, double friction)
    {
        // A damping ratio is one of the spring's rate: it must not follow the spring.
        var force = axle.Damper.Law is RatioDamper ? damper / Math.Sqrt(spring) : damper;
        return axle with
        {
            Spring = spring == 1.0 ? axle.Spring : axle.Spring.WithLaw(ScaledLaws.Stiffer(axle.Spring.Law, spring)),
            Damper = force == 1.0 ? axle.Damper : axle.Damper with { Law = ScaledLaws.Stronger(axle.Damper.Law, force) },
            Friction = friction == 1.0 ? axle.Friction : axle.Friction with { HalfWidth = axle.Friction.HalfWidth.Times(friction) },
        };
    }
}
