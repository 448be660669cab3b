using System.Numerics;
using Heaveline.Drives.Events;
using Heaveline.Drives.Identification;
using Heaveline.Measures;
using Heaveline.Numerics;

namespace Heaveline.Drives.Recovery;

/// <summary>Pitch after the bump of a site over speed, of the car of a drive and of the cars and bumps that the drive leaves possible.</summary>
internal sealed class SpeedSearch
{
    // Looked at beyond the speeds driven, as a factor, and how many speeds.
    private const double Beyond = 1.25;
    private const int Count = 17;

    // By how much ln of the frequency ratio is turned either way.
    private const double Turn = 0.02;

    // A time that comes round again after five seconds, 25.6 samples a second: the car has come to rest by then, and its body swings below 12 Hz.
    private const int Samples = 128;
    private const double Rate = 25.6;

    private readonly CarFromDrive found;
    private readonly PosteriorDraws draws;
    private readonly CancellationToken stop;
    private readonly double wheelbase;
    private readonly double[] frequencies;

    /// <summary>The search.</summary>
    /// <param name="found">The car.</param>
    /// <param name="draws">What the drive leaves possible.</param>
    /// <param name="stop">Stops it.</param>
    public SpeedSearch(CarFromDrive found, PosteriorDraws draws, CancellationToken stop)
    {
        (this.found, this.draws, this.stop, wheelbase) = (found, draws, stop, found.Known!.Wheelbase);
        frequencies = [.. Enumerable.Range(1, (Samples / 2) - 1).Select(k => k * Rate / Samples).Where(f => f <= found.Known.Band)];
    }

    /// <summary>The speeds of a site.</summary>
    /// <param name="site">One whose bump tells the car.</param>
    public SiteSpeed Of(DriveSite site)
    {
        var hump = found.Humps.First(h => h.Site == site.Name);
        var (_, at, splines, begin) = found.Splines.First(s => s.Site == site.Name);
        double[] driven = [.. found.Windows.Where(w => w.Site == site.Name).Select(w => w.Speed)];
        var (slowest, fastest) = (driven.Min() / Beyond, driven.Max() * Beyond);
        var length = Math.Min(site.Length > 0.0 ? site.Length : hump.Distance[^1], hump.Distance[^1]);
        double[] speeds = [.. Enumerable.Range(0, Count).Select(k => slowest * Math.Pow(fastest / slowest, k / (Count - 1.0)))];
        var own = Curves(
            found.Mean.AsSpan()[..CarParameter.Shared].ToArray(), found.Mean.AsSpan(at, splines.Count).ToArray(), splines, begin + length, speeds);
        var drawn = new (double Least, double Most, double[] Suited, bool? Larger)[PosteriorDraws.Count];
        ParallelLoop.Each(drawn.Length, -1, d =>
        {
            var (pitch, slope, bend) = Curves(draws.Car(d), draws.Hump(site.Name, d), splines, begin + length, speeds);
            drawn[d] = (Least(speeds, pitch, 1.0), Least(speeds, pitch, -1.0), Suited(speeds, slope, bend), Larger(slope));
        }, stop);
        var (least, most) = (Least(speeds, own.Pitch, 1.0), Least(speeds, own.Pitch, -1.0));
        double Within(double speed) => Math.Clamp(speed, slowest, fastest);
        return new SiteSpeed
        {
            Site = site.Name,
            Range = (slowest, fastest),
            Least = Found(Within(least), [.. drawn.Select(d => d.Least)]),
            IsLeastWithin = double.IsFinite(least),
            Most = Found(Within(most), [.. drawn.Select(d => d.Most)]),
            IsMostWithin = double.IsFinite(most),
            // Of each draw the one nearest to it; a draw without one lies beyond an end.
            Suited = [.. Suited(speeds, own.Slope, own.Bend).Select(s => Found(s, [.. drawn.Select(d => d.Suited.Length > 0
                ? d.Suited.MinBy(v => Math.Abs(v - s)) : d.Larger == false ? double.NegativeInfinity : double.PositiveInfinity)]))],
            WantsLarger = Larger(own.Slope),
            Speeds = [.. speeds],
            Pitch = [.. own.Pitch],
        };
    }

    /// <summary>A speed with what holds nine draws of ten.</summary>
    /// <param name="speed">The speed, m/s.</param>
    /// <param name="drawn">That of each draw, infinite beyond an end.</param>
    public static FoundSpeed Found(double speed, double[] drawn)
    {
        double[] sorted = [.. drawn.Order()];
        var cut = (int)(0.05 * sorted.Length);
        return new FoundSpeed(speed, Math.Min(speed, sorted[cut]), Math.Max(speed, sorted[^(cut + 1)]));
    }

    // The speed of least pitch times a sign, between the points by a parabola; infinite where the curve falls on at an end.
    private static double Least(double[] speeds, double[] pitch, double sign)
    {
        var k = Array.IndexOf(pitch, sign > 0.0 ? pitch.Min() : pitch.Max());
        if (k == 0 || k == pitch.Length - 1)
        {
            return k == 0 ? double.NegativeInfinity : double.PositiveInfinity;
        }

        var (before, here, after) = (pitch[k - 1], pitch[k], pitch[k + 1]);
        var by = 0.5 * (before - after) / (before - (2.0 * here) + after);
        return speeds[k] * Math.Pow(speeds[k + 1] / speeds[k], by);
    }

    // Where neither a larger nor a smaller ratio pitches less.
    private static double[] Suited(double[] speeds, double[] slope, double[] bend)
    {
        var result = new List<double>();
        for (var k = 0; k + 1 < speeds.Length; k++)
        {
            if (slope[k] * slope[k + 1] < 0.0 && bend[k] + bend[k + 1] > 0.0)
            {
                result.Add(speeds[k] * Math.Pow(speeds[k + 1] / speeds[k], slope[k] / (slope[k] - slope[k + 1])));
            }
        }

        return [.. result];
    }

    private static bool? Larger(double[] slope) => slope.All(s => s < 0.0) ? true : slope.All(s => s > 0.0) ? false : null;

    // Over speed: pitch, its slope by ln of the ratio, and how that bends.
    private (double[] Pitch, double[] Slope, double[] Bend) Curves(
        double[] car, double[] heights, HumpSplines splines, double end, double[] speeds)
    {
        RoadAnswer Answer(double turn)
        {
            var other = car.ToArray();
            other[CarParameter.FrontFrequency] -= 0.5 * turn;
            other[CarParameter.RearFrequency] += 0.5 * turn;
            // Of the car, not of the phone's gyro.
            other[CarParameter.Gain] = 0.0;
            return new RoadAnswer(other, wheelbase, frequencies);
        }

        var (own, larger, smaller) = (Answer(0.0), Answer(Turn), Answer(-Turn));
        var (pitch, slope, bend) = (new double[speeds.Length], new double[speeds.Length], new double[speeds.Length]);
        for (var i = 0; i < speeds.Length; i++)
        {
            var road = Road(heights, splines, end, speeds[i]);
            var (here, up, down) = (Pitch(own, road, speeds[i]), Pitch(larger, road, speeds[i]), Pitch(smaller, road, speeds[i]));
            (pitch[i], slope[i], bend[i]) = (here, (up - down) / (2.0 * Turn), (up - (2.0 * here) + down) / (Turn * Turn));
        }

        return (pitch, slope, bend);
    }

    // The bump over time, the rear wheels leaving it at 0.
    private Complex[] Road(double[] heights, HumpSplines splines, double end, double speed)
    {
        var (road, value, unused) = (new Complex[frequencies.Length], new Complex[splines.Count], new Complex[splines.Count]);
        var left = (end + wheelbase) / speed;
        for (var k = 0; k < road.Length; k++)
        {
            splines.Transform(frequencies[k], speed, value, unused);
            var sum = Complex.Zero;
            for (var j = 0; j < value.Length; j++)
            {
                sum += heights[j] * value[j];
            }

            var (sine, cosine) = Math.SinCos(2.0 * Math.PI * frequencies[k] * left);
            road[k] = sum * new Complex(cosine, sine);
        }

        return road;
    }

    private double Pitch(RoadAnswer answer, Complex[] road, double speed)
    {
        var lines = new Complex[frequencies.Length + 1];
        for (var k = 1; k < lines.Length; k++)
        {
            lines[k] = answer.At(k - 1, speed).Pitch * road[k - 1] / new Complex(0.0, 2.0 * Math.PI * frequencies[k - 1]) * (Rate / Samples);
        }

        var second = RoadAnswer.Signal(lines, Samples, stop).AsSpan(0, (int)Math.Round(PitchSettling.Second * Rate));
        return Math.Sqrt(Dot.Of(second, second) / second.Length);
    }
}
