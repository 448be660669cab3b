namespace Heaveline.Numerics;

/// <summary>The median.</summary>
internal static class Middle
{
    // Below this many a sort is as quick.
    private const int Few = 64;

    /// <summary>The middle value, or the mean of the middle two.</summary>
    /// <param name="values">At least one.</param>
    public static double Of(IReadOnlyCollection<double> values)
    {
        double[] all = [.. values];
        var (lower, upper) = ((all.Length - 1) / 2, all.Length / 2);
        if (all.Length < Few || all.Any(double.IsNaN))
        {
            Array.Sort(all);
            return 0.5 * (all[lower] + all[upper]);
        }

        var value = Ranked(all, lower);
        // What follows in rank is the least of what now stands above.
        return 0.5 * (value + (upper == lower ? value : all.AsSpan(upper).ToArray().Min()));
    }

    // The value of a rank, all above it moved behind it: a sort that goes on in one part alone.
    private static double Ranked(double[] values, int rank)
    {
        var (from, to) = (0, values.Length - 1);
        while (from < to)
        {
            var pivot = values[from + ((to - from) / 2)];
            var (i, k) = (from, to);
            while (i <= k)
            {
                while (values[i] < pivot)
                {
                    i++;
                }

                while (values[k] > pivot)
                {
                    k--;
                }

                if (i <= k)
                {
                    (values[i], values[k]) = (values[k], values[i]);
                    i++;
                    k--;
                }
            }

            if (rank <= k)
            {
                to = k;
            }
            else if (rank >= i)
            {
                from = i;
            }
            else
            {
                break;
            }
        }

        return values[rank];
    }
}
