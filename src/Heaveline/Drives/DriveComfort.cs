using System.Collections.Immutable;
using Heaveline.Drives.Events;
using Heaveline.Measures.Comfort;
using Heaveline.Numerics;

namespace Heaveline.Drives;

/// <summary>
/// The vibration of the floor under the phone in a drive, weighted as ISO 2631-1 weights that of a person: vertical by Wk, fore-aft and lateral by
/// Wd, roll and pitch by We, without factors k. Accelerations are taken as they were sampled, up to 0.4 of their rate; turning from the drive's grid.
/// </summary>
public sealed record DriveComfort
{
    // Shorter stretches are left out, s: the weighting begins at rest, and the running mean is one second long.
    private const double Shortest = 5.0;

    private const double Usable = WeightingFilter.UsableBand * (1.0 - 1e-9);

    // The end of the standard's range, Hz.
    private const double End = 80.0;

    /// <summary>Axes that are known, vertical first.</summary>
    public required ImmutableArray<ComfortAxis> Axes { get; init; }

    /// <summary>How long it was weighed for, s.</summary>
    public required double Length { get; init; }

    /// <summary>Up to which frequency, Hz.</summary>
    public required double Top { get; init; }

    /// <summary>
    /// Vibration total of the feet, m/s²: Wk on all three axes with the factors 0.25, 0.25 and 0.4; null where forward is not known.
    /// </summary>
    public double? Feet { get; init; }

    /// <summary>
    /// By what share the vertical value would be greater if vibration from <see cref="Top"/> to 80 Hz were as strong as in the last fifth below it.
    /// </summary>
    public required double Lost { get; init; }

    /// <summary>The comfort of a drive; null where the log does not bear it.</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="trust">What it is good for.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static DriveComfort? Of(Drive drive, Trust trust, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(drive);
        ArgumentNullException.ThrowIfNull(trust);
        if (trust.For(TrustUse.Comfort).Level == TrustLevel.None)
        {
            return null;
        }

        var rate = drive.Clock.Rate;
        // A hair less, so that the rate is not below what the last frequency asks for by rounding.
        var top = Math.Min(Usable * rate, End);
        (int From, int To)[] runs = [.. Runs(drive, rate)];
        if (runs.Length == 0)
        {
            return null;
        }

        var up = Along(drive, drive.Mount.Up, runs);
        var axes = ImmutableArray.CreateBuilder<ComfortAxis>();
        axes.Add(Weighed(MotionAxis.Z, Weightings.Wk, up, rate, top, stop));
        double? feet = null;
        if (drive.Mount.Forward is { } ahead)
        {
            stop.ThrowIfCancellationRequested();
            var (forward, left) = (Along(drive, ahead, runs), Along(drive, drive.Mount.Up.Cross(ahead), runs));
            axes.Add(Weighed(MotionAxis.X, Weightings.Wd, forward, rate, top, stop));
            axes.Add(Weighed(MotionAxis.Y, Weightings.Wd, left, rate, top, stop));
            var x = Weighed(MotionAxis.X, Weightings.Wk, forward, rate, top, stop);
            var y = Weighed(MotionAxis.Y, Weightings.Wk, left, rate, top, stop);
            feet = Math.Sqrt(new[] { x, y, axes[0] }.Sum(a => Math.Pow(PointAxis.Of(MeasuringPoint.Feet, a.Axis).ComfortFactor * a.Rms, 2.0)));
        }

        foreach (var (axis, turn) in new[] { (MotionAxis.Roll, drive.RollRate), (MotionAxis.Pitch, drive.PitchRate) }.Where(t => !t.Item2.IsEmpty))
        {
            double[][] parts = [.. drive.Covered
                .Where(c => c.Last - c.First >= Shortest * drive.Rate)
                .Select(c => MotionCurves.Derivative(turn.AsSpan()[c.First..(c.Last + 1)], drive.Rate))];
            if (parts.Length > 0)
            {
                axes.Add(Weighed(axis, Weightings.We, parts, drive.Rate, Usable * drive.Rate, stop));
            }
        }

        return new DriveComfort
        {
            Axes = axes.ToImmutable(),
            Length = runs.Sum(r => r.To - r.From + 1) / rate,
            Top = top,
            Feet = feet,
            Lost = LostOf(up, axes[0].Rms, rate, top, stop),
        };
    }

    // Stretches of the accelerometer's own samples that are covered and have no gap.
    private static IEnumerable<(int From, int To)> Runs(Drive drive, double rate)
    {
        var times = drive.Force.Times;
        var half = 0.5 / rate;
        foreach (var (first, last) in drive.Covered)
        {
            var (from, to) = (Place(drive.Time(first) - half), Place(drive.Time(last) + half) - 1);
            for (var i = from; i <= to; i++)
            {
                if (i == to || times[i + 1] - times[i] > 4.0 / rate)
                {
                    if (i - from >= Shortest * rate)
                    {
                        yield return (from, i);
                    }

                    from = i + 1;
                }
            }
        }

        int Place(double time) => Array.BinarySearch(times, time) is var found && found < 0 ? ~found : found;
    }

    // Without its mean: a filter from rest would take it for a step.
    private static double[][] Along(Drive drive, Direction axis, (int From, int To)[] runs)
    {
        var (force, along) = (drive.Force.Values, axis * drive.Mount.Gain);
        return [.. runs.Select(r =>
        {
            var values = new double[r.To - r.From + 1];
            for (var i = 0; i < values.Length; i++)
            {
                values[i] = (along.X * force[0][r.From + i]) + (along.Y * force[1][r.From + i]) + (along.Z * force[2][r.From + i]);
            }

            var mean = values.Average();
            for (var i = 0; i < values.Length; i++)
            {
                values[i] -= mean;
            }

            return values;
        })];
    }

    private static ComfortAxis Weighed(
        MotionAxis axis, Weighting weighting, double[][] parts, double rate, double top, CancellationToken stop)
    {
        stop.ThrowIfCancellationRequested();
        // The least bit below: at some rates 0.4 of the rate, over 0.4, is more than the rate.
        var filter = WeightingFilter.Of(weighting, rate, Math.Min(top * (1.0 - 1e-12), weighting.MustReach));
        var (square, fourth, count, mtvv, peak) = (0.0, 0.0, 0, 0.0, 0.0);
        foreach (var part in parts)
        {
            var weighted = filter.Weigh(SampledAcceleration.Of(part, rate));
            square += weighted.Rms * weighted.Rms * part.Length;
            fourth += Math.Pow(weighted.VibrationDose, 4.0);
            count += part.Length;
            (mtvv, peak) = (Math.Max(mtvv, weighted.LinearMtvv), Math.Max(peak, weighted.Peak));
        }

        return new ComfortAxis
        {
            Axis = axis,
            Weighting = weighting,
            Rms = Math.Sqrt(square / Math.Max(count, 1)),
            Mtvv = mtvv,
            Dose = Math.Pow(fourth, 0.25),
            Peak = peak,
        };
    }

    private static double LostOf(double[][] parts, double rms, double rate, double top, CancellationToken stop)
    {
        const int length = 256;
        if (top >= End || !(rms > 0.0))
        {
            return 0.0;
        }

        // Power per hertz in the last fifth of the band.
        var (sum, count) = (0.0, 0);
        double[] window = [.. Enumerable.Range(0, length).Select(k => 0.5 - (0.5 * Math.Cos(2.0 * Math.PI * (k + 0.5) / length)))];
        var scale = 2.0 / (rate * window.Sum(w => w * w));
        var (work, turns) = (new double[length], new FourierTurns(length));
        foreach (var part in parts)
        {
            for (var from = 0; from + length <= part.Length; from += length)
            {
                for (var k = 0; k < length; k++)
                {
                    work[k] = part[from + k] * window[k];
                }

                var of = RealFourier.Of(work, turns, stop);
                for (var k = (int)Math.Ceiling(0.8 * top * length / rate); k * rate / length <= top; k++)
                {
                    sum += scale * ((of[k].Real * of[k].Real) + (of[k].Imaginary * of[k].Imaginary));
                    count++;
                }
            }
        }

        var (lost, step) = (0.0, 0.5);
        for (var f = top + (0.5 * step); f < End; f += step)
        {
            var gain = Weightings.Wk.At(f).Magnitude;
            lost += gain * gain * step * sum / Math.Max(count, 1);
        }

        return Math.Sqrt(1.0 + (lost / (rms * rms))) - 1.0;
    }
}
