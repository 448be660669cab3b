using Heaveline.Cars;
using Heaveline.Quantities;

namespace Heaveline.Models;

internal sealed partial class CornerLaws
{
    /// <summary>
    /// Compiles a car's elements. What the corner springs carry in the reference state is the sprung load less
    /// what dampers' gas and interconnection carry.
    /// </summary>
    /// <exception cref="RefusedValueException">An element that cannot stand as described: named.</exception>
    public static CornerLaws From(Car car)
    {
        // A two-wheeler is computed as two coinciding halves, each with half of every element.
        var laws = new CornerLaws { PerHalf = car.Kind == VehicleKind.TwoWheeler ? 0.5 : 1.0 };
        double[] sprung =
        [
            SprungLoad(car.Weighing.FrontLeft.Si, car.Front), SprungLoad(car.Weighing.FrontRight.Si, car.Front),
            SprungLoad(car.Weighing.RearLeft.Si, car.Rear), SprungLoad(car.Weighing.RearRight.Si, car.Rear),
        ];
        double[] onWheel = [.. sprung];
        laws.SetInterconnection(car, sprung);
        for (var i = 0; i < 4; i++)
        {
            var axle = car.Axles[i / 2];
            var end = i < 2 ? "front" : "rear";
            laws.SetPlaces(axle, i, end);
            var carried = laws.AtElement(sprung, i, laws.SpringShare[i]);
            laws.SetSpring(axle, i, carried, end);
            laws.SetDamper(axle, i, laws.SpringCarried(axle, 0.5 * (sprung[i] + sprung[i ^ 1]), i), 0.5 * (onWheel[i] + onWheel[i ^ 1]));
            laws.SetStops(axle, i);
            laws.Bar[i] = car.Kind == VehicleKind.TwoWheeler ? 0.0 : axle.AntiRollBar.Si;
            laws.Friction[i] = laws.PerHalf * axle.Friction.HalfWidth.Si;
            laws.PreSliding[i] = axle.Friction.PreSliding.Si;
            laws.FrictionSpeedSquared[i] = axle.Friction.SpeedScale.Si * axle.Friction.SpeedScale.Si;
            if (laws.Friction[i] > 0.0)
            {
                laws.Needs |= Needs.Friction;
            }
        }

        return laws;
    }

    private static double SprungLoad(double weighed, Axle axle) => (weighed - (0.5 * axle.UnsprungMass.Si)) * Gravity.Standard;

    private void SetPlaces(Axle axle, int i, string end)
    {
        if (axle.Suspension != SuspensionKind.SolidAxle)
        {
            return;
        }

        if (axle.RollInertia is null)
        {
            throw new RefusedValueException(
                $"{end} axle roll inertia",
                "missing",
                "given for a solid axle",
                "Two wheels of mass m at half-track y have 2·m·y²; add the beam's m·track²/12.");
        }

        Needs |= Needs.SolidAxle;
        var springs = axle.SpringBase?.Si ?? axle.Track.Si;
        SpringShare[i] = Share(springs, axle.Track.Si, $"{end} spring base");
        DamperShare[i] = Share(axle.DamperBase?.Si ?? springs, axle.Track.Si, $"{end} damper base");
        StopShare[i] = Share(axle.StopBase?.Si ?? springs, axle.Track.Si, $"{end} stop base");
    }

    private static double Share(double spread, double track, string what) => spread > 0.0 && spread <= track
        ? 0.5 * (1.0 + (spread / track))
        : throw new RefusedValueException(
            what, $"{spread:G4} m", $"above 0 m and at most the track of {track:G4} m", "Measure between the two elements along the axle.");

    // Load at the element's place that holds up the wheels' loads: F_wheel = share·F + (1 − share)·F_other.
    private double AtElement(double[] wheel, int i, double share)
    {
        var other = wheel[i ^ 1];
        var own = wheel[i];
        return share >= 1.0 ? own : (0.5 * (own + other)) + (0.5 * (own - other) / ((2.0 * share) - 1.0));
    }

    private void SetSpring(Axle axle, int i, double atWheel, string end)
    {
        var half = PerHalf;
        SetRatio(SpringRatio, axle.Spring.MotionRatio, i);
        SetRatio(DamperRatio, axle.Damper.MotionRatio, i);
        DamperGas[i] = half * axle.Damper.GasForce.Si;
        var ratio = axle.Spring.MotionRatio.AtReference.Si;
        var carried = SpringCarried(axle, atWheel, i);
        if (carried < 0.0)
        {
            throw new RefusedValueException(
                $"{end} spring",
                $"pulled with {-carried:G4} N in the reference state",
                "pressed",
                "Dampers' gas and interconnection carry more than the body's weight there: check their pressures and the weighing.");
        }

        switch (axle.Spring.Law)
        {
            case GasSpring gas:
                Needs |= Needs.Gas;
                GasForce[i] = half * (carried + (gas.Area.Si * GasSpring.Atmosphere));
                GasAreaPerVolume[i] = gas.Area.Si / gas.Volume.Si;
                GasExponent[i] = gas.Exponent.Si;
                SpringConstant[i] = -half * gas.Area.Si * GasSpring.Atmosphere;
                BumpLimit[i] = Math.Min(BumpLimit[i], 0.9 / GasAreaPerVolume[i] / ratio);
                break;
            default:
                SetStraightSpring(axle.Spring.Law, i, carried, half);
                break;
        }
    }

    // What the spring itself carries in the reference state when it and the damper's gas hold up a force at the wheel.
    private double SpringCarried(Axle axle, double atWheel, int i) =>
        (atWheel - (DamperGas[i] * DamperRatio[0][i])) / (axle.Spring.MotionRatio.AtReference.Si * PerHalf);

    private void SetStraightSpring(SpringLaw law, int i, double carried, double half)
    {
        var kinks = law.KinksAt(carried);
        // Slope of every piece from two points inside it: the law itself stays the only description of the spring.
        double Slope(double from, double to) => (law.ForceAt(to, carried) - law.ForceAt(from, carried)) / (to - from);
        if (kinks.Count == 0)
        {
            SpringSlope[i] = half * law.RateAtReference(carried);
            SpringConstant[i] = half * carried;
            return;
        }

        var slopes = new List<double> { Slope(kinks[0] - 0.02, kinks[0] - 0.01) };
        for (var j = 0; j < kinks.Count; j++)
        {
            slopes.Add(j + 1 < kinks.Count ? Slope(kinks[j], kinks[j + 1]) : Slope(kinks[j] + 0.01, kinks[j] + 0.02));
        }

        var bends = kinks.Select((_, j) => half * (slopes[j + 1] - slopes[j])).ToArray();
        SpringSlope[i] = half * slopes[0];
        SpringHinges.Set(i, kinks, bends);
        SpringConstant[i] = (half * carried) - kinks.Select((x, j) => bends[j] * Math.Max(0.0, x)).Sum();
    }

    private void SetRatio(double[][] polynomial, MotionRatio ratio, int i)
    {
        polynomial[0][i] = ratio.AtReference.Si;
        polynomial[1][i] = ratio.PerTravel.Si;
        polynomial[2][i] = ratio.PerTravelSquared;
        if (ratio.Varies)
        {
            Needs |= Needs.VaryingRatio;
        }
    }

    private void SetDamper(Axle axle, int i, double springCarried, double sprungOnWheel)
    {
        var half = PerHalf;
        switch (axle.Damper.Law)
        {
            case TableDamper table:
                var whole = table.Whole;
                var bends = Enumerable.Range(1, whole.At.Count - 2).Select(j => half * (whole.Slope(j) - whole.Slope(j - 1))).ToArray();
                var at = whole.At.Skip(1).Take(whole.At.Count - 2).ToArray();
                SetDamperCorners(i, half * whole.Slope(0), at, bends);
                break;
            case RatioDamper damping:
                // ζ refers to the wheel rate of the spring alone and to the sprung mass on the wheel, both in the reference state and as the mean of
                // the axle's two wheels: left and right dampers are alike. At the damper itself c is larger by 1/r².
                var ratio = axle.Spring.MotionRatio;
                var wheelRate = (ratio.AtReference.Si * ratio.AtReference.Si * axle.Spring.Law.RateAtReference(springCarried))
                    + (springCarried * ratio.PerTravel.Si);
                var mass = sprungOnWheel / (half * Gravity.Standard);
                var damperRatio = axle.Damper.MotionRatio.AtReference.Si;
                var mean = half * 2.0 * damping.Ratio.Si * Math.Sqrt(Math.Max(0.0, wheelRate) * mass) / (damperRatio * damperRatio);
                var bump = 2.0 * mean / (1.0 + damping.ReboundPerBump.Si);
                var rebound = damping.ReboundPerBump.Si * bump;
                SetDamperCorners(i, rebound, [0.0], [bump - rebound]);
                break;
            default:
                throw new InvalidOperationException($"A damper law {axle.Damper.Law.GetType().Name} has no place in the model.");
        }
    }

    private void SetDamperCorners(int i, double slope, double[] at, double[] bends)
    {
        DamperSlope[i] = slope;
        DamperHinges.Set(i, at, bends);
        DamperConstant[i] = -at.Select((v, j) => bends[j] * Math.Max(0.0, v)).Sum();
    }
}
