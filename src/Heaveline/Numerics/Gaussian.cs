using MathNet.Numerics;
using MathNet.Numerics.Integration;

namespace Heaveline.Numerics;

/// <summary>Means over a normal number x of mean μ and standard deviation σ (0 allowed: then x = μ).</summary>
internal static class Gaussian
{
    // Past this many standard deviations lies 2e-17 of the probability.
    private const double Reach = 8.5;
    private const int Points = 12;

    private static readonly GaussLegendreRule Rule = new(-1.0, 1.0, Points);

    /// <summary>
    /// E[max(x, a)] = a + (μ − a)·Φ(t) + σ·φ(t) and its slope in μ, Φ(t), t = (μ − a)/σ. At a tie without scatter the mean of both slopes.
    /// </summary>
    public static (double Mean, double Slope) Max(double mean, double deviation, double at)
    {
        if (!(deviation > 0.0))
        {
            return (Math.Max(mean, at), mean > at ? 1.0 : mean < at ? 0.0 : 0.5);
        }

        var t = (mean - at) / deviation;
        var share = 0.5 * SpecialFunctions.Erfc(-t / Constants.Sqrt2);
        return (at + ((mean - at) * share) + (deviation * Density(t)), share);
    }

    /// <summary>
    /// E[v²/√(v² + a²)]/σ² for v of mean 0: the equivalent damping of unit friction smoothed over the velocity a. In closed form
    /// a²/(2√(2π)σ³)·e^b·(K₁(b) − K₀(b)), b = a²/(4σ²), from ∫₀^∞ e^{−βt²}/√(1 + t²) dt = ½e^{β/2}K₀(β/2); √(2/π)/σ for sharp friction, 1/a at rest.
    /// </summary>
    public static double SmoothSign(double deviation, double scale)
    {
        var b = deviation > 0.0 ? scale * scale / (4.0 * deviation * deviation) : double.PositiveInfinity;
        if (b > 1e3)
        {
            // e^b·(K₁ − K₀) → √(π/2b)·(1/2b)·(1 − 3/(8b)) for large b; the next term is below 1e-6.
            return (1.0 - (0.375 / b)) / scale;
        }

        var difference = b < 1e-9 ? 1.0 / b : SpecialFunctions.BesselKScaled(1.0, b) - SpecialFunctions.BesselKScaled(0.0, b);
        return scale * scale * difference / (2.0 * Constants.Sqrt2Pi * deviation * deviation * deviation);
    }

    /// <summary>Means of a law's value and slope; the law is smooth between the breaks and x stays between low and high.</summary>
    public static (double Mean, double Slope) Of(
        Func<double, (double Value, double Slope)> law, double mean, double deviation, IReadOnlyList<double> breaks, double low, double high)
    {
        if (!(deviation > 0.0))
        {
            return law(Math.Clamp(mean, low, high));
        }

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
                var weight = half * Rule.GetWeight(k) * Density((x - mean) / deviation);
                var (v, s) = law(x);
                value += weight * v;
                slope += weight * s;
                whole += weight;
            }
        }

        return (value / whole, slope / whole);
    }

    private static double Density(double t) => Constants.InvSqrt2Pi * Math.Exp(-0.5 * t * t);
}
