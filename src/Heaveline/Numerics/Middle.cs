using System.Buffers;

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

        var (from, to) = About(all);
        var (count, below) = Counted(all, from, to);
        if (lower < below || below + count <= upper)
        {
            return OfRanks(all, lower, upper);
        }

        // Room for one more: what is not between is written behind the last that is, and then over.
        var between = ArrayPool<double>.Shared.Rent(count + 1);
        Collect(all, from, to, between);
        var middle = OfRanks(between.AsSpan(0, count), lower - below, upper - below);
        ArrayPool<double>.Shared.Return(between);
        return middle;
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

    // Two values that a few hundred samples put on either side of the middle.
    private static (double From, double To) About(double[] all)
    {
        const int samples = 512;
        const int aside = 40;
        var few = new double[samples];
        for (var i = 0; i < samples; i++)
        {
            few[i] = all[(int)((long)i * all.Length / samples)];
        }

        Array.Sort(few);
        return (few[(samples / 2) - aside], few[(samples / 2) + aside]);
    }

    // How many lie between two values, they themselves too, and how many below. Without a branch, here and in what collects: neither is foreseen.
    private static (int Count, int Below) Counted(double[] all, double from, double to)
    {
        var (count, below) = (0, 0);
        foreach (var value in all)
        {
            count += value >= from & value <= to ? 1 : 0;
            below += value < from ? 1 : 0;
        }

        return (count, below);
    }

    private static void Collect(double[] all, double from, double to, double[] between)
    {
        var count = 0;
        foreach (var value in all)
        {
            between[count] = value;
            count += value >= from & value <= to ? 1 : 0;
        }
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
