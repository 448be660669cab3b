using Heaveline.Measures.Comfort;
using Heaveline.Rides;

namespace Heaveline.Measures;

/// <summary>A car on a random road in the long run, with its seats' comfort computed when first asked for. For one thread.</summary>
public sealed class CarOnRoad
{
    private readonly Dictionary<SeatPlace, RandomComfort?> seats = [];

    /// <summary>Of a response.</summary>
    public CarOnRoad(RandomResponse response)
    {
        ArgumentNullException.ThrowIfNull(response);
        Response = response;
    }

    /// <summary>The response.</summary>
    public RandomResponse Response { get; }

    /// <summary>What the comfort standard makes of a seat; null when the car has no seat of that name.</summary>
    /// <param name="place">The seat.</param>
    public RandomComfort? Comfort(SeatPlace place)
    {
        ArgumentNullException.ThrowIfNull(place);
        if (!seats.TryGetValue(place, out var comfort))
        {
            comfort = place.Of(Response.Model.Car).FirstOrDefault() is { } found ? RandomComfort.Of(Response, found) : null;
            seats[place] = comfort;
        }

        return comfort;
    }
}
