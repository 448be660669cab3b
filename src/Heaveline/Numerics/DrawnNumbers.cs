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
    /// The number below which a share lies, straight between neighbours, never beyond the least and the greatest
    /// [Hyndman and Fan 1996, definition 6].
    /// </summary>
    /// <param name="values">The numbers, in any order, at least one.</param>
    /// <param name="share">0 to 1.</param>
    public static double Quantile(ReadOnlySpan<double> values, double share)
    {
        ArgumentOutOfRangeException.ThrowIfZero(values.Length);
        double[] sorted = [.. values];
        Array.Sort(sorted);
        return QuantileInOrder(sorted, share);
    }

    /// <summary>The same of numbers in order: rising, or rising to infinity and on from below; NaN of none.</summary>
    /// <param name="ordered">The numbers.</param>
    /// <param name="share">0 to 1.</param>
    public static double QuantileInOrder(ReadOnlySpan<double> ordered, double share)
    {
        if (ordered.Length == 0)
        {
            return double.NaN;
        }

        var at = Math.Clamp((share * (ordered.Length + 1)) - 1.0, 0.0, ordered.Length - 1);
        var below = Math.Clamp((int)at, 0, ordered.Length - 1);
        var above = Math.Min(below + 1, ordered.Length - 1);
        var (from, to, part) = (ordered[below], ordered[above], at - below);
        return part == 0.0 || from == to ? from
            : to >= from ? from + (part * (to - from))
            // Across infinity what is straight is one over it.
            : 1.0 / ((1.0 / from) + (part * ((1.0 / to) - (1.0 / from))));
    }
}
