using System.Numerics;
using System.Runtime.InteropServices;

namespace Heaveline.Drives;

/// <summary>
/// A sine cardinal with its corner at 0.4 of a rate, windowed (Hamming), by which instants that stand several times closer are brought to that rate.
/// </summary>
internal sealed class EvenWindow
{
    private readonly int finer;
    private readonly double[] half;
    private readonly double[] whole;

    /// <summary>The window.</summary>
    /// <param name="finer">How many times closer the instants stand.</param>
    /// <param name="reach">Samples of the rate on either side that it spans.</param>
    public EvenWindow(int finer, int reach)
    {
        this.finer = finer;
        half = Half(finer, reach);
        whole = [.. half.Skip(1).Reverse(), .. half];
    }

    private int Beside => half.Length - 1;

    /// <summary>How many instants so many samples ask for.</summary>
    /// <param name="samples">How many samples, one after the other.</param>
    public int Instants(int samples) => (samples * finer) + (2 * Beside);

    /// <summary>Samples of the rate one after the other; sample 0 stands at the first of the instants.</summary>
    /// <param name="lines">The sensor at the instants.</param>
    /// <param name="room">Room for what it says at <see cref="Instants"/>.</param>
    /// <param name="from">The first sample.</param>
    /// <param name="result">Receives the columns, shape (columns, n).</param>
    public void Read(EvenLines lines, EvenRoom room, int from, Memory<double>[] result)
    {
        var to = from + result[0].Length;
        var (first, last) = (Math.Max((from * finer) - Beside, 0), Math.Min(((to - 1) * finer) + Beside, lines.Count - 1));
        lines.Read(first, last + 1, room);
        for (var column = 0; column < result.Length; column++)
        {
            Read(room.Columns[column], first, from, lines.Count, result[column].Span);
        }
    }

    private void Read(double[] fine, int first, int from, int count, Span<double> result)
    {
        // So many sums side by side: each waits for its own last product.
        const int beside = 4;
        for (var i = 0; i < result.Length;)
        {
            var at = (from + i) * finer;
            if (at >= Beside && i + beside <= result.Length && at + ((beside - 1) * finer) + Beside < count)
            {
                Inside(fine.AsSpan(at - Beside - first), result.Slice(i, beside));
                i += beside;
            }
            else
            {
                result[i] = at >= Beside && at + Beside < count
                    ? Inside(fine.AsSpan(at - Beside - first, whole.Length))
                    : AtEnd(fine, at - first, count - first);
                i++;
            }
        }
    }

    // At the ends of a part the window is cut, and its weights are set right.
    private double AtEnd(double[] fine, int at, int count)
    {
        double sum = half[0] * fine[at], weight = half[0];
        for (var k = 1; k <= Beside; k++)
        {
            if (at >= k)
            {
                sum += half[k] * fine[at - k];
                weight += half[k];
            }

            if (at + k < count)
            {
                sum += half[k] * fine[at + k];
                weight += half[k];
            }
        }

        return sum / weight;
    }

    // The whole window at once, as many products side by side as the processor has room for.
    private double Inside(ReadOnlySpan<double> fine)
    {
        var width = Vector<double>.Count;
        var sums = Vector<double>.Zero;
        var k = 0;
        for (; k + width <= whole.Length; k += width)
        {
            sums += new Vector<double>(fine[k..]) * new Vector<double>(whole.AsSpan(k));
        }

        return Rest(fine, Vector.Sum(sums), k);
    }

    // The same four times, with the same sums.
    private void Inside(ReadOnlySpan<double> fine, Span<double> result)
    {
        var width = Vector<double>.Count;
        ref var values = ref MemoryMarshal.GetReference(fine);
        ref var weights = ref MemoryMarshal.GetArrayDataReference(whole);
        var (a, b, c, d) = (Vector<double>.Zero, Vector<double>.Zero, Vector<double>.Zero, Vector<double>.Zero);
        var k = 0;
        for (; k + width <= whole.Length; k += width)
        {
            var weight = Vector.LoadUnsafe(ref weights, (nuint)k);
            a += Vector.LoadUnsafe(ref values, (nuint)k) * weight;
            b += Vector.LoadUnsafe(ref values, (nuint)(k + finer)) * weight;
            c += Vector.LoadUnsafe(ref values, (nuint)(k + (2 * finer))) * weight;
            d += Vector.LoadUnsafe(ref values, (nuint)(k + (3 * finer))) * weight;
        }

        result[0] = Rest(fine, Vector.Sum(a), k);
        result[1] = Rest(fine[finer..], Vector.Sum(b), k);
        result[2] = Rest(fine[(2 * finer)..], Vector.Sum(c), k);
        result[3] = Rest(fine[(3 * finer)..], Vector.Sum(d), k);
    }

    private double Rest(ReadOnlySpan<double> fine, double sum, int from)
    {
        for (var k = from; k < whole.Length; k++)
        {
            sum += fine[k] * whole[k];
        }

        return sum;
    }

    // One half of the window, its weights adding up to 1 over both.
    private static double[] Half(int finer, int reach)
    {
        const double corner = 0.4;
        var kernel = new double[(reach * finer) + 1];
        var total = 0.0;
        for (var k = 0; k < kernel.Length; k++)
        {
            var x = k / (double)finer;
            var sinc = k == 0 ? 2.0 * corner : Math.Sin(2.0 * Math.PI * corner * x) / (Math.PI * x);
            kernel[k] = sinc * (0.54 + (0.46 * Math.Cos(Math.PI * x / reach)));
            total += k == 0 ? kernel[k] : 2.0 * kernel[k];
        }

        return [.. kernel.Select(w => w / total)];
    }
}
