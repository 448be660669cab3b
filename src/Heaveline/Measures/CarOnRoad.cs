using Heaveline.Measures.Comfort;
using Heaveline.Rides;

namespace Heaveline.Measures;

/// <summary>A car on a random road in the long run, with its seats' comfort computed when first asked for. For one thread.</summary>
public sealed class CarOnRoad
{
    private readonly Dictionary<string, RandomComfort?> seats = [];

    /// <summary>Of a response.</summary>
    public CarOnRoad(RandomResponse response)
    {
        ArgumentNullException.ThrowIfNull(response);
        Response = response;
    }

    /// <summary>The response.</summary>
    public RandomResponse Response { get; }

    /// <summary>What the comfort standard makes of a seat; null when the car has no seat of that name.</summary>
    /// <param name="seat">Its name.</param>
    public RandomComfort? Comfort(string seat)
    {
        if (!seats.TryGetValue(seat, out var comfort))
        {
            comfort = Response.Model.Car.Seats.FirstOrDefault(s => s.Name == seat) is { } found ? RandomComfort.Of(Response, found) : null;
            seats[seat] = comfort;
        }

        return comfort;
    }
}
