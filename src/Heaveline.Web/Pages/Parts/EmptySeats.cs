using Heaveline.Cars;

namespace Heaveline.Web.Pages.Parts;

/// <summary>What must be said of numbers at a seat where nobody is aboard.</summary>
internal static class EmptySeats
{
    /// <summary>The sentence; null where somebody or something is aboard, or the car has no seats.</summary>
    /// <param name="car">The car.</param>
    /// <param name="load">Its load.</param>
    public static string? Of(Car car, LoadState load)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(load);
        return load.Loads.Count > 0 || car.Seats.Count == 0 ? null
            : $"Nobody is aboard ({load.Name}): a number at a seat is that of the bare place where somebody's hip or head would be.";
    }
}
