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
        var result = values.ToArray();
        if (corner >= 0.49 * rate)
        {
            return result;
        }

        var k = Math.Tan(Math.PI * corner / rate);
        var scale = 1.0 / (1.0 + (Math.Sqrt(2.0) * k) + (k * k));
        var (b, a1, a2) = (k * k * scale, 2.0 * ((k * k) - 1.0) * scale, (1.0 - (Math.Sqrt(2.0) * k) + (k * k)) * scale);
        Run(result, b, a1, a2);
        Array.Reverse(result);
        Run(result, b, a1, a2);
        Array.Reverse(result);
        return result;
    }

    /// <summary>What lies between two corners.</summary>
    /// <param name="values">Even samples.</param>
    /// <param name="rate">Samples a second, Hz.</param>
    /// <param name="low">The lower corner, Hz.</param>
    /// <param name="high">The upper corner, Hz.</param>
    public static double[] Band(ReadOnlySpan<double> values, double rate, double low, double high)
    {
        var result = Low(values, rate, high);
        var slow = Low(values, rate, low);
        for (var i = 0; i < result.Length; i++)
        {
            result[i] -= slow[i];
        }

        return result;
    }

    private static void Run(Span<double> values, double b, double a1, double a2)
    {
        if (values.IsEmpty)
        {
            return;
        }

        var (in1, in2, out1, out2) = (values[0], values[0], values[0], values[0]);
        foreach (ref var value in values)
        {
            var (now, out0) = (value, (b * (value + (2.0 * in1) + in2)) - (a1 * out1) - (a2 * out2));
            (in2, in1, out2, out1) = (in1, now, out1, out0);
            value = out0;
        }
    }
}
