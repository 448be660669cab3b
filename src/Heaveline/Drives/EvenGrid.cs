using System.Collections.Immutable;
using System.Globalization;
using Heaveline.Numerics;
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

    /// <summary>All samples that are covered, in time.</summary>
    public int[] Rows()
    {
        var rows = new int[Covered.Sum(c => c.Last - c.First + 1)];
        var n = 0;
        foreach (var (first, last) in Covered)
        {
            for (var i = first; i <= last; i++)
            {
                rows[n++] = i;
            }
        }

        return rows;
    }

    /// <summary>The values at <see cref="Rows"/>.</summary>
    /// <param name="values">Values at all samples.</param>
    public double[] Covering(double[] values)
    {
        var result = new double[Covered.Sum(c => c.Last - c.First + 1)];
        var n = 0;
        foreach (var (first, last) in Covered)
        {
            values.AsSpan(first, last - first + 1).CopyTo(result.AsSpan(n));
            n += last - first + 1;
        }

        return result;
    }

    /// <summary>The sums of several sensors' columns on the grid.</summary>
    /// <param name="tracks">The sensors, at least one.</param>
    /// <param name="stop">Stops it.</param>
    public double[][] Read(TimedTrack[] tracks, CancellationToken stop)
    {
        var sum = Read(tracks[0], stop);
        foreach (var more in tracks.Skip(1))
        {
            var columns = Read(more, stop);
            for (var k = 0; k < sum.Length; k++)
            {
                for (var i = 0; i < Count; i++)
                {
                    sum[k][i] += columns[k][i];
                }
            }
        }

        return sum;
    }

    /// <summary>A sensor's columns on the grid; 0 where the grid is not covered. Worked off in parts, each as if it were the only one.</summary>
    /// <param name="track">The sensor.</param>
    /// <param name="stop">Stops it.</param>
    public double[][] Read(TimedTrack track, CancellationToken stop = default)
    {
        // So many instants fit a core's own memory.
        const int most = 8192;
        var result = track.Values.Select(_ => new double[Count]).ToArray();
        var finer = Math.Max(4, (int)Math.Ceiling(2.0 * track.Clock.Rate / Rate));
        var (window, part) = (new EvenWindow(finer, Reach), Math.Max(most / finer, 16));
        foreach (var (first, last) in Covered)
        {
            var lines = new EvenLines(track, Time(first), 1.0 / (Rate * finer), ((last - first) * finer) + 1);
            ParallelLoop.Each((last - first + part) / part, -1, () => lines.Room(window.Instants(part)), (k, room) =>
            {
                var (from, to) = (k * part, Math.Min((k + 1) * part, last - first + 1));
                window.Read(lines, room, from, [.. result.Select(r => r.AsMemory(first + from, to - from))]);
            }, _ => { }, stop);
        }

        return result;
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
