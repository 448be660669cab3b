using Heaveline.Numerics;
using Heaveline.Quantities;
using MathNet.Numerics.Distributions;

namespace Heaveline.Worksheets;

/// <summary>
/// A shape fitted to force against compression x = L_first − L: F = c₀ + c₁·x, with + c₂·x²/2 when it bends, or +
/// c₂·max(0, x − x_k) when it has a corner.
/// </summary>
internal sealed class SpringCurve
{
    private readonly double first;
    private readonly double corner;

    // Variance that is rounding and no scatter.
    private readonly double rounding;

    private SpringCurve(SpringShape shape, double[] length, double[] force, double corner)
    {
        Shape = shape;
        first = length[0];
        this.corner = corner;
        Fit = new LeastSquares([.. length.Select(l => Row(first - l))], force);
        rounding = 1e-18 * force.Sum(f => f * f);
    }

    public SpringShape Shape { get; }

    public LeastSquares Fit { get; }

    /// <summary>Pairs less what was fitted to them, the corner's place included.</summary>
    public int Freedom => Fit.Freedom - (Shape == SpringShape.TwoRates ? 1 : 0);

    /// <summary>Length at the corner, m.</summary>
    public double Knot => first - corner;

    /// <summary>Length without force by a straight line, m.</summary>
    public Amount<Length> ZeroAt
    {
        get
        {
            var (c0, c1) = (Fit.Coefficients[0], Fit.Coefficients[1]);
            // x₀ = −c₀/c₁: its half-width by the derivatives −1/c₁ and c₀/c₁².
            return new(first + (c0 / c1), new Doubt(Fit.HalfWidth(1.0 / c1, -c0 / (c1 * c1))));
        }
    }

    public static SpringCurve Straight(double[] length, double[] force) => new(SpringShape.Straight, length, force, 0.0);

    /// <summary>A steadily growing rate, and the best corner that leaves two different lengths or more on each side.</summary>
    public static IEnumerable<SpringCurve> Richer(double[] length, double[] force)
    {
        var places = length.Select(l => length[0] - l).Distinct().ToArray();
        if (places.Length < 4)
        {
            yield break;
        }

        yield return new SpringCurve(SpringShape.Progressive, length, force, 0.0);
        SpringCurve? best = null;
        const int Between = 40;
        for (var j = 1; j < places.Length - 2; j++)
        {
            for (var s = 0; s <= Between; s++)
            {
                var at = places[j] + ((places[j + 1] - places[j]) * s / Between);
                var curve = new SpringCurve(SpringShape.TwoRates, length, force, at);
                best = best is null || curve.Fit.SumOfSquares < best.Fit.SumOfSquares ? curve : best;
            }
        }

        if (best is not null)
        {
            yield return best;
        }
    }

    /// <summary>Variance of the forces about this shape, N²; no less than what the pairs can be read to.</summary>
    public double Variance(double reading) => Math.Max(Freedom > 0 ? Fit.SumOfSquares / Freedom : 0.0, Math.Max(reading * reading, rounding));

    /// <summary>
    /// Chance that pairs on one straight line miss it by so much more than they miss this richer shape: the F test of nested fits, the scatter no
    /// less than what the pairs can be read to. 1 where no pair is left to tell.
    /// </summary>
    /// <param name="line">The straight line through the same pairs.</param>
    /// <param name="reading">Standard deviation of reading a pair, N.</param>
    public double ChanceOf(SpringCurve line, double reading)
    {
        var (more, variance) = (line.Freedom - Freedom, Variance(reading));
        var gain = line.Fit.SumOfSquares - Fit.SumOfSquares;
        return Freedom < 1 || !(gain > 0.0) ? 1.0 : 1.0 - FisherSnedecor.CDF(more, Freedom, gain / more / variance);
    }

    public double Force(double length) => Row(first - length).Zip(Fit.Coefficients, (a, c) => a * c).Sum();

    public double Rate(double length) => Slope(first - length).Zip(Fit.Coefficients, (a, c) => a * c).Sum();

    public Amount<Stiffness> RateWithDoubt(double length) => new(Rate(length), new Doubt(Fit.HalfWidth(Slope(first - length))));

    private double[] Row(double x) => Shape switch
    {
        SpringShape.Straight => [1.0, x],
        SpringShape.Progressive => [1.0, x, 0.5 * x * x],
        _ => [1.0, x, Math.Max(0.0, x - corner)],
    };

    private double[] Slope(double x) => Shape switch
    {
        SpringShape.Straight => [0.0, 1.0],
        SpringShape.Progressive => [0.0, 1.0, x],
        _ => [0.0, 1.0, x > corner ? 1.0 : 0.0],
    };
}
