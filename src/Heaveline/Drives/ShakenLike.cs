using Heaveline.Numerics;

namespace Heaveline.Drives;

/// <summary>
/// Whether two stretches of logs are one and the same drive, at whatever rate, with whatever digits and from whatever start they were written.
/// </summary>
/// <remarks>
/// The specific force, smoothed to what every rate holds, is laid over the other at a lag: there nearly every stretch of some seconds goes along with
/// its like on every axis, the quiet road between the bumps too, which no second drive over the same bumps repeats. Lags come from the liveliest
/// stretches of the force's size. Rate, lengths, shares and correlations are proposals of this program, tried on planted drives.
/// </remarks>
internal sealed class ShakenLike
{
    // Of the even samples, Hz, and over how many of them they are smoothed, twice.
    private const double Rate = 50.0;
    private const int Smoothed = 4;

    // Length of a stretch, samples; how many are sought, and how many must be compared at least.
    private const int Block = 200;
    private const int Sought = 6;
    private const int Compared = 40;
    private const int Fewest = 8;

    // Correlation from which stretches are alike when a lag is sought, and when it is tried; the share of them that must be.
    private const double Found = 0.95;
    private const double Alike = 0.9;
    private const double Share = 0.9;

    // What shakes less is like any standstill, m/s² (standard deviation).
    private const double Least = 0.1;

    // Two copies of one drive lie no nearer, s.
    private const double Apart = 20.0;

    private readonly double[] size;
    private readonly double[][] axes;

    private ShakenLike(double[] size, double[][] axes) => (this.size, this.axes) = (size, axes);

    /// <summary>A log's shaking; null where it is too short to be told from another.</summary>
    /// <param name="times">Instants, s, rising.</param>
    /// <param name="force">Specific force, m/s², shape (3, n).</param>
    public static ShakenLike? Of(IReadOnlyList<double> times, IReadOnlyList<IReadOnlyList<double>> force)
    {
        if (times.Count < 3 || (times[^1] - times[0]) * Rate is not (> Fewest * Block and < 1e7))
        {
            return null;
        }

        // Straight between samples; the smoothing takes away what a faster log has beyond that.
        var count = (int)((times[^1] - times[0]) * Rate);
        double[][] axes = [.. force.Select(_ => new double[count])];
        for (var (i, k) = (0, 0); i < count; i++)
        {
            var at = times[0] + (i / Rate);
            while (k + 2 < times.Count && times[k + 1] <= at)
            {
                k++;
            }

            var share = Math.Clamp((at - times[k]) / (times[k + 1] - times[k]), 0.0, 1.0);
            for (var c = 0; c < axes.Length; c++)
            {
                axes[c][i] = force[c][k] + (share * (force[c][k + 1] - force[c][k]));
            }
        }

        axes = [.. axes.Select(axis => Smooth(Smooth(axis)))];
        return new ShakenLike([.. Enumerable.Range(0, count).Select(i => Math.Sqrt(axes.Sum(axis => axis[i] * axis[i])))], axes);
    }

    /// <summary>Whether the shorter is a part of the longer.</summary>
    public static bool IsOneDrive(ShakenLike one, ShakenLike other)
    {
        var (few, many) = one.size.Length <= other.size.Length ? (one, other) : (other, one);
        return few.Lags(many, int.MinValue).Any(lag => few.IsLike(many, lag, isWhole: true));
    }

    /// <summary>After how long the log begins once more, s; null where it does not.</summary>
    public double? Again()
    {
        var least = (int)(Apart * Rate);
        int[] lags = [.. Lags(this, least).Where(lag => IsLike(this, lag, isWhole: false)).Order()];
        return lags.Length > 0 ? lags[0] / Rate : null;
    }

    // Where in another its liveliest stretches lie, one in each part of it.
    private int[] Lags(ShakenLike other, int least)
    {
        var part = size.Length / Sought;
        var lags = new List<int>();
        for (var p = 0; p < Sought; p++)
        {
            var liveliest = Enumerable.Range(0, Math.Max(1, (part - Block) / (Block / 2))).Select(k => (p * part) + (k * (Block / 2)))
                .Where(at => at + Block <= size.Length).Select(at => (At: at, Spread: Deviation(size, at))).DefaultIfEmpty().MaxBy(b => b.Spread);
            if (!(liveliest.Spread > Least))
            {
                continue;
            }

            var (best, found) = (Found, int.MinValue);
            for (var to = (int)Math.Max(0L, least == int.MinValue ? 0L : liveliest.At + (long)least); to + Block <= other.size.Length; to++)
            {
                var like = Correlation(size, liveliest.At, other.size, to);
                (best, found) = like > best ? (like, to - liveliest.At) : (best, found);
            }

            if (found != int.MinValue)
            {
                lags.Add(found);
            }
        }

        return [.. lags.Distinct()];
    }

    private bool IsLike(ShakenLike other, int lag, bool isWhole)
    {
        var (compared, alike, outside) = (0, 0, 0);
        var step = Math.Max(Block, (size.Length - Block) / Compared);
        for (var at = 0; at + Block <= size.Length; at += step)
        {
            int[] shaken = [.. Enumerable.Range(0, axes.Length).Where(c => Deviation(axes[c], at) > Least)];
            if (shaken.Length == 0)
            {
                continue;
            }

            if (at + lag < 1 || at + lag + Block + 1 > other.size.Length)
            {
                outside++;
                continue;
            }

            compared++;
            alike += Enumerable.Range(-1, 3)
                .Any(d => Array.TrueForAll(shaken, c => Correlation(axes[c], at, other.axes[c], at + lag + d) > Alike)) ? 1 : 0;
        }

        return compared >= Fewest && alike > Share * compared && (!isWhole || outside <= (1.0 - Share) * (compared + outside));
    }

    private static double Deviation(double[] values, int at)
    {
        var part = values.AsSpan(at, Block);
        var (sum, square) = (0.0, 0.0);
        foreach (var v in part)
        {
            (sum, square) = (sum + v, square + (v * v));
        }

        return Math.Sqrt(Math.Max(0.0, (square - (sum * sum / Block)) / Block));
    }

    private static double Correlation(double[] values, int at, double[] others, int to)
    {
        var one = values.AsSpan(at, Block);
        var two = others.AsSpan(to, Block);
        var (a, b) = (0.0, 0.0);
        var (aa, bb, ab) = (Dot.Of(one, one), Dot.Of(two, two), Dot.Of(one, two));
        foreach (var v in one)
        {
            a += v;
        }

        foreach (var v in two)
        {
            b += v;
        }

        var both = (aa - (a * a / Block)) * (bb - (b * b / Block));
        return both > 0.0 ? (ab - (a * b / Block)) / Math.Sqrt(both) : 0.0;
    }

    private static double[] Smooth(double[] values)
    {
        var result = new double[values.Length];
        var sum = 0.0;
        for (var i = 0; i < values.Length; i++)
        {
            sum += values[i] - (i >= Smoothed ? values[i - Smoothed] : 0.0);
            result[i] = sum / Math.Min(i + 1, Smoothed);
        }

        return result;
    }
}
