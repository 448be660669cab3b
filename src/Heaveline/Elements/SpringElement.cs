using Heaveline.Cars;
using Heaveline.Quantities;

namespace Heaveline.Elements;

/// <summary>The spring of a corner.</summary>
internal static class SpringElement
{
    // A run must reckon with four times the rate of a gas spring in the reference state: a choice of ours.
    private const double Stiffening = 4.0;

    /// <param name="place">Where it stands.</param>
    /// <param name="carried">What it carries in the reference state itself, N: see <see cref="Carried"/>.</param>
    /// <exception cref="RefusedValueException">It would be pulled, or its table cannot carry the car.</exception>
    public static Element Of(CornerPlace place, double carried)
    {
        if (carried < 0.0)
        {
            throw new RefusedValueException(
                $"{place.End} spring",
                $"pulled with {-carried:G4} N in the reference state",
                "pressed",
                "Dampers' gas and interconnection carry more than the body's weight there: check their pressures and the weighing.");
        }

        var (spring, half) = (place.Axle.Spring, place.Half);
        var ratio = RatioCurve.Of(spring.MotionRatio);
        var element = new Element
        {
            Name = "spring",
            Cause = StepCause.Spring,
            Corner = place.Corner,
            Sight = Sight.Along(place.Corner, place.SpringShare),
            Ratio = ratio,
            Felt = place.FeltByOwn(ratio.AtReference * ratio.AtReference),
        };
        switch (spring.Law)
        {
            case GasSpring gas:
                var law = new GasLaw("gas spring", Stiffening)
                {
                    Reference = half * (carried + (gas.Area.Si * GasSpring.Atmosphere)),
                    PerVolume = gas.Area.Si / gas.Volume.Si,
                    Exponent = gas.Exponent.Si,
                };
                return element with
                {
                    OnTravel = [new StraightLaw { Constant = -half * gas.Area.Si * GasSpring.Atmosphere }, law],
                    Limits = (double.NegativeInfinity, law.Most / ratio.AtReference),
                };
            case { IsPiecewiseLinear: true }:
                return element with { OnTravel = [Straight(spring.Law, carried, half)] };
            default:
                throw new InvalidOperationException($"A spring law {spring.Law.GetType().Name} has no place in the model.");
        }
    }

    /// <summary>What the spring itself carries in the reference state when it and the damper's gas hold up a force at its place, N.</summary>
    public static double Carried(CornerPlace place, double atPlace)
    {
        var (axle, half) = (place.Axle, place.Half);
        var gas = half * axle.Damper.GasForce.Si * axle.Damper.MotionRatio.AtReference.Si;
        return (atPlace - gas) / (axle.Spring.MotionRatio.AtReference.Si * half);
    }

    private static StraightLaw Straight(SpringLaw law, double carried, double half)
    {
        var kinks = law.KinksAt(carried);
        if (kinks.Count == 0)
        {
            return new StraightLaw { Slope = half * law.RateAtReference(carried), Constant = half * carried };
        }

        // Slope of every piece from two points inside it: the law itself stays the only description of the spring.
        double Slope(double from, double to) => (law.ForceAt(to, carried) - law.ForceAt(from, carried)) / (to - from);
        var slopes = new List<double> { Slope(kinks[0] - 0.02, kinks[0] - 0.01) };
        for (var j = 0; j < kinks.Count; j++)
        {
            slopes.Add(j + 1 < kinks.Count ? Slope(kinks[j], kinks[j + 1]) : Slope(kinks[j] + 0.01, kinks[j] + 0.02));
        }

        return StraightLaw.Through(half * carried, half, kinks, slopes);
    }
}
