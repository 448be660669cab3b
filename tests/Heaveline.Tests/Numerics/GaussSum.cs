using MathNet.Numerics;
using MathNet.Numerics.Integration;

namespace Heaveline.Tests.Numerics;

/// <summary>Means over a normal number by Gauss sums from break to break, one place at a time: what closed forms and wide sums are held to.</summary>
internal static class GaussSum
{
    // Past this many standard deviations lies 2e-17 of the probability.
    private const double Reach = 8.5;
    private const int Points = 12;

    private static readonly GaussLegendreRule Rule = new(-1.0, 1.0, Points);

    /// <summary>Means of a law's value and slope; the law is smooth between the breaks and x stays between low and high.</summary>
    public static (double Mean, double Slope) Of(
        Func<double, (double Value, double Slope)> law, double mean, double deviation, IReadOnlyList<double> breaks, double low, double high)
    {
        double[] limits = [Math.Max(low, mean - (Reach * deviation)), Math.Min(high, mean + (Reach * deviation))];
        var even = Enumerable.Range(-4, 9).Select(k => mean + (2.0 * k * deviation));
        double[] edges = [.. breaks.Concat(even).Where(x => x > limits[0] && x < limits[1]).Concat(limits).Order()];
        double value = 0.0, slope = 0.0, whole = 0.0;
        for (var panel = 1; panel < edges.Length; panel++)
        {
            var half = 0.5 * (edges[panel] - edges[panel - 1]);
            for (var k = 0; k < Points && half > 0.0; k++)
            {
                var x = edges[panel - 1] + (half * (1.0 + Rule.GetAbscissa(k)));
                var t = (x - mean) / deviation;
                var weight = half * Rule.GetWeight(k) * Constants.InvSqrt2Pi * Math.Exp(-0.5 * t * t);
                var (v, s) = law(x);
                value += weight * v;
                slope += weight * s;
                whole += weight;
            }
        }

        return (value / whole, slope / whole);
    }
}
