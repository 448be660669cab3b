using Heaveline.Cars;

namespace Heaveline.Elements;

/// <summary>The damper of a corner, with the static force of its gas.</summary>
internal static class DamperElement
{
    /// <param name="place">Where it stands.</param>
    /// <param name="springCarried">What the spring carries in the reference state, mean of the axle's two, N.</param>
    /// <param name="sprungOnWheel">Weight of the body on the wheel, mean of the axle's two, N.</param>
    public static Element Of(CornerPlace place, double springCarried, double sprungOnWheel)
    {
        var (damper, half) = (place.Axle.Damper, place.Half);
        return Of(
            place,
            damper.GasForce.Si == 0.0 ? [] : [new StraightLaw { Constant = half * damper.GasForce.Si }],
            [
                damper.Law switch
                {
                    TableDamper table => Table(table.Whole, half),
                    RatioDamper damping => FromRatio(damping, place, springCarried, sprungOnWheel),
                    _ => throw new InvalidOperationException($"A damper law {damper.Law.GetType().Name} has no place in the model."),
                },
            ]);
    }

    /// <summary>A damper of given laws: both of an axle are alike.</summary>
    /// <param name="place">Where it stands.</param>
    /// <param name="onTravel">Laws of its travel.</param>
    /// <param name="onRate">Laws of its velocity.</param>
    public static Element Of(CornerPlace place, Law[] onTravel, Law[] onRate)
    {
        var ratio = RatioCurve.Of(place.Axle.Damper.MotionRatio);
        return new Element
        {
            Name = "damper",
            Cause = StepCause.Damper,
            Corner = place.Corner,
            Sight = Sight.Along(place.Corner, place.DamperShare),
            Ratio = ratio,
            OnTravel = onTravel,
            OnRate = onRate,
            Felt = place.FeltByOwn(ratio.AtReference * ratio.AtReference),
        };
    }

    private static StraightLaw Table(ForceTable whole, double half)
    {
        var slopes = new double[whole.Places.Length - 1];
        for (var j = 0; j < slopes.Length; j++)
        {
            slopes[j] = whole.Slope(j);
        }

        return StraightLaw.Through(0.0, half, whole.Places[1..^1], slopes);
    }

    // ζ refers to the wheel rate of the spring alone and to the sprung mass on the wheel, both in the reference state and as the mean of
    // the axle's two wheels: left and right dampers are alike. At the damper itself c is larger by 1/r².
    private static StraightLaw FromRatio(RatioDamper damping, CornerPlace place, double springCarried, double sprungOnWheel)
    {
        var (spring, half) = (place.Axle.Spring, place.Half);
        var ratio = spring.MotionRatio;
        var wheelRate = (ratio.AtReference.Si * ratio.AtReference.Si * spring.Law.RateAtReference(springCarried))
            + (springCarried * ratio.PerTravel.Si);
        var mass = sprungOnWheel / (half * Gravity.Standard);
        var damperRatio = place.Axle.Damper.MotionRatio.AtReference.Si;
        var mean = half * 2.0 * damping.Ratio.Si * Math.Sqrt(Math.Max(0.0, wheelRate) * mass) / (damperRatio * damperRatio);
        var bump = 2.0 * mean / (1.0 + damping.ReboundPerBump.Si);
        return StraightLaw.Through(0.0, 1.0, [0.0], [damping.ReboundPerBump.Si * bump, bump]);
    }
}
