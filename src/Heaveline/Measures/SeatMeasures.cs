using Heaveline.Cars;
using Heaveline.Passes;

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
    /// Root mean square vertical acceleration, m/s², unweighted, over <see cref="Window.OfRide"/>; not a number when a slow hit outlasts it.
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

    internal static double RmsVerticalOf(Pass pass, double behindFrontAxle, double leftOfMiddle) =>
        Window.RmsOfRide(pass, pass.VerticalAcceleration(behindFrontAxle, leftOfMiddle));

    internal static SeatMeasures Of(Pass pass, Seat seat)
    {
        var body = pass.Model.Car.Body;
        var head = seat.Height.Si + seat.HeadAboveSeat.Si;
        var vertical = new Curve(pass, pass.VerticalAcceleration(seat.BehindFrontAxle.Si, seat.LeftOfMiddle.Si));
        var foreAft = pass.ForeAftForce(head - (body.PitchAxisHeight?.Si ?? pass.Model.Body.Height));
        var lateral = new Curve(pass, pass.LateralForce(head - (body.RollAxisHeight?.Si ?? pass.Model.Body.Height)));
        return new SeatMeasures
        {
            Seat = seat.Name,
            PeakVertical = vertical.Peak(),
            RmsVertical = RmsVerticalOf(pass, seat.BehindFrontAxle.Si, seat.LeftOfMiddle.Si),
            PeakHeadForeAft = new Curve(pass, foreAft).Peak(),
            RmsHeadForeAft = Window.RmsOfRide(pass, foreAft),
            PeakHeadLateral = lateral.Peak(),
        };
    }
}
