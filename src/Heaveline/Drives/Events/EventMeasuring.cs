using Heaveline.Measures;
using Heaveline.Numerics;
using Heaveline.Passes;

namespace Heaveline.Drives.Events;

/// <summary>The numbers of a bump: the catalogue's definitions asked of what was measured, and how well each is measured.</summary>
internal sealed class EventMeasuring
{
    // What is looked at before first touch, s: the curves need a little to begin with.
    private const double Before = 1.0;

    // How long before first touch the body's height is taken for nothing, s.
    private const double Standing = 0.5;

    // Half a swing of a body, s.
    private const double HalfSwing = 0.4;

    // A gyro's gain is known to 1.5 % (standard deviation), the accelerometer's is set by gravity.
    private const double GyroGain = 0.015;
    private const double AccelerometerGain = 0.003;

    private const string LatePitch = "settling-late-pitch";
    private const string PitchShare = "settling-share";

    // Half-width of where the body's middle lies, as a share of the wheelbase: cars weighed full and empty. Common practice, no source.
    private const double MiddleSpread = 0.08;

    private readonly Drive drive;
    private readonly EventSettings settings;
    private readonly MotionCurves curves;
    private readonly PhonePlace phone;
    private readonly IReadOnlyList<Measure<Pass>> ofPitch;
    private readonly Measure<Pass> rms;
    private readonly Measure<Pass> peak;

    /// <summary>For a drive.</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="settings">What is known.</param>
    /// <param name="curves">The curves of the whole drive.</param>
    public EventMeasuring(Drive drive, EventSettings settings, MotionCurves curves)
    {
        (this.drive, this.settings, this.curves, phone) = (drive, settings, curves, settings.Phone ?? PhonePlace.Unknown(settings.WheelbaseTaken));
        ofPitch = [.. HitCatalogue.All, .. SettlingCatalogue.All];
        var place = settings.Seat is { } seat && settings.Phone is not null ? SeatPlace.Of(seat) : EventPlace.Floor;
        var seats = SeatCatalogue.Of(place);
        // What is measured at the place is asked, instead of a car's seat.
        rms = EventPlace.Measured(seats.Single(m => m.Key == place.Key + "-rms-vertical"), p => Window.RmsOfRide(p, DriveCurves.Vertical));
        peak = EventPlace.Measured(seats.Single(m => m.Key == place.Key + "-peak-vertical"), p => p.Peak(DriveCurves.Vertical));
    }

    /// <summary>The curves of the whole drive.</summary>
    public MotionCurves Curves => curves;

    /// <summary>The curves of a whole drive.</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="settings">What is known.</param>
    public static MotionCurves CurvesOf(Drive drive, EventSettings settings) => MotionCurves.Of(drive, settings.Phone?.Left ?? 0.0);

    /// <summary>The numbers of a bump.</summary>
    /// <param name="onset">When the front wheels first touch it, s, and the half-width of that.</param>
    /// <param name="through">When the rear wheels have left it, s, and the half-width of that.</param>
    /// <param name="until">When its record ends, s.</param>
    public EventNumbers Of((double Time, double HalfWidth) onset, (double Time, double HalfWidth) through, double until)
    {
        var first = Math.Max(0, (int)Math.Floor((onset.Time - Before - drive.Start) * drive.Rate));
        var last = Math.Min(drive.Vertical.Length - 1, (int)Math.Ceiling((until - drive.Start) * drive.Rate));
        if (last - first < 4)
        {
            return new EventNumbers { All = [] };
        }

        var part = first..(last + 1);
        var asIs = Asked(part, first, 0.0, onset.Time, through.Time);
        var early = Asked(part, first, 0.0, onset.Time - onset.HalfWidth, through.Time - through.HalfWidth);
        var late = Asked(part, first, 0.0, onset.Time + onset.HalfWidth, through.Time + through.HalfWidth);
        var slower = Asked(part, first, 0.0, onset.Time, through.Time, isSlower: true);
        var missing = Missing(part, first, onset.Time, through.Time);
        var nearer = Asked(part, first, -phone.BehindFrontAxleSpread, onset.Time, through.Time);
        var farther = Asked(part, first, phone.BehindFrontAxleSpread, onset.Time, through.Time);
        var middle = MiddleSpread * settings.WheelbaseTaken;
        var (ahead, astern) = (
            Asked(part, first, 0.0, onset.Time, through.Time, middle: -middle), Asked(part, first, 0.0, onset.Time, through.Time, middle: middle));
        var rmsPitch = SettlingCatalogue.RmsPitch.InFlight!(asIs);
        return new EventNumbers
        {
            All = [.. ofPitch.Where(_ => curves.Pitch.Length > 0).Concat([rms, peak]).Select(m =>
            {
                var value = m.InFlight!(asIs);
                var place = Squared(0.5 * (m.InFlight(farther) - m.InFlight(nearer))) + Squared(0.5 * (m.InFlight(astern) - m.InFlight(ahead)));
                var slow = Slow(m, value, asIs, slower, missing);
                var time = Math.Max(Math.Abs(Finite(m.InFlight(late) - value)), Math.Abs(Finite(value - m.InFlight(early))));
                return new EventNumber(m, value, Math.Sqrt(place + (time * time) + (slow * slow) + Squared(Noise(
                    m, value, until - through.Time, rmsPitch)) + Squared(Gain(m) * value)))
                {
                    PerSecond = Finite((m.InFlight(late) - m.InFlight(early)) / (2.0 * through.HalfWidth)),
                };
            })],
        };
    }

    // What a filter half as slow or twice as fast tells of what is missing, which is no more than twice as much: of a root mean square at most
    // its own (Minkowski), of other numbers by how far they move.
    private static double Slow(Measure<Pass> measure, double value, DriveCurves asIs, DriveCurves slower, DriveCurves missing)
    {
        if (measure.Key == LatePitch)
        {
            return 2.0 * measure.InFlight!(missing);
        }

        if (measure.Key != PitchShare)
        {
            return 2.0 * Math.Abs(Finite(measure.InFlight!(slower) - value));
        }

        var (pitch, less) = (SettlingCatalogue.RmsPitch.InFlight!(asIs), SettlingCatalogue.RmsPitch.InFlight(missing));
        // The share is one of the pitch over that of the heave, whose level just before the bump is taken off already.
        var (ofPitch, ofHeave) = (2.0 * less / pitch, less / measure.InFlight!(missing) / (pitch / value));
        return value * Math.Sqrt((ofPitch * ofPitch) + (ofHeave * ofHeave));
    }

    private static double Finite(double value) => double.IsFinite(value) ? value : 0.0;

    private static double Squared(double value) => Finite(value) * Finite(value);

    // The curves with the phone or the body's middle farther back than it is said to lie, the bump at other instants, or more of the slow pitch
    // left in.
    private DriveCurves Asked(Range part, int first, double farther, double onset, double through, bool isSlower = false, double middle = 0.0)
    {
        var pitch = curves.Pitch.Length > 0 ? (isSlower ? curves.PitchWithMore : curves.Pitch)[part] : new double[curves.Vertical[part].Length];
        var acceleration = curves.Pitch.Length > 0 ? curves.PitchAcceleration[part] : pitch;
        var behind = phone.BehindFrontAxle + farther;
        var toMiddle = (UsualCar.CentreBehind * settings.WheelbaseTaken) + middle - behind;
        var toSeat = settings.Phone is not null && settings.SeatBehindFrontAxle is { } seat ? seat - behind : 0.0;
        var motion = new MeasuredMotion(
            pitch,
            curves.Pitch.Length > 0 ? curves.PitchRate[part] : pitch,
            acceleration,
            Plus(curves.Vertical[part], toSeat, acceleration),
            Level(Plus((isSlower ? curves.HeaveWithLess : curves.Heave)[part], toMiddle, pitch), first, onset));
        return new DriveCurves(drive.Time(first), 1.0 / drive.Rate, motion, onset, through, settings.WheelbaseTaken);
    }

    // What half the slow corner leaves in of the pitch, and twice that takes off the height.
    private DriveCurves Missing(Range part, int first, double onset, double through)
    {
        double[] pitch = curves.Pitch.Length > 0
            ? [.. curves.PitchWithMore[part].Zip(curves.Pitch[part], (more, less) => more - less)]
            : new double[curves.Vertical[part].Length];
        var heave = Level([.. curves.Heave[part].Zip(curves.HeaveWithLess[part], (more, less) => more - less)], first, onset);
        return new DriveCurves(
            drive.Time(first), 1.0 / drive.Rate, new MeasuredMotion(pitch, pitch, pitch, heave, heave), onset, through, settings.WheelbaseTaken);
    }

    // A hump lifts the body for a second, and the height's filters leave a dent of it about the whole: the height just before it is nothing.
    private double[] Level(double[] heave, int first, double onset)
    {
        var to = Math.Clamp((int)Math.Round((onset - drive.Start) * drive.Rate) - first, 1, heave.Length);
        var from = Math.Max(0, to - (int)Math.Round(Standing * drive.Rate));
        var level = heave.AsSpan(from, to - from).ToArray().Average();
        return [.. heave.Select(h => h - level)];
    }

    // What lies farther back goes up when the nose goes down.
    private static double[] Plus(double[] values, double back, double[] pitch)
    {
        for (var i = 0; i < values.Length; i++)
        {
            values[i] += back * pitch[i];
        }

        return values;
    }

    // Noise adds to a root mean square by its square, to a peak by itself; what is counted is sure to half a swing.
    private double Noise(Measure measure, double value, double settling, double rmsPitch)
    {
        var time = Math.Sqrt(0.4 * drive.Rate);
        return measure.Key switch
        {
            "hit-peak-pitch" or "settling-peak-pitch" => Gaussian.Ninety * curves.PitchDeviation,
            "settling-rms-pitch" => Added(curves.PitchDeviation),
            LatePitch => Added(curves.PitchDeviation * Math.Sqrt(Math.Max(settling - PitchSettling.Late, 0.0))),
            "hit-peak-pitch-rate" => Gaussian.Ninety * Math.Sqrt(curves.RateNoise) * time,
            "hit-peak-pitch-acceleration" => Gaussian.Ninety * curves.AccelerationDeviation,
            "settling-time" => HalfSwing,
            "settling-cycles" => 0.5,
            _ when measure == peak => Gaussian.Ninety * Math.Sqrt(curves.VerticalNoise) * time,
            // A mean over 3 s of 0.4 of the rate.
            _ when measure == rms => Gaussian.Ninety * Math.Sqrt(curves.VerticalNoise / (2.0 * Window.OverObstacle)),
            PitchShare => OfShare(),
            _ => 0.0,
        };

        // Against the heave's own swing the noise weighs by chance one way or the other.
        double OfShare() => Gaussian.Ninety * curves.HeaveDeviation / (0.5 * settings.WheelbaseTaken * rmsPitch / value) * Math.Abs(value);

        double Added(double deviation) => value - Math.Sqrt(Math.Max((value * value) - Squared(Gaussian.Ninety * deviation), 0.0));
    }

    private double Gain(Measure measure) => Gaussian.Ninety * (measure.Key is "settling-time" or "settling-cycles" ? 0.0
        : measure == rms || measure == peak ? AccelerometerGain
        : GyroGain) + (measure == rms || measure == peak || drive.Mount.HalfWidth is not { } half ? 0.0 : 1.0 - Math.Cos(half));
}
