using Heaveline.Passes;
using Heaveline.Recording;

namespace Heaveline.Measures;

/// <summary>
/// Pitch after the rear wheels have left the obstacle. The headline is the root mean square angle of the first second: it is smooth in the car's
/// numbers. The settling time is a staircase: a lobe that just clears the threshold moves it by half a period, so it stands with the lobes' heights.
/// </summary>
public sealed record PitchSettling
{
    /// <summary>Length of the headline's window, s.</summary>
    public const double Second = 1.0;

    /// <summary>The late part begins this long after the rear wheels have left, s.</summary>
    public const double Late = 0.8;

    /// <summary>Threshold of the settling time as a share of the pass's peak angle (–).</summary>
    public const double Threshold = 0.10;

    private const double LobesToCycles = 0.5;

    /// <summary>The first second after the rear wheels have left.</summary>
    public required Window Window { get; init; }

    /// <summary>Root mean square pitch angle in it, rad: the headline.</summary>
    public required double RmsAngle { get; init; }

    /// <summary>Largest pitch angle in it, rad.</summary>
    public required double PeakAngle { get; init; }

    /// <summary>Root mean square pitch acceleration in it, rad/s².</summary>
    public required double RmsAcceleration { get; init; }

    /// <summary>√∫θ²dt from 0.8 s after the rear wheels have left to the end of the record, rad·s^0.5.</summary>
    public required double LateAngle { get; init; }

    /// <summary>Root mean square of half the wheelbase times the pitch over that of the heave above the road, in the first second (–).</summary>
    public required double Share { get; init; }

    /// <summary>
    /// Last time at which the angle passes a tenth of its peak, from the front wheels' first touch, s; null when it
    /// does not fall below it within the record.
    /// </summary>
    public required double? TimeFromStart { get; init; }

    /// <summary>The same from the moment the rear wheels have left, s.</summary>
    public required double? TimeFromRear { get; init; }

    /// <summary>
    /// Turning points of the pitch angle after the rear wheels have left that reach the threshold, rad, signed, in order: two lobes make a cycle.
    /// </summary>
    public required IReadOnlyList<double> Lobes { get; init; }

    /// <summary>Cycles until settled: half the number of lobes (–).</summary>
    public double Cycles => LobesToCycles * Lobes.Count;

    /// <summary>The numbers of a pass over an obstacle.</summary>
    public static PitchSettling Of(Pass pass)
    {
        var curves = new TracedCurves(pass);
        var pitch = new Curve(pass, pass.Pitch);
        return new PitchSettling
        {
            Window = WindowOf(curves).Known,
            RmsAngle = RmsAngleOf(curves),
            PeakAngle = PeakAngleOf(curves),
            RmsAcceleration = curves.Rms(PassSignal.PitchAcceleration, WindowOf(curves)),
            LateAngle = LateAngleOf(curves),
            Share = ShareOf(curves),
            TimeFromStart = TimeFromStartOf(curves),
            TimeFromRear = TimeFromRearOf(curves),
            Lobes = pitch.Lobes(Threshold * pitch.Peak(), pass.RearLeaves),
        };
    }

    internal static NotedNumber RmsAngleOf(MeasuredCurves pass) => pass.Rms(PassSignal.Pitch, WindowOf(pass));

    internal static NotedNumber PeakAngleOf(MeasuredCurves pass) => pass.Peak(PassSignal.Pitch, WindowOf(pass));

    internal static NotedNumber LateAngleOf(MeasuredCurves pass) =>
        NotedNumber.Sqrt(pass.SquareIntegral(PassSignal.Pitch, new(pass.RearLeaves + Late, double.PositiveInfinity)));

    internal static NotedNumber ShareOf(MeasuredCurves pass) => PitchMeasures.ShareOf(pass, WindowOf(pass));

    internal static NotedNumber? TimeFromRearOf(MeasuredCurves pass) =>
        TimeFromStartOf(pass) is { } t ? NotedNumber.Max(0.0, t - pass.RearLeaves) : null;

    internal static NotedNumber CyclesOf(MeasuredCurves pass) => LobesToCycles * pass.Lobes(PassSignal.Pitch, Threshold, pass.RearLeaves);

    // A record that ends while the car still swings has no settling time.
    private static NotedNumber? TimeFromStartOf(MeasuredCurves pass) => pass.LastAbove(PassSignal.Pitch, Threshold);

    private static CurveWindow WindowOf(MeasuredCurves pass) => new(pass.RearLeaves, pass.RearLeaves + Second);
}
