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
        var window = WindowOf(pass);
        return new PitchHit
        {
            Window = window,
            PeakAngle = PeakAngleOf(pass),
            PeakRate = new Curve(pass, pass.PitchRate).Peak(window),
            PeakAcceleration = PeakAccelerationOf(pass),
            RmsAcceleration = new Curve(pass, pass.PitchAcceleration).Rms(window),
        };
    }

    internal static double PeakAngleOf(Pass pass) => new Curve(pass, pass.Pitch).Peak(WindowOf(pass));

    internal static double PeakAccelerationOf(Pass pass) => new Curve(pass, pass.PitchAcceleration).Peak(WindowOf(pass));

    /// <summary>When the front wheels first touch the obstacle, s.</summary>
    internal static double FirstTouch(Pass pass) =>
        ((pass.Road.EventStart ?? 0.0) - (0.5 * pass.Model.Car.Front.Tyre.ContactLength.Si)) / pass.Speed;

    private static Window WindowOf(Pass pass) => new(FirstTouch(pass), pass.RearLeaves);
}
