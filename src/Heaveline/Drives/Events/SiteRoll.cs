using System.Numerics;
using Heaveline.Numerics;

namespace Heaveline.Drives.Events;

/// <summary>
/// Whether a bump lies under one side of the car: the roll of all its passes, set beside the roll that a bump as high as the vertical motion says
/// would make under one side, and beside the roll of the road between bumps.
/// </summary>
/// <remarks>
/// Wheels of one side that rise by 2h, h the height that the body's vertical motion and pitch speak of, lean the road under each axle by 2h over the
/// track; a roll mode of usual frequency and damping answers. What was measured is projected on that answer, each frequency over its power between
/// bumps near in time and speed: 1 where all of the bump is on the left, −1 on the right, 0 where both sides are alike. Noise and two tracks of a
/// rough road have no sign that every pass repeats, so the mean over the passes is taken with its sign, and its spread is the greater of that of
/// the road between bumps and that from pass to pass. Nearer to one side than to both, and three spreads from none, it is on one side. Proposals of
/// this program; what they come to is in docs/validation.md.
/// </remarks>
internal sealed class SiteRoll(Drive drive, double wheelbase, IReadOnlyList<Sighting> sightings, double[] cars)
{
    // Half of what one side would make, and so many spreads from nothing.
    private const double Nearer = 0.5;
    private const double Clear = 3.0;

    // Common practice, no source: the track of a car, m; its roll modes, Hz, and their damping.
    private const double Track = 1.5;
    private static readonly double[] Frequencies = [1.4, 1.8, 2.3, 3.0];
    private static readonly double[] Dampings = [0.15, 0.3];

    // Faster roll is more of the wheels' hop and the phone than of the body, Hz.
    private const double Top = 5.0;

    // Roll between bumps: how far away it may lie, s, by how much its speed may differ, and how many windows are enough.
    private const double Away = 40.0;
    private const double LikeSpeed = 0.3;
    private const int Fewest = 4;
    private const int Most = 12;

    // The gyro's own noise: what no road is smoother than, rad²/s a window.
    private const double Least = 4e-6;

    private readonly (int Samples, int Bins) size = OnsetTable.SizeOf(drive.Rate);
    private readonly FourierTurns turns = new(OnsetTable.SizeOf(drive.Rate).Samples);
    private readonly List<(double From, double Speed, double[] Power)> between = Between(drive, sightings);

    /// <summary>The share of one side that the passes of a bump speak of, left above 0, and its spread; not finite where nothing is known.</summary>
    /// <param name="passes">Those that count.</param>
    public (double Share, double Spread) Of(IReadOnlyList<Sighting> passes)
    {
        if (drive.RollRate.IsEmpty || between.Count < Fewest || passes.Count == 0)
        {
            return (double.NaN, double.NaN);
        }

        var shape = ShapeOf(passes);
        var read = passes.Select(p => Read(p, shape)).ToArray();
        var (best, result) = (double.NegativeInfinity, (double.NaN, double.NaN));
        foreach (var frequency in Frequencies)
        {
            foreach (var damping in Dampings)
            {
                var all = read.Select(r => Share(r, frequency, damping)).ToArray();
                var weight = all.Sum(a => 1.0 / (a.Spread * a.Spread));
                var mean = all.Sum(a => a.Share / (a.Spread * a.Spread)) / weight;
                var apart = all.Length > 1
                    ? all.Sum(a => Math.Pow((a.Share - mean) / a.Spread, 2.0)) / (weight * (all.Length - 1)) : 0.0;
                // The mode that accounts for most of the roll.
                var met = mean * mean * weight;
                (best, result) = met > best ? (met, (mean, Math.Sqrt(Math.Max(1.0 / weight, apart)))) : (best, result);
            }
        }

        return result;
    }

    /// <summary>Whether it is on one side.</summary>
    /// <param name="passes">Those that count.</param>
    public bool IsOneSided(IReadOnlyList<Sighting> passes)
    {
        var (share, spread) = Of(passes);
        return Math.Abs(share) > Nearer && Math.Abs(share) > Clear * spread;
    }

    // The shape that the passes speak of most.
    private int ShapeOf(IReadOnlyList<Sighting> passes)
    {
        var sum = new double[BumpShape.All.Count];
        foreach (var pass in passes)
        {
            foreach (var (i, weight) in pass.Table.OfShapes(cars).Index())
            {
                sum[i] += weight;
            }
        }

        return Array.IndexOf(sum, sum.Max());
    }

    // What was measured, the lean of the road that one side would make, rad, and the usual power, each by frequency.
    private (Complex[] Roll, Complex[] Lean, double[] Power) Read(Sighting pass, int shape)
    {
        double[] only = [.. Enumerable.Range(0, BumpShape.All.Count).Select(i => i == shape ? 0.0 : -1e6)];
        var speed = pass.Speed.Value;
        var onset = pass.Table.Means(cars, only, speed);
        var first = FirstOf(drive, pass.Candidate.Seen);
        var roll = OnsetTable.Spectrum(drive.RollRate.AsSpan(), first, turns, size.Samples, drive.Rate, size.Bins);
        var lean = new Complex[size.Bins];
        for (var k = 0; k < lean.Length; k++)
        {
            var omega = 2.0 * Math.PI * FrequencyAt(k);
            lean[k] = 2.0 * onset.Height / Track * BumpShape.All[shape].At(omega / speed) / speed
                * 0.5 * (1.0 + Complex.FromPolarCoordinates(1.0, -omega * wheelbase / speed))
                * Complex.FromPolarCoordinates(1.0, -omega * (onset.Onset - drive.Time(first)));
        }

        return (roll, lean, PowerAbout(pass));
    }

    private (double Share, double Spread) Share((Complex[] Roll, Complex[] Lean, double[] Power) read, double frequency, double damping)
    {
        var (met, own) = (0.0, 0.0);
        for (var k = 0; k < read.Roll.Length && FrequencyAt(k) <= Top; k++)
        {
            var s = new Complex(0.0, FrequencyAt(k) / frequency);
            var passed = 2.0 * damping * s;
            var model = 2.0 * Math.PI * frequency * s * read.Lean[k] * (1.0 + passed) / (1.0 + passed + (s * s));
            met += (read.Roll[k] * Complex.Conjugate(model)).Real / read.Power[k];
            own += ((model.Real * model.Real) + (model.Imaginary * model.Imaginary)) / read.Power[k];
        }

        // Real and imaginary part have half of the power each.
        return (met / own, Math.Sqrt(0.5 / own));
    }

    // The mean of the nearest stretches between bumps, at about this speed where there are such; neighbouring frequencies together.
    private double[] PowerAbout(Sighting pass)
    {
        var seen = pass.Candidate.Seen;
        var near = between.Where(b => drive.Speed.IsEmpty || Math.Abs(Math.Log(b.Speed / pass.Speed.Value)) < LikeSpeed).ToArray();
        var close = near.Where(b => Math.Abs(b.From + (0.5 * OnsetTable.Window) - seen) < Away).ToArray();
        var of = close.Length >= Fewest ? close : near.Length >= Fewest ? near : [.. between];
        double[][] taken = [.. of.OrderBy(b => Math.Abs(b.From + (0.5 * OnsetTable.Window) - seen)).Take(Most).Select(b => b.Power)];
        double[] mean = [.. Enumerable.Range(0, size.Bins).Select(k => taken.Average(p => p[k]))];
        return [.. Enumerable.Range(0, size.Bins).Select(k => mean[Math.Max(0, k - 2)..Math.Min(size.Bins, k + 3)].Average() + Least)];
    }

    private double FrequencyAt(int bin) => (bin + UsualResponses.FirstBin) * drive.Rate / size.Samples;

    private static int FirstOf(Drive drive, double seen) => (int)Math.Round((seen - OnsetTable.Before - drive.Start) * drive.Rate);

    private static List<(double From, double Speed, double[] Power)> Between(Drive drive, IReadOnlyList<Sighting> sightings)
    {
        var found = new List<(double From, double Speed, double[] Power)>();
        if (drive.RollRate.IsEmpty)
        {
            return found;
        }

        var (samples, bins) = OnsetTable.SizeOf(drive.Rate);
        var turns = new FourierTurns(samples);
        foreach (var (first, last) in drive.Covered)
        {
            for (var from = first; from + samples <= last; from += samples / 2)
            {
                var (start, end) = (drive.Time(from), drive.Time(from + samples));
                var speed = drive.Speed.IsEmpty ? 0.0 : drive.Speed[from + (samples / 2)];
                if ((drive.Speed.IsEmpty || speed >= EventFinder.Creeping)
                    && !sightings.Any(s => s.Onset.Time < end && s.Through + Measures.PitchSettling.Second > start))
                {
                    found.Add((start, speed, [.. OnsetTable.Spectrum(drive.RollRate.AsSpan(), from, turns, samples, drive.Rate, bins)
                        .Select(y => (y.Real * y.Real) + (y.Imaginary * y.Imaginary))]));
                }
            }
        }

        return found;
    }
}
