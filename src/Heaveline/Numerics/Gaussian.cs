using System.Runtime.Intrinsics;
using MathNet.Numerics;
using MathNet.Numerics.Integration;

namespace Heaveline.Numerics;

/// <summary>Means over a normal number x of mean μ and standard deviation σ (0 allowed: then x = μ).</summary>
internal static class Gaussian
{
    /// <summary>Standard deviations on either side of the mean that hold 90 %.</summary>
    public const double Ninety = 1.6448536269514722;

    // Past this many standard deviations lies 2e-17 of the probability.
    private const double Reach = 8.5;
    private const int Points = 16;

    private static readonly (Vector512<double> At, Vector512<double> Weight)[] Panel = Panels();

    // One panel over all of it serves what has no corners and no range of its own.
    private const int SmoothPoints = 64;

    private static readonly (double At, double Weight)[] Smooth = Whole();

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
    /// E[max(x, a)] and its slope where x stays between low and high: with P the probability between two places, all over P(low, high),
    /// a·P(low, a) + μ·P(a, high) + σ·(φ(a) − φ(high)) and P(a, high), a moved into the range.
    /// </summary>
    public static (double Mean, double Slope) Max(double mean, double deviation, double at, double low, double high)
    {
        if (!(deviation > 0.0))
        {
            return Max(Math.Clamp(mean, low, high), 0.0, at);
        }

        double Scaled(double x) => (x - mean) / deviation;
        var (l, h, a) = (Scaled(low), Scaled(high), Scaled(Math.Clamp(at, low, high)));
        var (whole, above) = (Between(l, h), Between(a, h));
        return (((at * Between(l, a)) + (mean * above) + (deviation * (Density(a) - Density(h)))) / whole, above / whole);
    }

    /// <summary>E[x] where x stays between low and high.</summary>
    public static double Middle(double mean, double deviation, double low, double high)
    {
        if (!(deviation > 0.0))
        {
            return Math.Clamp(mean, low, high);
        }

        var (l, h) = ((low - mean) / deviation, (high - mean) / deviation);
        return mean + (deviation * (Density(l) - Density(h)) / Between(l, h));
    }

    /// <summary>Past this x never is.</summary>
    public static double Farthest(double mean, double deviation) => mean + (Reach * deviation);

    /// <summary>Whether x stays between low and high by itself.</summary>
    public static bool Within(double mean, double deviation, double low, double high) =>
        mean - (Reach * deviation) >= low && mean + (Reach * deviation) <= high;

    /// <summary>Means of two numbers that are smooth everywhere, and of the first by parts, E[(x − μ)·f]/σ²: the mean of its slope.</summary>
    /// <param name="both">The two over x.</param>
    /// <param name="mean">μ.</param>
    /// <param name="deviation">σ, above 0.</param>
    public static (double First, double Second, double Slope) OfSmooth(
        Func<double, (double First, double Second)> both, double mean, double deviation)
    {
        double first = 0.0, second = 0.0, slope = 0.0;
        foreach (var (at, weight) in Smooth)
        {
            var (one, other) = both(mean + (deviation * at));
            first += weight * one;
            second += weight * other;
            slope += weight * at * one;
        }

        return (first, second, slope / deviation);
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
    /// <typeparam name="TPair">Value and slope, eight at a time.</typeparam>
    public static (double Mean, double Slope) Of<TPair>(
        TPair law, double mean, double deviation, ReadOnlySpan<double> breaks, double low, double high)
        where TPair : IWidePair
    {
        if (!(deviation > 0.0))
        {
            var (at, rate) = law.At(Vector512.Create(Math.Clamp(mean, low, high)));
            return (at[0], rate[0]);
        }

        var (first, last) = (Math.Max(low, mean - (Reach * deviation)), Math.Min(high, mean + (Reach * deviation)));
        Span<double> edges = stackalloc double[breaks.Length + 11];
        var count = 0;
        edges[count++] = first;
        for (var k = -4; k <= 4; k++)
        {
            Take(mean + (2.0 * k * deviation), edges, ref count);
        }

        foreach (var x in breaks)
        {
            Take(x, edges, ref count);
        }

        void Take(double x, Span<double> to, ref int taken)
        {
            if (x > first && x < last)
            {
                to[taken++] = x;
            }
        }

        edges[count++] = last;
        edges[..count].Sort();
        var (value, slope, whole) = (Vector512<double>.Zero, Vector512<double>.Zero, Vector512<double>.Zero);
        var scale = Vector512.Create(1.0 / deviation);
        for (var panel = 1; panel < count; panel++)
        {
            var half = Vector512.Create(0.5 * (edges[panel] - edges[panel - 1]));
            for (var k = 0; k < Panel.Length && last > first; k++)
            {
                var x = Vector512.Create(edges[panel - 1]) + (half * Panel[k].At);
                var t = (x - Vector512.Create(mean)) * scale;
                var weight = half * Panel[k].Weight * Vector512.Exp(Vector512.Create(-0.5) * t * t);
                var (v, s) = law.At(x);
                value += weight * v;
                slope += weight * s;
                whole += weight;
            }
        }

        var sum = Vector512.Sum(whole);
        return (Vector512.Sum(value) / sum, Vector512.Sum(slope) / sum);
    }

    private static double Density(double t) => Constants.InvSqrt2Pi * Math.Exp(-0.5 * t * t);

    // Probability between two places counted in deviations, with all its digits in either tail.
    private static double Between(double low, double high) => low > 0.0
        ? 0.5 * (SpecialFunctions.Erfc(low / Constants.Sqrt2) - SpecialFunctions.Erfc(high / Constants.Sqrt2))
        : 0.5 * (SpecialFunctions.Erfc(-high / Constants.Sqrt2) - SpecialFunctions.Erfc(-low / Constants.Sqrt2));

    private static (Vector512<double>, Vector512<double>)[] Panels()
    {
        // The points of a panel from 0 to 2, eight at a time.
        var rule = new GaussLegendreRule(-1.0, 1.0, Points);
        Vector512<double> Eight(Func<int, double> of, int from) =>
            Vector512.Create([.. Enumerable.Range(from, Vector512<double>.Count).Select(of)]);
        return [.. Enumerable.Range(0, Points / Vector512<double>.Count).Select(k => Vector512<double>.Count * k).Select(k => (
            Eight(j => 1.0 + rule.GetAbscissa(j), k), Eight(rule.GetWeight, k)))];
    }

    private static (double At, double Weight)[] Whole()
    {
        var rule = new GaussLegendreRule(-Reach, Reach, SmoothPoints);
        return [.. Enumerable.Range(0, SmoothPoints).Select(k => (rule.GetAbscissa(k), rule.GetWeight(k) * Density(rule.GetAbscissa(k))))];
    }
}
