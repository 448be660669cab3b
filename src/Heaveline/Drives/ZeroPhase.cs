namespace Heaveline.Drives;

/// <summary>Filters that shift nothing in time: a Butterworth low-pass of second order, run forwards and back.</summary>
/// <remarks>
/// The bilinear transform of 1/(s² + √2·s + 1) with its corner prewarped: b₀ = k²/(1 + √2·k + k²), k = tan(π·f/rate). Both runs begin in the
/// steady state of the first value they meet.
/// </remarks>
internal static class ZeroPhase
{
    /// <summary>What lies below a corner (−6 dB there after both runs).</summary>
    /// <param name="values">Even samples.</param>
    /// <param name="rate">Samples a second, Hz.</param>
    /// <param name="corner">The corner, Hz, below half the rate.</param>
    public static double[] Low(ReadOnlySpan<double> values, double rate, double corner)
    {
        var result = new double[values.Length];
        if (!IsFilter(rate, corner))
        {
            values.CopyTo(result);
            return result;
        }

        var filter = Weights(rate, corner);
        Run(values, result, filter);
        RunBack(result, filter);
        return result;
    }

    /// <summary>What lies below a corner of two signals of one length: the sums of one are done while those of the other are waited for.</summary>
    /// <param name="one">Even samples.</param>
    /// <param name="oneCorner">Their corner, Hz.</param>
    /// <param name="other">Other even samples, as many.</param>
    /// <param name="otherCorner">Their corner, Hz.</param>
    /// <param name="rate">Samples a second of both, Hz.</param>
    public static (double[] One, double[] Other) Lows(
        ReadOnlySpan<double> one, double oneCorner, ReadOnlySpan<double> other, double otherCorner, double rate)
    {
        if (!IsFilter(rate, oneCorner) || !IsFilter(rate, otherCorner))
        {
            return (Low(one, rate, oneCorner), Low(other, rate, otherCorner));
        }

        var (first, second) = (new double[one.Length], new double[other.Length]);
        var (ofFirst, ofSecond) = (Weights(rate, oneCorner), Weights(rate, otherCorner));
        Run(one, first, ofFirst, other, second, ofSecond);
        RunBack(first, ofFirst, second, ofSecond);
        return (first, second);
    }

    /// <summary>What lies between two corners.</summary>
    /// <param name="values">Even samples.</param>
    /// <param name="rate">Samples a second, Hz.</param>
    /// <param name="low">The lower corner, Hz.</param>
    /// <param name="high">The upper corner, Hz.</param>
    public static double[] Band(ReadOnlySpan<double> values, double rate, double low, double high)
    {
        var (result, slow) = Lows(values, high, values, low, rate);
        for (var i = 0; i < result.Length; i++)
        {
            result[i] -= slow[i];
        }

        return result;
    }

    private static bool IsFilter(double rate, double corner) => corner < 0.49 * rate;

    private static (double B, double A1, double A2) Weights(double rate, double corner)
    {
        var k = Math.Tan(Math.PI * corner / rate);
        var scale = 1.0 / (1.0 + (Math.Sqrt(2.0) * k) + (k * k));
        return (k * k * scale, 2.0 * ((k * k) - 1.0) * scale, (1.0 - (Math.Sqrt(2.0) * k) + (k * k)) * scale);
    }

    private static void Run(ReadOnlySpan<double> values, Span<double> result, (double B, double A1, double A2) filter)
    {
        var at = new State(filter, values.IsEmpty ? 0.0 : values[0]);
        for (var i = 0; i < values.Length; i++)
        {
            result[i] = at.Next(values[i]);
        }
    }

    private static void RunBack(Span<double> values, (double B, double A1, double A2) filter)
    {
        var at = new State(filter, values.IsEmpty ? 0.0 : values[^1]);
        for (var i = values.Length - 1; i >= 0; i--)
        {
            values[i] = at.Next(values[i]);
        }
    }

    private static void Run(
        ReadOnlySpan<double> one, Span<double> first, (double B, double A1, double A2) ofFirst,
        ReadOnlySpan<double> other, Span<double> second, (double B, double A1, double A2) ofSecond)
    {
        var atFirst = new State(ofFirst, one.IsEmpty ? 0.0 : one[0]);
        var atSecond = new State(ofSecond, other.IsEmpty ? 0.0 : other[0]);
        for (var i = 0; i < one.Length; i++)
        {
            first[i] = atFirst.Next(one[i]);
            second[i] = atSecond.Next(other[i]);
        }
    }

    private static void RunBack(
        Span<double> first, (double B, double A1, double A2) ofFirst, Span<double> second, (double B, double A1, double A2) ofSecond)
    {
        var atFirst = new State(ofFirst, first.IsEmpty ? 0.0 : first[^1]);
        var atSecond = new State(ofSecond, second.IsEmpty ? 0.0 : second[^1]);
        for (var i = first.Length - 1; i >= 0; i--)
        {
            first[i] = atFirst.Next(first[i]);
            second[i] = atSecond.Next(second[i]);
        }
    }

    // The two values before, of what comes in and of what goes out.
    private struct State((double B, double A1, double A2) filter, double value)
    {
        private readonly double b = filter.B, a1 = filter.A1, a2 = filter.A2;
        private double in1 = value, in2 = value, out1 = value, out2 = value;

        public double Next(double now)
        {
            var next = (b * (now + (2.0 * in1) + in2)) - (a1 * out1) - (a2 * out2);
            (in2, in1, out2, out1) = (in1, now, out1, next);
            return next;
        }
    }
}
