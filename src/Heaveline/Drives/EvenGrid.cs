using System.Collections.Immutable;
using System.Globalization;
using System.Numerics;
using Heaveline.Quantities;

namespace Heaveline.Drives;

/// <summary>
/// One even grid of instants for all sensors, and each sensor brought to it by the same filter: straight lines to a grid four times finer (or twice
/// the sensor's own rate), then a windowed sine cardinal whose corner lies at 0.4 of the rate. Gaps stay gaps.
/// </summary>
internal sealed class EvenGrid
{
    /// <summary>The rate of a grid where the sensor is no slower, Hz.</summary>
    public const double UsualRate = 100.0;

    // No drive is longer, s: two days. A stamp far from all others would ask for memory without end.
    private const double Longest = 2.0 * 86_400.0;

    // Samples of the grid on either side that the window spans (Hamming: what folds down from half the rate on is below a hundredth).
    private const int Reach = 8;

    private EvenGrid(double rate, double start, int count, ImmutableArray<(int First, int Last)> covered) =>
        (Rate, Start, Count, Covered) = (rate, start, count, covered);

    /// <summary>Samples a second, Hz.</summary>
    public double Rate { get; }

    /// <summary>The first instant, s.</summary>
    public double Start { get; }

    /// <summary>How many instants.</summary>
    public int Count { get; }

    /// <summary>Where every sensor has samples: first and last instant of each part.</summary>
    public ImmutableArray<(int First, int Last)> Covered { get; }

    /// <summary>The corner of its filter, Hz.</summary>
    public double Corner => 0.4 * Rate;

    /// <summary>The grid on which sensors overlap.</summary>
    /// <param name="tracks">The sensors that must all be there, the one that sets the rate first.</param>
    /// <exception cref="RefusedValueException">From the first to the last instant it is longer than two days.</exception>
    public static EvenGrid Over(params IReadOnlyList<TimedTrack> tracks)
    {
        var rate = Math.Min(UsualRate, tracks[0].Clock.Rate);
        // A clock that keeps nearly the usual rate is brought to it, so that its own drift does not set the grid.
        rate = rate > 0.97 * UsualRate ? UsualRate : rate;
        var (start, end) = (tracks.Max(t => t.Times[0]), tracks.Min(t => t.Times[^1]));
        if (end - start > Longest)
        {
            throw new RefusedValueException(
                "time from the log's first stamp to its last",
                string.Create(CultureInfo.InvariantCulture, $"{(end - start) / 3600.0:F0} h"),
                "48 h or less",
                "Perhaps one stamp lies far from all others, or the clock was set on the way: take out those rows, or cut the log there.");
        }

        var count = end > start ? (int)Math.Floor((end - start) * rate * (1.0 + 1e-12)) + 1 : 0;
        var covered = ImmutableArray.CreateBuilder<(int, int)>();
        var first = 0;
        foreach (var gap in Joined(tracks.SelectMany(t => t.Clock.Gaps)))
        {
            Add(first, (int)Math.Floor((gap.From - start) * rate));
            first = Math.Max(first, (int)Math.Ceiling((gap.To - start) * rate));
        }

        Add(first, count - 1);
        return new EvenGrid(rate, start, count, covered.ToImmutable());

        void Add(int from, int to)
        {
            to = Math.Min(to, count - 1);
            // Shorter than the filter's own window: nothing can be read there.
            if (to - from >= 2 * Reach)
            {
                covered.Add((from, to));
            }
        }
    }

    /// <summary>The instant of a sample, s.</summary>
    public double Time(int i) => Start + (i / Rate);

    /// <summary>The same grid, covered between two instants alone.</summary>
    public EvenGrid Within(Stretch part)
    {
        var (from, to) = ((int)Math.Ceiling((part.From - Start) * Rate), (int)Math.Floor((part.To - Start) * Rate));
        return new EvenGrid(Rate, Start, Count,
            [.. Covered.Select(c => (First: Math.Max(c.First, from), Last: Math.Min(c.Last, to))).Where(c => c.Last - c.First >= 2 * Reach)]);
    }

    /// <summary>A sensor's column on the grid; 0 where the grid is not covered.</summary>
    /// <param name="track">The sensor.</param>
    /// <param name="column">Which of its columns.</param>
    public double[] Read(TimedTrack track, int column)
    {
        var result = new double[Count];
        var finer = Math.Max(4, (int)Math.Ceiling(2.0 * track.Clock.Rate / Rate));
        var kernel = Kernel(finer);
        double[] whole = [.. kernel.Skip(1).Reverse(), .. kernel];
        foreach (var (first, last) in Covered)
        {
            var fine = Lines(track.Times, track.Values[column], Time(first), 1.0 / (Rate * finer), ((last - first) * finer) + 1);
            for (var i = first; i <= last; i++)
            {
                result[i] = At(fine, kernel, whole, (i - first) * finer);
            }
        }

        return result;
    }

    // Straight lines between samples; beyond the ends the last value stands.
    private static double[] Lines(double[] times, double[] values, double start, double step, int count)
    {
        var result = new double[count];
        var k = Math.Max(Array.BinarySearch(times, start) is var found && found < 0 ? ~found - 1 : found, 0);
        for (var i = 0; i < count;)
        {
            while (k + 2 < times.Length && times[k + 1] <= start + (i * step))
            {
                k++;
            }

            // All instants up to the next sample lie on one line.
            var (from, per, value, rise) = (times[k], 1.0 / (times[k + 1] - times[k]), values[k], values[k + 1] - values[k]);
            var end = k + 2 < times.Length ? times[k + 1] : double.PositiveInfinity;
            do
            {
                result[i] = value + (Math.Clamp((start + (i * step) - from) * per, 0.0, 1.0) * rise);
                i++;
            }
            while (i < count && start + (i * step) < end);
        }

        return result;
    }

    private static double At(double[] fine, double[] kernel, double[] whole, int at)
    {
        var reach = kernel.Length - 1;
        double sum = kernel[0] * fine[at], weight = kernel[0];
        if (at >= reach && at + reach < fine.Length)
        {
            return Inside(fine.AsSpan(at - reach, (2 * reach) + 1), whole);
        }

        // At the ends of a part the window is cut, and its weights are set right.
        for (var k = 1; k <= reach; k++)
        {
            if (at >= k)
            {
                sum += kernel[k] * fine[at - k];
                weight += kernel[k];
            }

            if (at + k < fine.Length)
            {
                sum += kernel[k] * fine[at + k];
                weight += kernel[k];
            }
        }

        return sum / weight;
    }

    // The whole window at once, as many products side by side as the processor has room for.
    private static double Inside(ReadOnlySpan<double> fine, ReadOnlySpan<double> whole)
    {
        var width = Vector<double>.Count;
        var sums = Vector<double>.Zero;
        var k = 0;
        for (; k + width <= whole.Length; k += width)
        {
            sums += new Vector<double>(fine[k..]) * new Vector<double>(whole[k..]);
        }

        var sum = Vector.Sum(sums);
        for (; k < whole.Length; k++)
        {
            sum += fine[k] * whole[k];
        }

        return sum;
    }

    // One half of the window, its weights adding up to 1 over both.
    private static double[] Kernel(int finer)
    {
        const double corner = 0.4;
        var kernel = new double[(Reach * finer) + 1];
        var total = 0.0;
        for (var k = 0; k < kernel.Length; k++)
        {
            var x = k / (double)finer;
            var sinc = k == 0 ? 2.0 * corner : Math.Sin(2.0 * Math.PI * corner * x) / (Math.PI * x);
            kernel[k] = sinc * (0.54 + (0.46 * Math.Cos(Math.PI * x / Reach)));
            total += k == 0 ? kernel[k] : 2.0 * kernel[k];
        }

        return [.. kernel.Select(w => w / total)];
    }

    private static IEnumerable<Stretch> Joined(IEnumerable<Stretch> gaps)
    {
        Stretch? open = null;
        foreach (var gap in gaps.OrderBy(g => g.From))
        {
            if (open is { } before && gap.From <= before.To)
            {
                open = new Stretch(before.From, Math.Max(before.To, gap.To));
                continue;
            }

            if (open is { } done)
            {
                yield return done;
            }

            open = gap;
        }

        if (open is { } last)
        {
            yield return last;
        }
    }
}
