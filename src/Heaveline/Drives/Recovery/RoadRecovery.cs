using System.Collections.Immutable;
using System.Numerics;
using Heaveline.Drives.Events;
using Heaveline.Drives.Identification;
using Heaveline.Numerics;
using Heaveline.Passes;

namespace Heaveline.Drives.Recovery;

/// <summary>
/// The road that one pass of a drive met: the hump that all passes of its site share, and what is left of the signals, through the car backwards by
/// Wiener's filter [Wiener, Extrapolation, Interpolation, and Smoothing of Stationary Time Series, 1949]: conj(H)·Y/N over |H|²/N + 1/S, both
/// channels together, in windows of five seconds that overlap by half and add up to one.
/// </summary>
internal sealed class RoadRecovery
{
    // Windows, s, and where they begin about the onset: whole from 1.5 s before it to 3.5 s after, fading to level within 2.5 s more.
    private const double Usual = 5.0;
    private const double First = -4.0;
    private const int Windows = 3;

    // The band that is read, Hz, as the estimator's; a hump's own answer is drawn higher.
    private const double Lowest = 0.4;
    private const double HighestOfHump = 20.0;

    // How long a hump is felt, s.
    private const double Felt = 4.0;

    // Distance between heights, m.
    private const double Spacing = 0.05;

    private readonly Drive drive;
    private readonly DriveEvents events;
    private readonly CarFromDrive found;
    private readonly CancellationToken stop;
    private readonly double rate;
    private readonly int count;

    public RoadRecovery(Drive drive, DriveEvents events, CarFromDrive found, CancellationToken stop)
    {
        (this.drive, this.events, this.found, this.stop, rate) = (drive, events, found, stop, drive.Rate);
        count = (int)BitOperations.RoundUpToPowerOf2((uint)(Usual * rate));
    }

    /// <summary>Passes of the drive whose road can be recovered, in time.</summary>
    public IEnumerable<FittedWindow> Passes => found.Windows.Where(w => w is { Site: not null, Event: > 0 });

    /// <summary>The road of a pass.</summary>
    public RecoveredRoad Of(FittedWindow pass)
    {
        var hump = found.Humps.First(h => h.Site == pass.Site);
        var (onset, speed) = (Onset(pass), pass.Speed);
        var (begin, length) = Stretch(onset);
        var (vertical, pitch) = Left(begin, length);
        var rough = new double[length];
        var variance = Wiener(vertical, pitch, speed, rough);
        double[] places = [.. Enumerable.Range(0, length).Select(i => Place(begin + i, onset, speed))];
        var (from, to) = (places[0], places[^1]);
        var n = (int)Math.Floor((to - from) / Spacing) + 1;
        var (distance, height, half) = (new double[n], new double[n], new double[n]);
        var k = 0;
        for (var i = 0; i < n; i++)
        {
            var x = distance[i] = from + (i * Spacing);
            while (k + 2 < length && places[k + 1] <= x)
            {
                k++;
            }

            var gap = places[k + 1] - places[k];
            var share = gap > 0.0 ? Math.Clamp((x - places[k]) / gap, 0.0, 1.0) : 0.0;
            var (above, width) = (At(hump, hump.Height, x), At(hump, hump.HalfWidth, x));
            height[i] = above + rough[k] + (share * (rough[k + 1] - rough[k]));
            half[i] = Math.Sqrt((width * width) + (Gaussian.Ninety * Gaussian.Ninety * variance));
        }

        var site = events.Sites.First(s => s.Name == pass.Site);
        double[] speeds = [.. Passes.Where(p => p.Site == pass.Site).Select(p => p.Speed)];
        return new RecoveredRoad
        {
            Site = site.Name,
            Distance = [.. distance],
            Height = [.. height],
            HalfWidth = [.. half],
            Hump = (0.0, Math.Min(site.Length > 0.0 ? site.Length : hump.Distance[^1], hump.Distance[^1])),
            ShortestWave = speed / found.Known!.Band,
            LongestWave = speed / 0.5,
            Passes = speeds.Length,
            Speeds = (speeds.Min(), speeds.Max()),
            Speed = speed,
            Event = pass.Event,
        };
    }

    /// <summary>
    /// A pass's road, moved by what a car's own pass over it leaves of the signals, through the linear car backwards: step by step to the road over
    /// which that car, its stops, friction and curves with it, moves as the drive did.
    /// </summary>
    /// <param name="pass">The pass.</param>
    /// <param name="road">Its road so far.</param>
    /// <param name="driven">The car's pass over that road, from its first point on, at the pass's speed.</param>
    /// <returns>The road, and the power that the car's pass leaves of both signals over that of their noises, where the hump is felt.</returns>
    public (RecoveredRoad Road, double Left) Nearer(FittedWindow pass, RecoveredRoad road, Pass driven)
    {
        var onset = Onset(pass);
        var (begin, length) = Stretch(onset);
        var (vertical, pitch) = Left(begin, length, pass);
        double[] places = [.. Enumerable.Range(0, length).Select(i => Place(begin + i, onset, pass.Speed))];
        var (up, turn) = (driven.VerticalAcceleration(found.Mean[CarParameter.Phone], 0.0), driven.PitchRate);
        var left = 0.0;
        for (var i = 0; i < length; i++)
        {
            var at = (((places[i] - road.Distance[0]) / pass.Speed) - driven.Start) / driven.SampleStep;
            vertical[i] -= Between(up, at);
            pitch[i] -= found.GyroGain * Between(turn, at);
            left += places[i] >= 0.0 && places[i] < pass.Speed * Felt
                ? (vertical[i] * vertical[i] / found.VerticalNoise) + (pitch[i] * pitch[i] / found.PitchNoise)
                : 0.0;
        }

        var more = new double[length];
        Wiener(vertical, pitch, pass.Speed, more);
        var (heights, k) = (road.Height.ToArray(), 0);
        for (var i = 0; i < heights.Length; i++)
        {
            while (k + 2 < length && places[k + 1] <= road.Distance[i])
            {
                k++;
            }

            var gap = places[k + 1] - places[k];
            var share = gap > 0.0 ? Math.Clamp((road.Distance[i] - places[k]) / gap, 0.0, 1.0) : 0.0;
            heights[i] += more[k] + (share * (more[k + 1] - more[k]));
        }

        return (road with { Height = [.. heights] }, left);
    }

    private static double Between(ImmutableArray<double> trace, double at)
    {
        var k = (int)Math.Floor(at);
        return k < 0 || k + 1 >= trace.Length ? 0.0 : trace[k] + ((at - k) * (trace[k + 1] - trace[k]));
    }

    // The samples whose road is told.
    private (int Begin, int Length) Stretch(double onset) =>
        ((int)Math.Round((onset + (First * count / (Usual * rate)) - drive.Start) * rate), (Windows + 1) * (count / 2));

    private static double At(RecoveredHump hump, ImmutableArray<double> values, double x)
    {
        var step = hump.Distance[1] - hump.Distance[0];
        var at = (x - hump.Distance[0]) / step;
        var k = (int)Math.Floor(at);
        return k < 0 || k + 1 >= values.Length ? 0.0 : values[k] + ((at - k) * (values[k + 1] - values[k]));
    }

    // First contact, s since the log's start: the window begins at an instant of the grid.
    private double Onset(FittedWindow pass)
    {
        var guess = events.Events.First(e => e.Number == pass.Event).Onset;
        return drive.Time((int)Math.Round((guess - 1.0 - drive.Start) * rate)) + pass.Onset;
    }

    // Distance from the onset by the odometer, its speed set right by the fit's.
    private double Place(int sample, double onset, double speed)
    {
        var time = drive.Time(sample) - onset;
        if (drive.Speed.IsEmpty)
        {
            return speed * time;
        }

        var at = Math.Clamp((int)Math.Round((onset - drive.Start) * rate), 0, drive.Speed.Length - 1);
        var scale = drive.Speed[at] > 0.5 ? speed / drive.Speed[at] : double.NaN;
        if (!double.IsFinite(scale))
        {
            return speed * time;
        }

        var sum = 0.0;
        for (var i = Math.Min(at, sample); i < Math.Max(at, sample); i++)
        {
            sum += drive.Speed[Math.Clamp(i, 0, drive.Speed.Length - 1)] / rate;
        }

        return (scale * (sample < at ? -sum : sum)) + (speed * (drive.Time(at) - onset));
    }

    // The signals less what the humps of all passes make of them, but for one.
    private (double[] Vertical, double[] Pitch) Left(int begin, int length, FittedWindow? but = null)
    {
        var (vertical, pitch) = (new double[length], new double[length]);
        for (var i = 0; i < length; i++)
        {
            if (begin + i is var at and >= 0 && at < drive.Vertical.Length)
            {
                (vertical[i], pitch[i]) = (drive.Vertical[at], drive.PitchRate[at]);
            }
        }

        foreach (var pass in Passes)
        {
            var onset = Onset(pass);
            var (start, end) = (drive.Start + (begin / rate), drive.Start + ((begin + length) / rate));
            if (pass != but && onset < end && onset > start - 6.0)
            {
                TakeOff(pass, onset - start, vertical, pitch);
            }
        }

        return (vertical, pitch);
    }

    private void TakeOff(FittedWindow pass, double onset, double[] vertical, double[] pitch)
    {
        // Long enough that what it adds has died away before it comes round again.
        var n = 4 * (int)BitOperations.RoundUpToPowerOf2((uint)vertical.Length);
        var step = rate / n;
        var lines = (int)Math.Min(HighestOfHump / step, (0.45 * rate) / step);
        double[] frequencies = [.. Enumerable.Range(1, lines).Select(k => k * step)];
        var answer = new RoadAnswer(found, frequencies);
        var hump = found.Humps.First(h => h.Site == pass.Site);
        var dx = hump.Distance[1] - hump.Distance[0];
        var (a, q) = (new Complex[lines + 1], new Complex[lines + 1]);
        for (var k = 1; k <= lines; k++)
        {
            var wave = -2.0 * Math.PI * frequencies[k - 1];
            var road = Complex.Zero;
            for (var i = 0; i < hump.Height.Length; i++)
            {
                var (sine, cosine) = Math.SinCos(wave * ((hump.Distance[i] / pass.Speed) + onset));
                road += hump.Height[i] * new Complex(cosine, sine);
            }

            var (v, p) = answer.At(k - 1, pass.Speed);
            road *= dx / pass.Speed * step;
            (a[k], q[k]) = (road * v, road * p);
        }

        var (ofHeave, ofPitch) = (RoadAnswer.Signal(a, n, stop), RoadAnswer.Signal(q, n, stop));
        for (var i = 0; i < vertical.Length; i++)
        {
            vertical[i] -= ofHeave[i];
            pitch[i] -= ofPitch[i];
        }
    }

    // Heights over time, and their variance once the filter has done what it can, m².
    private double Wiener(double[] vertical, double[] pitch, double speed, double[] to)
    {
        var hop = count / 2;
        var step = rate / count;
        double[] frequencies = [.. Enumerable.Range(1, (count / 2) - 1).Select(k => k * step)];
        var answer = new RoadAnswer(found, frequencies);
        var variance = 0.0;
        var filter = new (Complex Vertical, Complex Pitch)[count / 2];
        for (var k = 1; k < count / 2; k++)
        {
            var f = frequencies[k - 1];
            if (f < Lowest || f > found.Known!.Band)
            {
                continue;
            }

            var (v, p) = answer.At(k - 1, speed);
            var density = found.Roughness * 0.01 * speed / (f * f);
            var weight = (v.Magnitude * v.Magnitude / found.VerticalNoise) + (p.Magnitude * p.Magnitude / found.PitchNoise) + (1.0 / density);
            filter[k] = (Complex.Conjugate(v) / found.VerticalNoise / weight, Complex.Conjugate(p) / found.PitchNoise / weight);
            variance += step / weight;
        }

        for (var w = 0; w < Windows; w++)
        {
            var (a, q) = (new double[count], new double[count]);
            for (var i = 0; i < count; i++)
            {
                var share = 0.5 * (1.0 - Math.Cos(2.0 * Math.PI * (i + 0.5) / count));
                (a[i], q[i]) = (share * vertical[(w * hop) + i], share * pitch[(w * hop) + i]);
            }

            var (ofHeave, ofPitch) = (RealFourier.Of(a, stop), RealFourier.Of(q, stop));
            var road = new Complex[count / 2];
            for (var k = 1; k < count / 2; k++)
            {
                road[k] = ((filter[k].Vertical * ofHeave[k]) + (filter[k].Pitch * ofPitch[k])) / count;
            }

            var heights = RoadAnswer.Signal(road, count, stop);
            for (var i = 0; i < count; i++)
            {
                to[(w * hop) + i] += heights[i];
            }
        }

        return variance;
    }
}
