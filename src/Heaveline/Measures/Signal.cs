namespace Heaveline.Measures;

/// <summary>Elementary measures of a sampled trace.</summary>
internal static class Signal
{
    /// <summary>Largest absolute value.</summary>
    public static double Peak(ReadOnlySpan<double> x)
    {
        var peak = 0.0;
        foreach (var v in x)
        {
            peak = Math.Max(peak, Math.Abs(v));
        }

        return peak;
    }

    /// <summary>Root mean square; 0 of nothing.</summary>
    public static double Rms(ReadOnlySpan<double> x)
    {
        var sum = 0.0;
        foreach (var v in x)
        {
            sum += v * v;
        }

        return x.Length > 0 ? Math.Sqrt(sum / x.Length) : 0.0;
    }

    /// <summary>Smallest value.</summary>
    public static double Least(ReadOnlySpan<double> x)
    {
        var least = double.PositiveInfinity;
        foreach (var v in x)
        {
            least = Math.Min(least, v);
        }

        return least;
    }

    /// <summary>Largest value.</summary>
    public static double Most(ReadOnlySpan<double> x)
    {
        var most = double.NegativeInfinity;
        foreach (var v in x)
        {
            most = Math.Max(most, v);
        }

        return most;
    }
}
