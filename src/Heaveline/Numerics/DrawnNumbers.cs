namespace Heaveline.Numerics;

/// <summary>What numbers of drawn cars come to: their mean, their spread, the number that a share of them lies below.</summary>
internal static class DrawnNumbers
{
    /// <summary>The mean; NaN of none.</summary>
    public static double Mean(ReadOnlySpan<double> values)
    {
        var sum = 0.0;
        foreach (var value in values)
        {
            sum += value;
        }

        return sum / values.Length;
    }

    /// <summary>Standard deviation of one number about the mean; 0 of fewer than two.</summary>
    public static double Deviation(ReadOnlySpan<double> values)
    {
        if (values.Length < 2)
        {
            return 0.0;
        }

        var (mean, sum) = (Mean(values), 0.0);
        foreach (var value in values)
        {
            sum += (value - mean) * (value - mean);
        }

        return Math.Sqrt(sum / (values.Length - 1));
    }

    /// <summary>
    /// The number below which a share lies, straight between neighbours, the least at 0 and the greatest at 1 [Hyndman and Fan 1996, definition 7].
    /// </summary>
    /// <param name="values">The numbers, in any order, at least one.</param>
    /// <param name="share">0 to 1.</param>
    public static double Quantile(ReadOnlySpan<double> values, double share)
    {
        ArgumentOutOfRangeException.ThrowIfZero(values.Length);
        double[] sorted = [.. values];
        Array.Sort(sorted);
        var at = Math.Clamp(share, 0.0, 1.0) * (sorted.Length - 1);
        var below = (int)at;
        return below + 1 < sorted.Length && at > below
            ? sorted[below] + ((at - below) * (sorted[below + 1] - sorted[below]))
            : sorted[below];
    }
}
