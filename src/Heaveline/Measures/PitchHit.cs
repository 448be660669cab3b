using Heaveline.Passes;

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
            Window = window,
            PeakAngle = PeakAngleOf(curves),
            PeakRate = PeakRateOf(curves),
            PeakAcceleration = PeakAccelerationOf(curves),
            RmsAcceleration = curves.Rms(PassSignal.PitchAcceleration, window),
        };
    }

    internal static double PeakAngleOf(MeasuredCurves pass) => pass.Peak(PassSignal.Pitch, WindowOf(pass));

    internal static double PeakRateOf(MeasuredCurves pass) => pass.Peak(PassSignal.PitchRate, WindowOf(pass));

    internal static double PeakAccelerationOf(MeasuredCurves pass) => pass.Peak(PassSignal.PitchAcceleration, WindowOf(pass));

    /// <summary>When the front wheels first touch the obstacle, s.</summary>
    internal static double FirstTouch(PassRequest pass) =>
        ((pass.Road.EventStart ?? 0.0) - (0.5 * pass.Model.Car.Front.Tyre.ContactLength.Si)) / pass.Speed;

    private static Window WindowOf(MeasuredCurves pass) => new(pass.FirstTouch, pass.RearLeaves);
}
