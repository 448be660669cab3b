using Heaveline.Cars;

namespace Heaveline.Files.Cars;

/// <summary>A load with the seat it sits in, if it does.</summary>
/// <param name="Load">The load; without its place when it sits in a seat.</param>
/// <param name="Seat">Name of the seat; null when the load has a place of its own.</param>
internal sealed record LoadAsWritten(Load Load, string? Seat)
{
    /// <summary>The load at its place: the hip point of its seat. Null when there is no such seat.</summary>
    public Load? Placed(IEnumerable<Seat> seats) =>
        Seat is null ? Load
        : seats.FirstOrDefault(seat => seat.Name == Seat) is { } seat
            ? Load with { BehindFrontAxle = seat.BehindFrontAxle, LeftOfMiddle = seat.LeftOfMiddle, Height = seat.Height }
            : null;
}
