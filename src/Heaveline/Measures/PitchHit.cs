using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Recording;
using Heaveline.Roads;

namespace Heaveline.Measures;

/// <summary>Pitch while the wheels are on the obstacle: from the front wheels' first touch until the rear wheels have left.</summary>
public sealed record PitchHit
{
    /// <summary>When it is.</summary>
    public required Window Window { get; init; }

    /// <summary>Largest pitch angle, rad.</summary>
    public required double PeakAngle { get; init; }

    /// <summary>Largest pitch rate, rad/s.</summary>
    public required double PeakRate { get; init; }

    /// <summary>Largest pitch acceleration, rad/s².</summary>
    public required double PeakAcceleration { get; init; }

    /// <summary>Root mean square pitch acceleration, rad/s².</summary>
    public required double RmsAcceleration { get; init; }

    /// <summary>The numbers of a pass over an obstacle.</summary>
    public static PitchHit Of(Pass pass)
    {
        var curves = new TracedCurves(pass);
        var window = WindowOf(curves);
        return new PitchHit
        {
            Window = window.Known,
            PeakAngle = PeakAngleOf(curves),
            PeakRate = PeakRateOf(curves),
            PeakAcceleration = PeakAccelerationOf(curves),
            RmsAcceleration = curves.Rms(PassSignal.PitchAcceleration, window),
        };
    }

    internal static NotedNumber PeakAngleOf(MeasuredCurves pass) => pass.Peak(PassSignal.Pitch, WindowOf(pass));

    internal static NotedNumber PeakRateOf(MeasuredCurves pass) => pass.Peak(PassSignal.PitchRate, WindowOf(pass));

    internal static NotedNumber PeakAccelerationOf(MeasuredCurves pass) => pass.Peak(PassSignal.PitchAcceleration, WindowOf(pass));

    /// <summary>When the front wheels first touch the obstacle, s.</summary>
    internal static NotedNumber FirstTouch(RideModel model, Road road, NotedNumber speed) =>
        ((road.EventStart ?? 0.0) - (0.5 * model.Car.Front.Tyre.ContactLength.Si)) / speed;

    private static CurveWindow WindowOf(MeasuredCurves pass) => new(pass.FirstTouch, pass.RearLeaves);
}
