using Heaveline.Cars;
using Heaveline.Quantities;

namespace Heaveline.Elements;

/// <summary>The common spring and the common damper of each side.</summary>
internal static class ElasticElement
{
    /// <summary>Both sides' common springs.</summary>
    /// <exception cref="RefusedValueException">A link that does nothing.</exception>
    public static Element[] Springs(ElasticLink link, double half) => link.Rate.Si == 0.0 && link.Damping.Si == 0.0
        ? throw new RefusedValueException(
            "interconnection", "without rate and damping", "a link with either", "Leave it out when nothing joins front and rear.")
        : Spring(link.FrontRatio.Si, link.RearRatio.Si, [new StraightLaw { Slope = half * link.Rate.Si, Constant = half * link.Carried.Si }]);

    /// <summary>Both sides' common springs of any laws.</summary>
    public static Element[] Spring(
        double front, double rear, Law[] laws, double most = double.PositiveInfinity) => [.. Enumerable.Range(0, 2).Select(side =>
        new Element
        {
            Name = "common spring",
            Cause = StepCause.Interconnection,
            Corner = side,
            Sight = Sight.Side(side, front, rear),
            OnTravel = laws,
            Range = (double.NegativeInfinity, most),
            Felt = Felt(side, front * front, rear * rear),
        })];

    /// <summary>Both sides' common dampers; none where the link has none.</summary>
    public static Element[] Dampers(ElasticLink link, double half)
    {
        if (link.Damping.Si == 0.0)
        {
            return [];
        }

        // Both wheels of a side moving together work the common damper at once: the whole row of c·ρ·ρᵀ.
        var (front, rear) = (link.FrontRatio.Si, link.RearRatio.Si);
        var both = Math.Abs(front) + Math.Abs(rear);
        return [.. Enumerable.Range(0, 2).Select(side => new Element
        {
            Name = "common damper",
            Cause = StepCause.Interconnection,
            Corner = side,
            Sight = Sight.Side(side, front, rear),
            OnRate = [new StraightLaw { Slope = half * link.Damping.Si }],
            Felt = Felt(side, Math.Abs(front) * both, Math.Abs(rear) * both),
        })];
    }

    private static double[] Felt(int side, double front, double rear)
    {
        var felt = new double[4];
        (felt[side], felt[side + 2]) = (front, rear);
        return felt;
    }
}
