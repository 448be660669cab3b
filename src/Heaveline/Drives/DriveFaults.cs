using System.Numerics;
using System.Runtime.InteropServices;
using Heaveline.Elements;
using Heaveline.Numerics;

namespace Heaveline.Drives;

/// <summary>Looks for what makes a log false: folding, the engine, clipping, a phone that leaves the floor, gaps.</summary>
internal sealed class DriveFaults(Drive drive, CancellationToken stop)
{
    /// <summary>
    /// The top fifth of the band may hold this share of the power of the fifth below. A proposal of this program, tried on real logs.
    /// </summary>
    public const double FoldedPower = 0.3;

    // Less than this in the top fifth is the sensor's own noise, m/s² (RMS): ten steps of 0.5 mg.
    private const double LeastFolded = 0.05;
    private const double FreeFall = 0.05 * Gravity.Standard;
    private const double Around = 1.0;
    private const double LeastHum = 0.05;
    private const double HumOverFloor = 6.0;

    // A run of so many equal samples at the full scale is clipped.
    private const int ClippedRun = 3;

    // So long a run at a full scale of its own is no chance (common practice, no source).
    private const int LongRun = 5;
    private const double MostRepeats = 0.2;

    // Nearer to the middle no sensor's scale ends, m/s² and rad/s (common practice, no source).
    private const double LeastForce = 5.0;
    private const double LeastTurn = 0.5;
    private static readonly double[] FullScales = [2.0, 4.0, 8.0, 16.0];
    private readonly TimedTrack force = drive.Force;

    /// <summary>Power of the top fifth of the band over that of the fifth below, and the engine's hum.</summary>
    public (double? TopPower, EngineLine? Engine) Spectrum()
    {
        var rate = drive.Clock.Rate;
        var length = (int)BitOperations.RoundUpToPowerOf2((uint)Math.Clamp(2.0 * rate, 16.0, 65536.0));
        var density = Density(length, rate);
        if (density is null)
        {
            return (null, null);
        }

        var step = rate / length;
        double Power(double from, double to)
        {
            var sum = 0.0;
            for (var k = 1; k < density.Length; k++)
            {
                sum += k * step >= from && k * step < to ? density[k] * step : 0.0;
            }

            return sum;
        }

        var half = 0.5 * rate;
        var (top, below) = (Power(0.8 * half, half), Power(0.6 * half, 0.8 * half));
        double? share = Math.Sqrt(top) > LeastFolded && below > 0.0 ? top / below : null;
        return (share, Hum(density, step, 0.5 * rate));
    }

    /// <summary>Where accelerometer or gyro stand at their full scale.</summary>
    /// <param name="share">Share of the accelerometer's samples.</param>
    public IReadOnlyList<double> Clips(out double share)
    {
        var clips = new List<double>();
        var count = force.Values.Sum(column => Clips(force.Times, column, LeastForce, isForce: true, clips));
        share = count / (double)force.Times.Length;
        if (drive.Log.Of(SensorKind.TurnRate) is { } turn)
        {
            var times = ImmutableCollectionsMarshal.AsArray(turn.Times)!;
            foreach (var column in turn.Values)
            {
                Clips(times, ImmutableCollectionsMarshal.AsArray(column)!, LeastTurn, isForce: false, clips);
            }
        }

        clips.Sort();
        return clips;
    }

    // Equal samples in a run at the column's own farthest, upwards or downwards. A full scale that is none of the usual must be met twice, or for
    // long, and stand far from the middle; a column that repeats its values anyway (a slow sensor in fast rows) shows nothing.
    private static int Clips(double[] times, double[] column, double least, bool isForce, List<double> clips)
    {
        var (most, lowest, middle) = (column.Max(), column.Min(), column.Average());
        var repeats = 0;
        List<(int From, int Length)> high = [], low = [];
        for (var i = 1; i < column.Length; i++)
        {
            if (column[i] != column[i - 1])
            {
                continue;
            }

            var from = i - 1;
            while (i + 1 < column.Length && column[i + 1] == column[from])
            {
                i++;
            }

            var length = i + 1 - from;
            repeats += length - 1;
            if (length >= ClippedRun)
            {
                Add(high, most, from, length);
                Add(low, lowest, from, length);
            }
        }

        return Counted(high, most) + Counted(low, lowest);

        void Add(List<(int From, int Length)> runs, double end, int from, int length)
        {
            if (Math.Abs(column[from] - end) <= 0.001 * Math.Abs(end))
            {
                runs.Add((from, length));
            }
        }

        int Counted(List<(int From, int Length)> runs, double end)
        {
            var isUsual = isForce && FullScales.Any(s => Math.Abs((Math.Abs(end) / (s * Gravity.Standard)) - 1.0) < 0.03);
            var isOwn = Math.Abs(end - middle) > least && repeats < MostRepeats * column.Length
                && (runs.Count > 1 || runs.Any(r => r.Length >= LongRun));
            if (!isUsual && !isOwn)
            {
                return 0;
            }

            clips.AddRange(runs.Select(r => times[r.From]));
            return runs.Sum(r => r.Length);
        }
    }

    /// <summary>When the specific force along up fell to nothing: the phone left the floor.</summary>
    public IReadOnlyList<double> Flights()
    {
        var flights = new List<double>();
        foreach (var (first, last) in drive.Covered)
        {
            for (var i = first; i <= last; i++)
            {
                if (drive.Vertical[i] < FreeFall - Gravity.Standard && (flights.Count == 0 || drive.Time(i) - flights[^1] > 0.5))
                {
                    flights.Add(drive.Time(i));
                }
            }
        }

        return flights;
    }

    /// <summary>What nothing is read from: what is not covered, and what lies about clips and flights.</summary>
    public IEnumerable<DroppedStretch> Dropped(IReadOnlyList<double> clips, IReadOnlyList<double> flights)
    {
        var dropped = new List<DroppedStretch>();
        var before = drive.Start;
        var end = drive.Time(drive.Vertical.Length - 1);
        foreach (var (first, last) in drive.Covered)
        {
            Add(before, drive.Time(first), "not covered");
            before = drive.Time(last);
        }

        Add(before, end, "not covered");
        AddAround(clips, "clipped");
        AddAround(flights, "left the floor");
        return dropped.OrderBy(d => d.Part.From);

        void AddAround(IReadOnlyList<double> instants, string reason)
        {
            foreach (var t in instants.Order())
            {
                var (from, to) = (Math.Max(t - Around, drive.Start), Math.Min(t + Around, end));
                if (dropped.Count > 0 && dropped[^1] is { Part: var last, Reason: var same } && same == reason && from <= last.To)
                {
                    dropped[^1] = new DroppedStretch(new Stretch(last.From, to), reason);
                }
                else
                {
                    Add(from, to, reason);
                }
            }
        }

        void Add(double from, double to, string reason)
        {
            if (to - from > 1.5 / drive.Rate)
            {
                dropped.Add(new DroppedStretch(new Stretch(from, to), reason));
            }
        }
    }

    // Vertical acceleration as it was sampled: folding cannot be seen any more after a filter.
    private double[]? Density(int length, double rate)
    {
        var up = drive.Mount.Up * drive.Mount.Gain;
        var times = force.Times;
        var longest = 4.0 / rate;
        double[] window = [.. Enumerable.Range(0, length).Select(k => 0.5 - (0.5 * Math.Cos(2.0 * Math.PI * (k + 0.5) / length)))];
        var scale = 2.0 / (rate * window.Sum(w => w * w));
        var sum = new double[(length / 2) + 1];
        var (count, runFrom) = (0, 0);
        var (part, turns) = (new double[length], new FourierTurns(length));
        var parts = drive.Covered;
        for (var from = 0; from + length <= times.Length;)
        {
            stop.ThrowIfCancellationRequested();
            var gap = Gap(Math.Max(from, runFrom), from + length);
            if (gap >= 0)
            {
                from = gap;
                runFrom = gap;
                continue;
            }

            runFrom = from + (length / 2);
            if (parts.Any(p => times[from] >= drive.Time(p.First) - longest && times[from + length - 1] <= drive.Time(p.Last) + longest))
            {
                var mean = 0.0;
                for (var k = 0; k < length; k++)
                {
                    part[k] = (up.X * force.Values[0][from + k]) + (up.Y * force.Values[1][from + k]) + (up.Z * force.Values[2][from + k]);
                    mean += part[k] / length;
                }

                for (var k = 0; k < length; k++)
                {
                    part[k] = (part[k] - mean) * window[k];
                }

                var of = RealFourier.Of(part, turns, stop);
                for (var k = 0; k < sum.Length; k++)
                {
                    sum[k] += scale * ((of[k].Real * of[k].Real) + (of[k].Imaginary * of[k].Imaginary));
                }

                count++;
            }

            from += length / 2;
        }

        return count == 0 ? null : [.. sum.Select(s => s / count)];

        int Gap(int from, int to)
        {
            for (var i = from + 1; i < to; i++)
            {
                if (times[i] - times[i - 1] > longest)
                {
                    return i;
                }
            }

            return -1;
        }
    }

    // A narrow peak above what lies about it, where a four-cylinder engine fires at 660 to 1350 turns a minute, twice a turn.
    private static EngineLine? Hum(double[] density, double step, double half)
    {
        const double lowest = 22.0;
        const double highest = 45.0;
        var (best, at) = (HumOverFloor, -1);
        var reach = (int)Math.Round(4.0 / step);
        for (var k = (int)Math.Ceiling(lowest / step); k * step <= Math.Min(highest, 0.95 * half); k++)
        {
            var about = Middle.Of(density.AsSpan(Math.Max(k - reach, 1)..Math.Min(k + reach + 1, density.Length)).ToArray());
            if (about > 0.0 && density[k] / about > best)
            {
                (best, at) = (density[k] / about, k);
            }
        }

        if (at < 0)
        {
            return null;
        }

        var floor = density[at] / best;
        var (power, moment) = (0.0, 0.0);
        for (var k = Math.Max(at - 2, 1); k <= Math.Min(at + 2, density.Length - 1); k++)
        {
            var own = Math.Max(density[k] - floor, 0.0) * step;
            power += own;
            moment += own * k * step;
        }

        var amplitude = Math.Sqrt(2.0 * power);
        return amplitude >= LeastHum ? new EngineLine(moment / power, amplitude) : null;
    }
}
