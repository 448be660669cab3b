using Heaveline.Cars;
using Heaveline.Quantities;

namespace Heaveline.Elements;

/// <summary>The spring of a corner.</summary>
internal static class SpringElement
{
    // A run must reckon with four times the rate of a gas spring in the reference state: a choice of ours.
    private const double Stiffening = 4.0;

    /// <param name="place">Where it stands.</param>
    /// <param name="carried">What the spring that was weighed carries in the reference state itself, N: see <see cref="Carried"/>.</param>
    /// <param name="stance">Where it stands between its seats; null where nothing is said of its lengths.</param>
    /// <param name="ends">Least and greatest wheel travel that the stops allow, m.</param>
    /// <param name="like">Another of the same laws, which both have then; null for none.</param>
    /// <exception cref="RefusedValueException">It would be pulled, or its table cannot carry the car.</exception>
    public static Element Of(CornerPlace place, double carried, SpringStance? stance, (double Least, double Most) ends, Element? like = null)
    {
        if (carried < 0.0)
        {
            throw new RefusedValueException(
                $"{place.End} spring",
                $"pulled with {-carried:G4} N in the reference state",
                "pressed",
                "Dampers' gas and interconnection carry more than the body's weight there: check their pressures and the weighing.");
        }

        var ratio = RatioCurve.Of(place.Axle.Spring.MotionRatio);
        var laws = like?.TravelLaws ?? Laws(place.Axle.Spring.Law, stance?.Carried ?? carried, place.Half, stance);
        var most = laws[^1] is GasLaw gas ? gas.Most / ratio.AtReference : double.PositiveInfinity;
        var block = stance?.BlockAt is { } at ? ratio.SightAt(at) : double.NaN;
        most = block < most ? block : most;
        return new Element
        {
            Name = "spring",
            Cause = StepCause.Spring,
            Corner = place.Corner,
            Sight = Sight.Along(place.Corner, place.SpringShare),
            Ratio = ratio,
            OnTravel = laws,
            Limits = (double.NegativeInfinity, most),
            Touch = stance is { LooseBelow: > double.NegativeInfinity and var loose } ? ratio.SightAt(loose) : null,
            Range = (ends.Least, Math.Min(most, ends.Most)),
            Felt = place.FeltByOwn(ratio.AtReference * ratio.AtReference),
        };
    }

    /// <summary>
    /// What the spring itself carries in the reference state when it and the gas of the dampers weighed hold up a force at its place, N.
    /// </summary>
    public static double Carried(CornerPlace place, double atPlace)
    {
        var (axle, half) = (place.Axle, place.Half);
        var gas = half * (axle.Damper.WeighedGasForce ?? axle.Damper.GasForce).Si * axle.Damper.MotionRatio.AtReference.Si;
        return (atPlace - gas) / (axle.Spring.MotionRatio.AtReference.Si * half);
    }

    private static Law[] Laws(SpringLaw law, double carried, double half, SpringStance? stance) => law switch
    {
        GasSpring gas =>
        [
            new StraightLaw { Constant = -half * gas.Area.Si * GasSpring.Atmosphere },
            new GasLaw("gas spring", Stiffening)
            {
                Reference = half * (carried + (gas.Area.Si * GasSpring.Atmosphere)),
                PerVolume = gas.Area.Si / gas.Volume.Si,
                Exponent = gas.Exponent.Si,
            },
        ],
        { IsPiecewiseLinear: true } => [stance is null ? Straight(law, carried, half) : Pushing(law, carried, half, stance.LooseBelow)],
        _ => throw new InvalidOperationException($"A spring law {law.GetType().Name} has no place in the model."),
    };

    private static StraightLaw Straight(SpringLaw law, double carried, double half)
    {
        var kinks = law.KinksAt(carried);
        return kinks.Count == 0
            ? new StraightLaw { Slope = half * law.RateAtReference(carried), Constant = half * carried }
            : StraightLaw.Through(half * carried, half, [.. kinks], Slopes(law, carried, kinks));
    }

    // A coil between two seats pushes and never pulls: loose below a travel, no force.
    private static StraightLaw Pushing(SpringLaw law, double carried, double half, double loose)
    {
        if (!double.IsFinite(loose))
        {
            return Straight(law, carried, half);
        }

        double[] kinks = [.. law.KinksAt(carried).Where(kink => kink > loose)];
        var slopes = kinks.Length == 0 ? [law.RateAtReference(Math.Max(0.0, carried))] : Slopes(law, carried, kinks);
        return StraightLaw.Through(half * Math.Max(0.0, carried), half, [loose, .. kinks], [0.0, .. slopes]);
    }

    private static double[] Slopes(SpringLaw law, double carried, IReadOnlyList<double> kinks)
    {
        // Slope of every piece from two points inside it: the law itself stays the only description of the spring.
        double Slope(double from, double to) => (law.ForceAt(to, carried) - law.ForceAt(from, carried)) / (to - from);
        var slopes = new double[kinks.Count + 1];
        slopes[0] = Slope(kinks[0] - 0.02, kinks[0] - 0.01);
        for (var j = 0; j < kinks.Count; j++)
        {
            slopes[j + 1] = j + 1 < kinks.Count ? Slope(kinks[j], kinks[j + 1]) : Slope(kinks[j] + 0.01, kinks[j] + 0.02);
        }

        return slopes;
    }
}
