using Heaveline.Passes;

namespace Heaveline.Measures;

/// <summary>Pitch of a pass in numbers. Angles in rad from trim, magnitudes; largest recorded sample for a peak.</summary>
public sealed record PitchMeasures
{
    /// <summary>From the front wheels' first touch until the rear wheels have left: the hit. Null on a road without an obstacle.</summary>
    public PitchHit? Hit { get; init; }

    /// <summary>What follows. Null on a road without an obstacle.</summary>
    public PitchSettling? Settling { get; init; }

    /// <summary>Largest pitch angle of the whole pass, rad.</summary>
    public required double PeakAngle { get; init; }

    /// <summary>Root mean square pitch angle of the whole pass from t = 0, rad.</summary>
    public required double RmsAngle { get; init; }

    /// <summary>Largest pitch acceleration, rad/s².</summary>
    public required double PeakAcceleration { get; init; }

    /// <summary>Root mean square pitch acceleration from t = 0, rad/s².</summary>
    public required double RmsAcceleration { get; init; }

    /// <summary>Root mean square of half the wheelbase times the pitch over that of the heave, from t = 0 (–): 1 when the ends move as much by pitching as by heaving.</summary>
    public required double Share { get; init; }

    /// <summary>The numbers of a pass.</summary>
    public static PitchMeasures Of(Pass pass)
    {
        var pitch = pass.Pitch;
        var acceleration = pass.PitchAcceleration;
        var whole = new Window(0.0, double.PositiveInfinity);
        var obstacle = pass.Road.Event is not null;
        var arm = 0.5 * pass.Model.Car.Wheelbase.Si;
        return new PitchMeasures
        {
            Hit = obstacle ? PitchHit.Of(pass) : null,
            Settling = obstacle ? PitchSettling.Of(pass) : null,
            PeakAngle = Signal.Peak(pitch),
            RmsAngle = Signal.Rms(whole.Of(pass.Time, pitch)),
            PeakAcceleration = Signal.Peak(acceleration),
            RmsAcceleration = Signal.Rms(whole.Of(pass.Time, acceleration)),
            Share = Ratio(arm * Signal.Rms(whole.Of(pass.Time, pitch)), Signal.Rms(whole.Of(pass.Time, pass.Heave))),
        };
    }

    internal static double Ratio(double part, double whole) => whole > 0.0 ? part / whole : 0.0;
}
