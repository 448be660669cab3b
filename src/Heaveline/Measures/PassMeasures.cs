using Heaveline.Passes;
using Heaveline.Recording;

namespace Heaveline.Measures;

/// <summary>All numbers of one pass.</summary>
public sealed record PassMeasures
{
    /// <summary>Pitch: hit and settling apart.</summary>
    public required PitchMeasures Pitch { get; init; }

    /// <summary>Largest heave acceleration of the centre of gravity, m/s².</summary>
    public required double PeakHeaveAcceleration { get; init; }

    /// <summary>
    /// Root mean square heave acceleration, m/s², over <see cref="Window.OfRide(Pass)"/>; not a number when a slow hit outlasts it.
    /// </summary>
    public required double RmsHeaveAcceleration { get; init; }

    /// <summary>Largest roll angle from trim, rad.</summary>
    public required double PeakRoll { get; init; }

    /// <summary>Every seat.</summary>
    public required IReadOnlyList<SeatMeasures> Seats { get; init; }

    /// <summary>Every wheel.</summary>
    public required IReadOnlyList<WheelMeasures> Wheels { get; init; }

    /// <summary>The dipped beam, or null.</summary>
    public HeadlampMeasures? Headlamp { get; init; }

    /// <summary>The numbers of a pass.</summary>
    public static PassMeasures Of(Pass pass)
    {
        var curves = new TracedCurves(pass);
        return new()
        {
            Pitch = PitchMeasures.Of(pass),
            PeakHeaveAcceleration = PeakHeaveAccelerationOf(curves),
            RmsHeaveAcceleration = RmsHeaveAccelerationOf(curves),
            PeakRoll = PeakRollOf(curves),
            Seats = SeatMeasures.Of(pass),
            Wheels = WheelMeasures.Of(pass),
            Headlamp = HeadlampMeasures.Of(pass),
        };
    }

    internal static NotedNumber PeakHeaveAccelerationOf(MeasuredCurves pass) => pass.Peak(PassSignal.HeaveAcceleration);

    internal static NotedNumber RmsHeaveAccelerationOf(MeasuredCurves pass) => Window.RmsOfRide(pass, PassSignal.HeaveAcceleration);

    internal static NotedNumber PeakRollOf(MeasuredCurves pass) => pass.Peak(PassSignal.Roll);
}
