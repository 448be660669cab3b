using System.Collections.Immutable;
using Heaveline.Cars;

namespace Heaveline.Figures.Silhouettes;

/// <summary>Who and what is drawn in a vehicle: people where their seats are, everything else where it was put, m as in the silhouette.</summary>
/// <param name="People">People, those on the far side first.</param>
/// <param name="Luggage">Pieces of luggage: the middle of each and its sides.</param>
internal sealed record Aboard(ImmutableArray<SeatedPerson> People, ImmutableArray<(ScenePoint Middle, double Long, double High)> Luggage)
{
    // A load in a seat has been put at its very place.
    private const double SamePlace = 1e-6;

    // A packed boot of usual width, kg per square metre of its side: judged by eye, so that 80 kg look like four people's bags.
    private const double MassOfSide = 260.0;

    /// <summary>What a load state puts into a vehicle; what is taken out of it is not drawn.</summary>
    public static Aboard Of(Car car, LoadState state)
    {
        var isOpen = car.Kind == VehicleKind.TwoWheeler;
        var people = new List<SeatedPerson>();
        var luggage = ImmutableArray.CreateBuilder<(ScenePoint Middle, double Long, double High)>();
        foreach (var load in state.Loads.Where(load => load.Mass.Si > 0.0))
        {
            if (car.Seats.FirstOrDefault(seat => Is(load, seat)) is { } seat)
            {
                people.Add(SeatedPerson.On(car, seat, isOpen));
                continue;
            }

            var side = Math.Clamp(Math.Sqrt(load.Mass.Si / MassOfSide), 0.15, 1.4);
            luggage.Add((new(car.Wheelbase.Si - load.BehindFrontAxle.Si, load.Height.Si), 1.25 * side, 0.8 * side));
        }

        return new Aboard([.. people.OrderByDescending(person => person.IsFar)], luggage.ToImmutable());
    }

    private static bool Is(Load load, Seat seat) =>
        Math.Abs(load.BehindFrontAxle.Si - seat.BehindFrontAxle.Si) < SamePlace && Math.Abs(load.LeftOfMiddle.Si - seat.LeftOfMiddle.Si) < SamePlace
        && Math.Abs(load.Height.Si - seat.Height.Si) < SamePlace;
}
