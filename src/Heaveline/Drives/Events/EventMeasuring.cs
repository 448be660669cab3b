using Heaveline.Measures;
using Heaveline.Passes;

namespace Heaveline.Drives.Events;

/// <summary>The numbers of a bump: the catalogue's definitions asked of what was measured, and how well each is measured.</summary>
internal sealed class EventMeasuring
{
    /// <summary>Of this many standard deviations is the half-width of a 90 % interval.</summary>
    public const double Ninety = 1.645;

    // What is looked at before first touch, s: the curves need a little to begin with.
    private const double Before = 1.0;

    // A gyro's gain is known to 1.5 % (standard deviation), the accelerometer's is set by gravity.
    private const double GyroGain = 0.015;
    private const double AccelerometerGain = 0.003;

    // Where the phone lies when nobody says, and the share of the wheelbase that heave's middle is unsure by.
    private static readonly PhonePlace Unknown = new() { BehindFrontAxle = 1.3, BehindFrontAxleSpread = 0.66 };

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
    public EventMeasuring(Drive drive, EventSettings settings)
    {
        (this.drive, this.settings, phone) = (drive, settings, settings.Phone ?? Unknown);
        curves = MotionCurves.Of(drive, phone.Left);
        ofPitch = [.. HitCatalogue.All, .. SettlingCatalogue.All];
        var place = settings.Seat is { } seat && settings.Phone is not null ? SeatPlace.Of(seat) : EventPlace.Floor;
        var seats = SeatCatalogue.Of(place);
        // What is measured at the place is asked, instead of a car's seat.
        rms = EventPlace.Measured(seats.Single(m => m.Key == place.Key + "-rms-vertical"), p => Window.RmsOfRide(p, DriveCurves.Vertical));
        peak = EventPlace.Measured(seats.Single(m => m.Key == place.Key + "-peak-vertical"), p => p.Peak(DriveCurves.Vertical));
    }

    /// <summary>The curves of the whole drive.</summary>
    public MotionCurves Curves => curves;

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
        var nearer = Asked(part, first, -phone.BehindFrontAxleSpread, onset.Time, through.Time);
        var farther = Asked(part, first, phone.BehindFrontAxleSpread, onset.Time, through.Time);
        return new EventNumbers
        {
            All = [.. ofPitch.Where(_ => curves.Pitch.Length > 0).Concat([rms, peak]).Select(m =>
            {
                var value = m.InFlight!(asIs);
                var place = 0.5 * Math.Abs(Finite(m.InFlight(farther) - m.InFlight(nearer)));
                var time = Math.Max(Math.Abs(Finite(m.InFlight(late) - value)), Math.Abs(Finite(value - m.InFlight(early))));
                return new EventNumber(m, value, Math.Sqrt((place * place) + (time * time) + Squared(Noise(m)) + Squared(Gain(m) * value)));
            })],
        };
    }

    private static double Finite(double value) => double.IsFinite(value) ? value : 0.0;

    private static double Squared(double value) => Finite(value) * Finite(value);

    // The curves with the phone farther back than it is said to lie, and the bump at other instants.
    private DriveCurves Asked(Range part, int first, double farther, double onset, double through)
    {
        var pitch = curves.Pitch.Length > 0 ? curves.Pitch[part] : new double[curves.Vertical[part].Length];
        var acceleration = curves.Pitch.Length > 0 ? curves.PitchAcceleration[part] : pitch;
        var behind = phone.BehindFrontAxle + farther;
        var toMiddle = (UsualCar.CentreBehind * settings.WheelbaseTaken) - behind;
        var toSeat = settings.Phone is not null && settings.SeatBehindFrontAxle is { } seat ? seat - behind : 0.0;
        var motion = new MeasuredMotion(
            pitch,
            curves.Pitch.Length > 0 ? curves.PitchRate[part] : pitch,
            acceleration,
            Plus(curves.Vertical[part], toSeat, acceleration),
            Plus(curves.Heave[part], toMiddle, pitch));
        return new DriveCurves(drive.Time(first), 1.0 / drive.Rate, motion, onset, through, settings.WheelbaseTaken);
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

    private double Noise(Measure measure)
    {
        var time = Math.Sqrt(0.4 * drive.Rate);
        return Ninety * measure.Key switch
        {
            "hit-peak-pitch" or "settling-rms-pitch" or "settling-peak-pitch" or "settling-late-pitch" => curves.PitchDeviation,
            "hit-peak-pitch-rate" => Math.Sqrt(curves.RateNoise) * time,
            "hit-peak-pitch-acceleration" => curves.AccelerationDeviation,
            _ when measure == peak => Math.Sqrt(curves.VerticalNoise) * time,
            // A mean over 3 s of 0.4 of the rate.
            _ when measure == rms => Math.Sqrt(curves.VerticalNoise / (2.0 * Window.OverObstacle)),
            _ => 0.0,
        };
    }

    private double Gain(Measure measure) => Ninety * (measure.Key is "settling-time" or "settling-cycles" ? 0.0
        : measure == rms || measure == peak ? AccelerometerGain
        : GyroGain) + (measure == rms || measure == peak || drive.Mount.HalfWidth is not { } half ? 0.0 : 1.0 - Math.Cos(half));
}
