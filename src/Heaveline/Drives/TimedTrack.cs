using System.Collections.Immutable;
using System.Runtime.InteropServices;
using Heaveline.Numerics;

namespace Heaveline.Drives;

/// <summary>A sensor with its stamps put right: instants that rise, and no sample twice.</summary>
internal sealed class TimedTrack
{
    // A step this many times the usual one is a gap.
    private const double GapSteps = 4.0;

    // Beyond this share of equal stamps the logger wrote batches.
    private const double BatchShare = 0.3;

    private TimedTrack(SensorTrack track, double[] times, double[][] values, Clock clock) =>
        (Track, Times, Values, Clock) = (track, times, values, clock);

    /// <summary>What was logged.</summary>
    public SensorTrack Track { get; }

    /// <summary>Instants, s, rising, shape (n).</summary>
    public double[] Times { get; }

    /// <summary>Values, SI units, shape (columns, n).</summary>
    public double[][] Values { get; }

    /// <summary>How it kept time.</summary>
    public Clock Clock { get; }

    /// <summary>Puts the stamps of a sensor right; null where there are too few to tell a rate.</summary>
    /// <param name="track">The sensor.</param>
    public static TimedTrack? Of(SensorTrack track)
    {
        const int fewest = 3;
        var times = track.Times.ToArray();
        var values = track.Values.Select(v => ImmutableCollectionsMarshal.AsArray(v)!).ToArray();
        if (times.Length < fewest || Steps(times) is not { Length: >= fewest - 1 } steps)
        {
            return null;
        }

        var usual = Middle.Of(steps);
        var back = MoveOn(times, usual);
        var twice = Twice(times);
        var isSame = twice > 0 && IsMostlySame(times, values);
        if (isSame)
        {
            (times, values) = Once(times, values);
        }

        if (back.Length > 0)
        {
            steps = Steps(times);
            usual = Middle.Of(steps);
        }

        var isBatched = IsBatched(times, steps, usual);
        if (isBatched)
        {
            times = Straightened(times);
        }
        else if (twice > 0 && !isSame)
        {
            Spread(times);
        }

        if (isBatched || (twice > 0 && !isSame))
        {
            steps = Steps(times);
            if (steps.Length < fewest - 1)
            {
                return null;
            }

            usual = Middle.Of(steps);
        }

        return new TimedTrack(track, times, values, new Clock
        {
            Rate = RateOf(steps, GapSteps * usual),
            Jitter = 1.4826 * Middle.Of(Off(steps, usual)),
            Gaps = [.. Gaps(times, GapSteps * usual)],
            Repeats = twice,
            StepsBack = back,
            IsBatched = isBatched,
            Length = times[^1] - times[0],
        });
    }

    /// <summary>The samples between two instants; null where there are too few to tell a rate.</summary>
    /// <param name="part">From when to when, both with it.</param>
    public TimedTrack? Within(Stretch part)
    {
        const int fewest = 3;
        var (from, to) = (0, Times.Length);
        while (from < to && Times[from] < part.From)
        {
            from++;
        }

        while (to > from && Times[to - 1] > part.To)
        {
            to--;
        }

        if (to - from < fewest)
        {
            return null;
        }

        var (times, steps) = (Times[from..to], Steps(Times[from..to]));
        return new TimedTrack(Track, times, [.. Values.Select(v => v[from..to])], Clock with
        {
            Rate = RateOf(steps, GapSteps * Middle.Of(steps)),
            Gaps = [.. Clock.Gaps.Where(g => g.From >= Times[from] && g.To <= Times[to - 1])],
            Length = Times[to - 1] - Times[from],
        });
    }

    private static double[] Steps(double[] times)
    {
        var steps = new double[times.Length];
        var n = 0;
        for (var i = 1; i < times.Length; i++)
        {
            if (times[i] > times[i - 1])
            {
                steps[n++] = times[i] - times[i - 1];
            }
        }

        return n == steps.Length ? steps : steps[..n];
    }

    private static int Twice(double[] times)
    {
        var twice = 0;
        for (var i = 1; i < times.Length; i++)
        {
            twice += times[i] == times[i - 1] ? 1 : 0;
        }

        return twice;
    }

    // Steps up to the longest that is no gap, over the time that they take.
    private static double RateOf(double[] steps, double most)
    {
        var (sum, count) = (0.0, 0);
        foreach (var step in steps)
        {
            if (step <= most)
            {
                (sum, count) = (sum + step, count + 1);
            }
        }

        return count / sum;
    }

    private static double[] Off(double[] steps, double usual)
    {
        var off = new double[steps.Length];
        for (var i = 0; i < off.Length; i++)
        {
            off[i] = Math.Abs(steps[i] - usual);
        }

        return off;
    }

    private static List<Stretch> Gaps(double[] times, double most)
    {
        var gaps = new List<Stretch>();
        for (var i = 1; i < times.Length; i++)
        {
            if (times[i] - times[i - 1] > most)
            {
                gaps.Add(new Stretch(times[i - 1], times[i]));
            }
        }

        return gaps;
    }

    // A clock that was set back: all that follows is moved on, as if the next sample had come a usual step later.
    private static ImmutableArray<double> MoveOn(double[] times, double usual)
    {
        var back = ImmutableArray.CreateBuilder<double>();
        var moved = 0.0;
        for (var i = 1; i < times.Length; i++)
        {
            times[i] += moved;
            if (times[i] < times[i - 1])
            {
                var by = times[i - 1] - times[i];
                back.Add(by);
                moved += by + usual;
                times[i] = times[i - 1] + usual;
            }
        }

        return back.ToImmutable();
    }

    private static bool IsSameRow(double[][] values, int i) => values.All(v => v[i] == v[i - 1]);

    // Rows written twice bear the same values; samples that share a stamp differ.
    private static bool IsMostlySame(double[] times, double[][] values)
    {
        var (same, all) = (0, 0);
        for (var i = 1; i < times.Length; i++)
        {
            if (times[i] == times[i - 1])
            {
                all++;
                same += IsSameRow(values, i) ? 1 : 0;
            }
        }

        return 2 * same > all;
    }

    private static (double[] Times, double[][] Values) Once(double[] times, double[][] values)
    {
        int[] kept = [.. Enumerable.Range(0, times.Length).Where(i => i == 0 || times[i] != times[i - 1])];
        return ([.. kept.Select(i => times[i])], [.. values.Select(v => kept.Select(i => v[i]).ToArray())]);
    }

    // Many equal stamps, or bursts of tiny steps with long ones between that take most of the time: the median step says nothing then.
    private static bool IsBatched(double[] times, double[] steps, double usual)
    {
        const int fewest = 5;
        var (pauses, sum) = (0, 0.0);
        foreach (var step in steps)
        {
            if (step > GapSteps * usual)
            {
                (pauses, sum) = (pauses + 1, sum + step);
            }
        }

        return Twice(times) > BatchShare * times.Length
            || (pauses >= Math.Max(fewest, 0.01 * steps.Length) && sum > 0.5 * (times[^1] - times[0]));
    }

    // Between long silences the samples came evenly: a straight line through each batch's last stamps.
    private static double[] Straightened(double[] times)
    {
        int[] ends = [.. BatchEnds(times)];
        var pauses = Enumerable.Range(1, Math.Max(ends.Length - 1, 0)).Select(k => times[ends[k]] - times[ends[k - 1]]).ToArray();
        var longest = pauses.Length == 0 ? double.PositiveInfinity : GapSteps * Middle.Of(pauses);
        var result = new double[times.Length];
        var first = 0;
        for (var (k, run) = (0, 0); k < ends.Length; k++)
        {
            if (k + 1 < ends.Length && times[ends[k + 1]] - times[ends[k]] <= longest)
            {
                continue;
            }

            Line(times, ends.AsSpan(run, k + 1 - run), result, first, ends[k]);
            first = ends[k] + 1;
            run = k + 1;
        }

        return result;
    }

    private static IEnumerable<int> BatchEnds(double[] times)
    {
        var steps = Steps(times);
        var mean = (times[^1] - times[0]) / (times.Length - 1);
        var least = Math.Min(0.5 * steps.Max(), 1.5 * mean);
        return Enumerable.Range(0, times.Length).Where(i => i + 1 == times.Length || times[i + 1] - times[i] > least);
    }

    private static void Line(double[] times, ReadOnlySpan<int> ends, double[] result, int first, int last)
    {
        double mean = 0.0, at = 0.0, square = 0.0, product = 0.0;
        foreach (var i in ends)
        {
            mean += i;
            at += times[i];
        }

        mean /= ends.Length;
        at /= ends.Length;
        foreach (var i in ends)
        {
            square += (i - mean) * (i - mean);
            product += (i - mean) * (times[i] - at);
        }

        // One batch alone has no line: its samples stand a mean step apart.
        var step = square > 0.0 ? product / square : (times[^1] - times[0]) / (times.Length - 1);
        for (var i = first; i <= last; i++)
        {
            result[i] = at + (step * (i - mean));
        }

        // A line may not reach back over the run before it.
        if (first > 0 && result[first] <= result[first - 1])
        {
            var by = result[first - 1] - result[first] + step;
            for (var i = first; i <= last; i++)
            {
                result[i] += by;
            }
        }
    }

    // A few samples that share a stamp: evenly up to the next one.
    private static void Spread(double[] times)
    {
        for (var i = 0; i < times.Length;)
        {
            var next = i + 1;
            while (next < times.Length && times[next] == times[i])
            {
                next++;
            }

            var step = next < times.Length ? (times[next] - times[i]) / (next - i) : i > 0 ? (times[i] - times[i - 1]) / (next - i) : 0.0;
            for (var k = i + 1; k < next; k++)
            {
                times[k] = times[i] + ((k - i) * step);
            }

            i = next;
        }
    }
}
