using Heaveline.Passes;

namespace Heaveline.Measures;

/// <summary>One number of a pass by which cars are compared.</summary>
/// <param name="Name">What it is, in words, with its window.</param>
/// <param name="Symbol">SI unit.</param>
/// <param name="Of">The number.</param>
public sealed record PassMeasure(string Name, string Symbol, Func<Pass, double> Of)
{
    private static readonly Window Whole = new(0.0, double.PositiveInfinity);

    /// <summary>How long after the rear wheels have left the number still looks, s; infinite: to the end of the record, however long that is.</summary>
    internal double LooksFor { get; private init; } = double.PositiveInfinity;

    /// <summary>How many of a sample's numbers it reads, by <see cref="Channel"/>.</summary>
    internal int Reads { get; private init; } = Channel.Count;

    /// <summary>The settling's headline: root mean square pitch angle in the first second after the rear wheels have left, rad.</summary>
    public static PassMeasure SettlingAngle { get; } = new(
        "RMS pitch in the first second after the rear has left", "rad", p => Signal.Rms(Second(p).Of(p.Time, p.Pitch)))
    {
        LooksFor = PitchSettling.Second,
        Reads = Channel.Motion,
    };

    /// <summary>√∫θ²dt from 0.8 s after the rear wheels have left to the end of the record, rad·s^0.5.</summary>
    public static PassMeasure LateAngle { get; } = new(
        "pitch later than 0.8 s after the rear has left", "rad·s^0.5", p => Root(new Window(p.RearLeaves + PitchSettling.Late, double.PositiveInfinity).Of(p.Time, p.Pitch), p.SampleStep))
    {
        Reads = Channel.Motion,
    };

    /// <summary>Largest pitch angle in the first second after the rear wheels have left, rad.</summary>
    public static PassMeasure SettlingPeak { get; } = new(
        "peak pitch in the first second after the rear has left", "rad", p => Signal.Peak(Second(p).Of(p.Time, p.Pitch)))
    {
        LooksFor = PitchSettling.Second,
        Reads = Channel.Motion,
    };

    /// <summary>The hit: largest pitch acceleration until the rear wheels have left, rad/s².</summary>
    public static PassMeasure HitAcceleration { get; } = new("peak pitch acceleration of the hit", "rad/s²", p => Signal.Peak(Hit(p).Of(p.Time, p.PitchAcceleration)))
    {
        LooksFor = 0.0,
        Reads = Channel.BodyAccelerations,
    };

    /// <summary>The hit: largest pitch angle until the rear wheels have left, rad.</summary>
    public static PassMeasure HitAngle { get; } = new("peak pitch angle of the hit", "rad", p => Signal.Peak(Hit(p).Of(p.Time, p.Pitch)))
    {
        LooksFor = 0.0,
        Reads = Channel.Motion,
    };

    /// <summary>Whether it judges the hit and nothing of what follows.</summary>
    public bool JudgesHit => this == HitAcceleration || this == HitAngle;

    /// <summary>Largest pitch acceleration of the whole pass, rad/s².</summary>
    public static PassMeasure PeakAcceleration { get; } = new("peak pitch acceleration", "rad/s²", p => Signal.Peak(p.PitchAcceleration))
    {
        Reads = Channel.BodyAccelerations,
    };

    /// <summary>Root mean square pitch angle of the whole pass, rad.</summary>
    public static PassMeasure PitchAngle { get; } = new("RMS pitch", "rad", p => Signal.Rms(Whole.Of(p.Time, p.Pitch)))
    {
        Reads = Channel.Motion,
    };

    /// <summary>Root mean square pitch acceleration of the whole pass, rad/s².</summary>
    public static PassMeasure PitchAcceleration { get; } = new("RMS pitch acceleration", "rad/s²", p => Signal.Rms(Whole.Of(p.Time, p.PitchAcceleration)))
    {
        Reads = Channel.BodyAccelerations,
    };

    /// <summary>Root mean square heave acceleration of the centre of gravity, m/s².</summary>
    public static PassMeasure HeaveAcceleration { get; } = new("RMS heave acceleration", "m/s²", p => Signal.Rms(Whole.Of(p.Time, p.HeaveAcceleration)))
    {
        Reads = Channel.BodyAccelerations,
    };

    /// <summary>Root mean square change of the front left tyre's load over its load at trim (–).</summary>
    public static PassMeasure FrontLoadVariation { get; } = new("front tyre load variation", "", p => LoadVariation(p, 0))
    {
        Reads = Channel.TyreLoads,
    };

    /// <summary>Root mean square change of the rear left tyre's load over its load at trim (–).</summary>
    public static PassMeasure RearLoadVariation { get; } = new("rear tyre load variation", "", p => LoadVariation(p, 2))
    {
        Reads = Channel.TyreLoads,
    };

    /// <summary>Root mean square vertical acceleration of a place in the middle of the car, m/s².</summary>
    /// <param name="behindFrontAxle">Behind the front axle, m.</param>
    public static PassMeasure VerticalAt(double behindFrontAxle) => new(
        FormattableString.Invariant($"RMS vertical acceleration {behindFrontAxle:0.##} m behind the front axle"), "m/s²", p => Signal.Rms(Whole.Of(p.Time, p.VerticalAcceleration(behindFrontAxle, 0.0))))
    {
        Reads = Channel.BodyAccelerations,
    };

    private static Window Second(Pass p) => new(p.RearLeaves, p.RearLeaves + PitchSettling.Second);

    private static Window Hit(Pass p) => new(((p.Road.EventStart ?? 0.0) - (0.5 * p.Model.Car.Front.Tyre.ContactLength.Si)) / p.Speed, p.RearLeaves);

    private static double Root(ReadOnlySpan<double> x, double step) => Signal.Rms(x) * Math.Sqrt(x.Length * step);

    private static double LoadVariation(Pass p, int wheel)
    {
        var load = p.TyreLoad(wheel);
        var still = (p.Model.Rolls ? 1.0 : 2.0) * p.Model.Trim.WheelLoad[wheel];
        for (var k = 0; k < load.Length; k++)
        {
            load[k] -= still;
        }

        return Signal.Rms(Whole.Of(p.Time, load)) / still;
    }
}
