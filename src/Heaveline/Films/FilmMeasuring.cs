using Heaveline.Drives.Events;
using Heaveline.Measures;
using Heaveline.Numerics;

namespace Heaveline.Films;

/// <summary>
/// Measures a pass that was seen by the definitions of a computed one, again and again with other noise, levels, scale and instants: the scatter is
/// each number's interval.
/// </summary>
/// <param name="pass">The pass, by the levels of the car that was fitted to it where there is one.</param>
/// <param name="fitted">That car's body; null: none is believed.</param>
internal sealed class FilmMeasuring(SeenPass pass, FittedPass? fitted)
{
    private const int Draws = 150;
    private const ulong Seed = 20_261_129;

    // A second of settling of which less is seen is none.
    private const double Least = 0.5;

    // Rates are slopes of a parabola over so long either way, s; accelerations of one over longer.
    private const double RateReach = 0.034;
    private const double AccelerationReach = 0.06;

    private const string Rate = "hit-peak-pitch-rate";
    private const string Acceleration = "hit-peak-pitch-acceleration";

    // Half-width, as a share, by which greatest slopes of the fitted car lie off those of the whole car on planted passes, up to so many frames a
    // second; with fewer they are off by as many times more.
    private const double RateOff = 0.035;
    private const double AccelerationOff = 0.10;
    private const double FullRate = 60.0;

    // And for each unit of the wheels' noise over their lift, at so many frames a second.
    private const double RateDriven = 0.75;
    private const double AccelerationDriven = 4.8;

    // What is left of the pitch later on needs a later on, s.
    private const double LateFrom = 2.0;

    // The slopes over half as long again: what they differ by is what the smoothing may take.
    private const double Longer = 1.5;

    // Half-width of where the centre of gravity lies, as a share of the wheelbase: cars weighed full and empty. Common practice, no source.
    private const double CentreSpread = 0.08;

    // What the fit leaves open of a level beside the mean of the first frames.
    private const double FittedLevel = 0.5;

    // What it leaves open of a slow slope, of what was thought of it before.
    private const double FittedSlope = 0.2;

    // Instants lie nearer than each by itself is sure: contact lies late at both ends alike.
    private const double InstantShare = 0.7;

    // Half a swing of a body that pitches at 1.25 Hz: what lies still for less may rise again. Common practice, no source.
    private const double HalfSwing = 0.4;

    private int draw;

    public FilmNumbers Numbers()
    {
        var asIs = Once(0.0);
        var smoother = Once(0.0, Longer);
        var draws = Enumerable.Range(1, Draws).Select(k =>
        {
            draw = k;
            return Once(1.0);
        }).ToList();
        var isStill = pass.Reach > Least && asIs.IsStill && asIs.StillFrom + HalfSwing <= pass.Reach;
        FilmNumber Of(Func<Reading, double> of) => FilmNumber.Of(of(asIs), [.. draws.Select(of)]);
        return new FilmNumbers
        {
            OfPitch = [.. Measures().Select((m, k) =>
            {
                var number = Of(r => r.Pitch[k]);
                var half = 0.5 * (number.High - number.Low);
                // Noise makes the greatest of a noisy curve greater, by about what more noise of its kind adds.
                var added = draws.Average(r => r.Pitch[k]) - number.Value;
                double[] beside = OfModel(m) is { } share ? [share * number.Value]
                    : [asIs.Pitch[k] - smoother.Pitch[k], IsSlope(m) ? added : 0.0];
                return new EventNumber(
                    m, number.Value, Math.Sqrt((half * half) + beside.Where(double.IsFinite).Sum(b => b * b)));
            }).Where(n => double.IsFinite(n.Value) && (isStill || n.Measure.Key != "settling-time"))],
            HeaveShare = Of(r => r.Heave) is var h ? new FilmNumber(h.Value, Math.Max(0.0, h.Low), Math.Min(1.0, h.High)) : default,
            Centre = Of(r => r.Centre),
            AboutCentre = asIs.About,
            PitchPerLift = Of(r => r.PerLift),
            IsStill = isStill,
            CyclesSeen = asIs.Cycles,
            Reach = pass.Reach,
        };
    }

    private sealed record Reading(
        double[] Pitch, double Heave, double Centre, double About, double PerLift, bool IsStill, double StillFrom, double Cycles);

    private static bool IsSlope(Measure<Passes.Pass> m) => m.Key is Rate or Acceleration;

    // Half-width, as a share, of what the fitted car's own slopes are off those of whole cars: a half car between fewer or more frames, and the noise
    // of the wheels that drive it.
    private double? OfModel(Measure<Passes.Pass> m)
    {
        if (fitted is null || !IsSlope(m))
        {
            return null;
        }

        var (off, driven) = m.Key == Rate ? (RateOff, RateDriven) : (AccelerationOff, AccelerationDriven);
        var frames = pass.Step * FullRate;
        var noise = driven * pass.WheelNoise / Math.Abs(pass.Lift) * Math.Sqrt(frames);
        return Math.Sqrt(Math.Pow(Math.Max(1.0, frames) * off, 2.0) + (noise * noise));
    }

    private static IReadOnlyList<Measure<Passes.Pass>> Measures() => [.. HitCatalogue.All, .. SettlingCatalogue.All];

    private Reading Once(double noise, double longer = 1.0)
    {
        var place = 0UL;
        double Normal() => noise == 0.0 ? 0.0 : noise * SplitMix.Normals(Seed, (ulong)(draw * 100_000) + (2 * place++)).First;
        // Wheelbase and marks are the ruler of all lengths, heights and the wheelbase alike: an angle has nothing of them. A view that is more aslant
        // than was thought makes heights larger beside it.
        var lengths = Math.Sqrt((pass.WheelbaseDoubt * pass.WheelbaseDoubt) + (pass.MarksDoubt * pass.MarksDoubt));
        var ruler = 1.0 + (lengths / Gaussian.Ninety * Normal());
        var scale = ruler * (1.0 + (pass.SlantDoubt / Gaussian.Ninety * Normal()));
        var wheelbase = pass.Wheelbase * ruler;
        var level = (fitted is null ? 1.0 : FittedLevel) * pass.LevelDoubt / Gaussian.Ninety;
        var (levelFront, levelRear) = (level * Normal(), level * Normal());
        var instants = InstantShare * pass.InstantDoubt / Gaussian.Ninety;
        var (touch, leaves) = (pass.FirstTouch + (instants * Normal()), pass.RearLeaves + (instants * Normal()));
        var n = pass.Count;
        var slope = fitted is null ? 0.0 : FittedSlope * FilmFit.OwnSpread(pass, FilmFit.Own - 1);
        var (slopeFront, slopeRear) = (slope * Normal(), slope * Normal());
        var (front, rear) = (new double[n], new double[n]);
        for (var i = 0; i < n; i++)
        {
            // Both ends share the shift and part by the turn.
            var (shift, turn) = (pass.BodyNoise * Normal(), 0.5 * pass.Wheelbase * pass.PitchNoise * Normal());
            var late = pass.Time(i) - pass.FirstTouch;
            front[i] = (scale * (pass.FrontBody[i] + shift - turn)) + levelFront + (slopeFront * late);
            rear[i] = (scale * (pass.RearBody[i] + shift + turn)) + levelRear + (slopeRear * late);
        }

        double[] pitch = [.. rear.Zip(front, (r, f) => (r - f) / wheelbase)];
        double[] heave = [.. rear.Zip(front, (r, f) => 0.5 * (r + f))];
        // No noise of frames is in the car that was fitted, and no smoothing.
        var (rate, acceleration) = fitted is { } model
            ? Differences([.. model.Rear.Zip(model.Front, (r, f) => scale * (r - f) / wheelbase)])
            : (Unsmoothed(r => Slopes(pitch, r).Slope, RateReach, longer), Unsmoothed(r => Slopes(pitch, r).Bend, AccelerationReach, longer));
        // The settling's share is one of the heave of the centre of gravity, as that of a computed pass is.
        var centreShare = UsualCar.CentreBehind + (CentreSpread / Gaussian.Ninety * Normal());
        double[] above = [.. rear.Zip(front, (r, f) => (centreShare * r) + ((1.0 - centreShare) * f)).Select((h, i) => h - (scale * RoadAt(i)))];
        // Frames' noise turns round often: swings are counted on a smoothed curve.
        pitch = WheelDrive.Smooth(pitch, Math.Max(2, (int)Math.Round(RateReach / pass.Step)));
        var curves = new DriveCurves(
            pass.Start, pass.Step, new MeasuredMotion(pitch, rate, acceleration, heave, above), touch, leaves, wheelbase);
        var from = Math.Clamp((int)Math.Ceiling((leaves - pass.Start) / pass.Step), 0, n - 1);
        var to = Math.Clamp((int)Math.Floor((leaves + PitchSettling.Second - pass.Start) / pass.Step), from, n - 1);
        var seen = pass.Reach >= Least;
        double Value(Measure<Passes.Pass> m) =>
            m.Key.StartsWith("settling", StringComparison.Ordinal) && (!seen || (m == SettlingCatalogue.LatePitch && pass.Reach < LateFrom))
                ? double.NaN : (double)m.InFlight!(curves);
        double[] values = [.. Measures().Select(Value)];
        var (centre, about) = CentreOf(front.AsSpan(from, to - from + 1), rear.AsSpan(from, to - from + 1), wheelbase);
        var (h2, p2) = (0.0, 0.0);
        for (var i = from; i <= to; i++)
        {
            h2 += heave[i] * heave[i];
            p2 += Math.Pow(0.5 * (rear[i] - front[i]), 2.0);
        }

        var rms = values[Measures().ToList().IndexOf(SettlingCatalogue.RmsPitch)];
        var stillAt = curves.LastAbove(PassSignal.Pitch, PitchSettling.Threshold);
        double lobes = curves.Lobes(PassSignal.Pitch, PitchSettling.Threshold, leaves);
        return new Reading(
            values,
            seen && h2 + p2 > 0.0 ? h2 / (h2 + p2) : double.NaN,
            seen ? centre : double.NaN,
            seen ? about : double.NaN,
            rms / Math.Abs(pass.Lift * scale),
            stillAt is not null,
            stillAt is { } at ? (double)at - leaves : double.PositiveInfinity,
            0.5 * lobes);
    }

    // Until both wheels have left the bump the mean road is what the wheels show; afterwards it is level.
    private double RoadAt(int i) => pass.Time(i) < pass.RearLeaves ? 0.5 * (pass.FrontWheel[i] + pass.RearWheel[i]) : 0.0;

    // The straight line through all (z_f, z_r): of least distance, its point of no motion between or beyond the axles.
    private static (double Centre, double About) CentreOf(
        ReadOnlySpan<double> front, ReadOnlySpan<double> rear, double wheelbase)
    {
        var (ff, fr, rr) = (0.0, 0.0, 0.0);
        for (var i = 0; i < front.Length; i++)
        {
            ff += front[i] * front[i];
            fr += front[i] * rear[i];
            rr += rear[i] * rear[i];
        }

        var angle = 0.5 * Math.Atan2(2.0 * fr, ff - rr);
        var (r, f) = Math.SinCos(angle);
        var whole = ff + rr;
        var along = (f * f * ff) + (2.0 * f * r * fr) + (r * r * rr);
        // z(x) = f + (r − f)·x/L is nothing at x = L·f/(f − r).
        return (Math.Abs(f - r) < 1e-3 ? double.PositiveInfinity : wheelbase * f / (f - r), whole > 0.0 ? along / whole : 0.0);
    }

    // Slope and second slope of a curve without noise; at its ends those of their neighbours.
    private (double[] Slope, double[] Bend) Differences(double[] of)
    {
        var (slope, bend) = (new double[of.Length], new double[of.Length]);
        for (var i = 0; i < of.Length; i++)
        {
            var k = Math.Clamp(i, 1, of.Length - 2);
            (slope[i], bend[i]) = (
                (of[k + 1] - of[k - 1]) / (2.0 * pass.Step), (of[k + 1] - (2.0 * of[k]) + of[k - 1]) / (pass.Step * pass.Step));
        }

        return (slope, bend);
    }

    // What a parabola takes off a slope goes with the square of its reach: by how much a longer one takes off more, it is put back.
    private double[] Unsmoothed(Func<int, double[]> of, double time, double longer)
    {
        var least = Math.Max(2, (int)Math.Round(time / pass.Step));
        var near = longer > 1.0 ? Math.Max(least + 1, (int)Math.Round(longer * least)) : least;
        var far = Math.Max(near + 1, (int)Math.Round(Longer * near));
        var back = (double)near * near / ((far * far) - (near * near));
        return [.. of(near).Zip(of(far), (n, f) => n + (back * (n - f)))];
    }

    // Slope and second slope of the parabola through the samples so near, by least squares.
    private (double[] Slope, double[] Bend) Slopes(double[] of, int reach)
    {
        var (slope, bend) = (new double[of.Length], new double[of.Length]);
        for (var i = 0; i < of.Length; i++)
        {
            var k = Math.Clamp(i, Math.Min(reach, (of.Length - 1) / 2), Math.Max((of.Length - 1) / 2, of.Length - 1 - reach));
            var wide = Math.Min(reach, Math.Min(k, of.Length - 1 - k));
            var (s2, s4, sy, s2y, y) = (0.0, 0.0, 0.0, 0.0, 0.0);
            for (var j = -wide; j <= wide; j++)
            {
                double x = j;
                s2 += x * x;
                s4 += x * x * x * x;
                sy += x * of[k + j];
                s2y += x * x * of[k + j];
                y += of[k + j];
            }

            double n = (2 * wide) + 1;
            var second = ((s2y * n) - (s2 * y)) / ((s4 * n) - (s2 * s2));
            bend[i] = 2.0 * second / (pass.Step * pass.Step);
            slope[i] = ((sy / s2) + (2.0 * second * (i - k))) / pass.Step;
        }

        return (slope, bend);
    }
}
