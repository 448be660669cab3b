using Heaveline.Numerics;
using Heaveline.Quantities;

namespace Heaveline.Cars.Worksheets;

/// <summary>
/// A shape fitted to force against compression x = L_first − L: F = c₀ + c₁·x, with + c₂·x²/2 when it bends, or +
/// c₂·max(0, x − x_k) when it has a corner.
/// </summary>
internal sealed class SpringCurve
{
    private readonly double first;
    private readonly double corner;

    private SpringCurve(SpringShape shape, double[] length, double[] force, double corner)
    {
        Shape = shape;
        first = length[0];
        this.corner = corner;
        Fit = new LeastSquares([.. length.Select(l => Row(first - l))], force);
        // A fit that goes through every pair has no scatter: its logarithm stops at rounding.
        var floor = 1e-18 * force.Sum(f => f * f);
        var (n, k) = (force.Length, Fit.Coefficients.Length + (shape == SpringShape.TwoRates ? 2.0 : 1.0));
        Information = n - k - 1.0 > 0.0
            ? (n * Math.Log(Math.Max(Fit.SumOfSquares, floor) / n)) + (2.0 * k) + (2.0 * k * (k + 1.0) / (n - k - 1.0))
            : double.PositiveInfinity;
    }

    public SpringShape Shape { get; }

    public LeastSquares Fit { get; }

    /// <summary>Akaike's information criterion corrected for few readings; infinite when there are too few.</summary>
    public double Information { get; }

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
