using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Recording;

namespace Heaveline.Measures;

/// <summary>
/// What one seat and the head above it get, m/s². The seat is a rigid point of the body. The head's fore-aft specific force is h·θ̈ − g·θ with h its
/// height above the pitch axis (above the centre of gravity's height when no pitch axis is given), its vertical acceleration is the seat's.
/// </summary>
public sealed record SeatMeasures
{
    /// <summary>The seat.</summary>
    public required string Seat { get; init; }

    /// <summary>Largest vertical acceleration, m/s².</summary>
    public required double PeakVertical { get; init; }

    /// <summary>
    /// Root mean square vertical acceleration, m/s², unweighted, over <see cref="Window.OfRide(Pass)"/>; not a number when a slow hit outlasts it.
    /// </summary>
    public required double RmsVertical { get; init; }

    /// <summary>Largest fore-aft specific force at the head, m/s².</summary>
    public required double PeakHeadForeAft { get; init; }

    /// <summary>The same of the fore-aft specific force at the head, m/s².</summary>
    public required double RmsHeadForeAft { get; init; }

    /// <summary>Largest lateral specific force at the head, m/s².</summary>
    public required double PeakHeadLateral { get; init; }

    /// <summary>The numbers of every seat of the car.</summary>
    public static IReadOnlyList<SeatMeasures> Of(Pass pass) => [.. pass.Model.Car.Seats.Select(seat => Of(pass, seat))];

    internal static SeatMeasures Of(Pass pass, Seat seat)
    {
        var curves = new TracedCurves(pass);
        return new SeatMeasures
        {
            Seat = seat.Name,
            PeakVertical = PeakVerticalOf(curves, seat),
            RmsVertical = RmsVerticalOf(curves, seat),
            PeakHeadForeAft = PeakHeadForeAftOf(curves, seat),
            RmsHeadForeAft = Window.RmsOfRide(curves, ForeAft(curves.Model, seat)),
            PeakHeadLateral = curves.Peak(Lateral(curves.Model, seat)),
        };
    }

    internal static NotedNumber PeakVerticalOf(MeasuredCurves pass, Seat seat) => pass.Peak(Vertical(pass.Model, seat));

    internal static NotedNumber RmsVerticalOf(MeasuredCurves pass, Seat seat) => Window.RmsOfRide(pass, Vertical(pass.Model, seat));

    internal static NotedNumber PeakHeadForeAftOf(MeasuredCurves pass, Seat seat) => pass.Peak(ForeAft(pass.Model, seat));

    /// <summary>Vertical acceleration at the hip point.</summary>
    internal static PassSignal Vertical(RideModel model, Seat seat) =>
        PassSignal.Of(RideSignal.VerticalAcceleration(model, seat.BehindFrontAxle.Si, seat.LeftOfMiddle.Si));

    private static PassSignal ForeAft(RideModel model, Seat seat) =>
        PassSignal.Of(RideSignal.ForeAftForce(Head(seat) - (model.Car.Body.PitchAxisHeight?.Si ?? model.Body.Height)));

    private static PassSignal Lateral(RideModel model, Seat seat) =>
        PassSignal.Of(RideSignal.LateralForce(Head(seat) - (model.Car.Body.RollAxisHeight?.Si ?? model.Body.Height)));

    private static double Head(Seat seat) => seat.Height.Si + seat.HeadAboveSeat.Si;
}
