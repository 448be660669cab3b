using Heaveline.Passes;
using Heaveline.Recording;

namespace Heaveline.Measures;

/// <summary>Pitch of a pass in numbers. Angles in rad from trim, magnitudes; of the curve through the samples.</summary>
public sealed record PitchMeasures
{
    private static readonly PassSignal HeaveAboveRoad = PassSignal.Heave with { AboveRoad = true };

    /// <summary>From the front wheels' first touch until the rear wheels have left: the hit. Null on a road without an obstacle.</summary>
    public PitchHit? Hit { get; init; }

    /// <summary>What follows. Null on a road without an obstacle.</summary>
    public PitchSettling? Settling { get; init; }

    /// <summary>Largest pitch angle of the whole pass, rad.</summary>
    public required double PeakAngle { get; init; }

    /// <summary>
    /// Root mean square pitch angle of the whole pass, rad: from t = 0; on a road without an obstacle until the rear wheels have left it.
    /// </summary>
    public required double RmsAngle { get; init; }

    /// <summary>Largest pitch acceleration, rad/s².</summary>
    public required double PeakAcceleration { get; init; }

    /// <summary>Root mean square pitch acceleration over the same time, rad/s².</summary>
    public required double RmsAcceleration { get; init; }

    /// <summary>
    /// Root mean square of half the wheelbase times the pitch over that of the heave, from t = 0 (–): 1 when the
    /// ends move as much by pitching as by heaving. Over an obstacle the heave is that above the mean road under the wheels: a change of level
    /// is none.
    /// </summary>
    public required double Share { get; init; }

    /// <summary>The numbers of a pass.</summary>
    public static PitchMeasures Of(Pass pass)
    {
        var obstacle = pass.Road.Event is not null;
        var curves = new TracedCurves(pass);
        return new PitchMeasures
        {
            Hit = obstacle ? PitchHit.Of(pass) : null,
            Settling = obstacle ? PitchSettling.Of(pass) : null,
            PeakAngle = PeakAngleOf(curves),
            RmsAngle = RmsAngleOf(curves),
            PeakAcceleration = PeakAccelerationOf(curves),
            RmsAcceleration = RmsAccelerationOf(curves),
            Share = ShareOf(curves),
        };
    }

    internal static NotedNumber PeakAngleOf(MeasuredCurves pass) => pass.Peak(PassSignal.Pitch);

    internal static NotedNumber RmsAngleOf(MeasuredCurves pass) => pass.Rms(PassSignal.Pitch, Window.OfPass(pass));

    internal static NotedNumber PeakAccelerationOf(MeasuredCurves pass) => pass.Peak(PassSignal.PitchAcceleration);

    internal static NotedNumber RmsAccelerationOf(MeasuredCurves pass) => pass.Rms(PassSignal.PitchAcceleration, Window.OfPass(pass));

    internal static NotedNumber ShareOf(MeasuredCurves pass) => ShareOf(pass, Window.OfPass(pass));

    /// <summary>
    /// ½·L·θ over the heave, root mean squares in one window. A step up is no heave, so that over an obstacle the mean road under the wheels is taken
    /// off; on other roads it stays, as the road's slope stays in the pitch.
    /// </summary>
    internal static NotedNumber ShareOf(MeasuredCurves pass, CurveWindow window)
    {
        var part = 0.5 * pass.Wheelbase * pass.Rms(PassSignal.Pitch, window);
        var whole = pass.Rms(pass.HasObstacle ? HeaveAboveRoad : PassSignal.Heave, window);
        return NotedNumber.WhereAtMost(whole, 0.0, 0.0, part / whole);
    }
}
