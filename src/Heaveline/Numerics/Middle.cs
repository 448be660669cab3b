namespace Heaveline.Numerics;

/// <summary>The median.</summary>
internal static class Middle
{
    // Below this many a sort is as quick.
    private const int Few = 64;

    // From so many on, most are set aside by a few samples of them.
    private const int Many = 8192;

    /// <summary>The middle value, or the mean of the middle two.</summary>
    /// <param name="values">At least one.</param>
    public static double Of(IReadOnlyCollection<double> values)
    {
        double[] all = [.. values];
        var (lower, upper) = ((all.Length - 1) / 2, all.Length / 2);
        if (all.Length < Few || HasNone(all))
        {
            Array.Sort(all);
            return 0.5 * (all[lower] + all[upper]);
        }

        if (all.Length < Many)
        {
            return OfRanks(all, lower, upper);
        }

        var (count, below) = NearFirst(all);
        return below <= lower && upper < below + count
            ? OfRanks(all.AsSpan(0, count), lower - below, upper - below) : OfRanks(all, lower, upper);
    }

    // The mean of two values of neighbouring ranks, or of one twice: what follows in rank is the least of what then stands above.
    private static double OfRanks(Span<double> part, int lower, int upper)
    {
        var value = Ranked(part, lower);
        return 0.5 * (value + (upper == lower ? value : Least(part[upper..])));
    }

    private static bool HasNone(double[] values)
    {
        foreach (var value in values)
        {
            if (double.IsNaN(value))
            {
                return true;
            }
        }

        return false;
    }

    private static double Least(ReadOnlySpan<double> values)
    {
        var least = values[0];
        foreach (var value in values)
        {
            least = value < least ? value : least;
        }

        return least;
    }

    // What lies between two values that a few hundred samples put on either side of the middle changes places to come first: how many these are, and
    // how many lie below them.
    private static (int Count, int Below) NearFirst(double[] all)
    {
        const int samples = 512;
        const int aside = 40;
        var few = new double[samples];
        for (var i = 0; i < samples; i++)
        {
            few[i] = all[(int)((long)i * all.Length / samples)];
        }

        Array.Sort(few);
        var (from, to) = (few[(samples / 2) - aside], few[(samples / 2) + aside]);
        var (count, below) = (0, 0);
        for (var i = 0; i < all.Length; i++)
        {
            // Without a branch: neither is foreseen.
            var value = all[i];
            (all[i], all[count]) = (all[count], value);
            count += value >= from & value <= to ? 1 : 0;
            below += value < from ? 1 : 0;
        }

        return (count, below);
    }

    /// <summary>The value of a rank, all above it moved behind it: a sort that goes on in one part alone.</summary>
    /// <param name="values">Numbers, which change places.</param>
    /// <param name="rank">Its place in order, from 0.</param>
    public static double Ranked(Span<double> values, int rank)
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
