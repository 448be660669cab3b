using Heaveline.Cars;

namespace Heaveline.Measures;

/// <summary>The seat, or the seats, that a measure is of, looked up by name: a drawn car's are where its measurements leave them.</summary>
/// <param name="Key">Name for machines.</param>
/// <param name="Name">Name for people.</param>
/// <param name="Seat">The seat's name; null: the worst of all, or the first.</param>
public sealed record SeatPlace(string Key, string Name, string? Seat)
{
    /// <summary>Whichever seat has it worst.</summary>
    public static SeatPlace Worst { get; } = new("worst-seat", "worst seat", null);

    /// <summary>The seat that a car names first.</summary>
    public static SeatPlace First { get; } = new("first-seat", "first seat", null);

    /// <summary>One seat.</summary>
    /// <param name="seat">Its name.</param>
    public static SeatPlace Of(string seat) => new(seat.Replace(' ', '-'), seat, seat);

    /// <summary>The seats of a car that are meant.</summary>
    public IEnumerable<Seat> Of(Car car) => this == First ? car.Seats.Take(1) : Seat is null ? car.Seats : car.Seats.Where(s => s.Name == Seat);
}
