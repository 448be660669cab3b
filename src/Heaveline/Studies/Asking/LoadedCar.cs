using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>A car under one of its loads.</summary>
/// <param name="Name">What it is called beside others; two of one question never share it.</param>
/// <param name="Car">The car.</param>
/// <param name="Load">The load.</param>
public sealed record LoadedCar(string Name, Car Car, LoadState Load)
{
    /// <summary>A car by its own name.</summary>
    /// <param name="car">The car.</param>
    /// <param name="load">The load; null: as described.</param>
    public static LoadedCar Of(Car car, LoadState? load = null)
    {
        ArgumentNullException.ThrowIfNull(car);
        return new LoadedCar(car.Name, car, load ?? LoadState.Reference);
    }

    /// <summary>The car at its trim.</summary>
    /// <exception cref="RefusedValueException">It cannot stand so.</exception>
    public RideModel Model => RideModel.Of(Car, Load);
}
