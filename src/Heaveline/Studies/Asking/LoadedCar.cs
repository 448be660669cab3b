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
    /// <param name="load">The load; null: empty.</param>
    public static LoadedCar Of(Car car, LoadState? load = null)
    {
        ArgumentNullException.ThrowIfNull(car);
        return new LoadedCar(car.Name, car, load ?? LoadState.Reference);
    }

    // That a car has no load so named, in words.
    internal static string NoLoad(Car car, string name)
    {
        var known = string.Join(", ", car.LoadStates.Select(l => l.Name).Prepend(LoadState.Reference.Name));
        return $"'{name}' is no load state of {car.Name}; it has: {known}.";
    }

    /// <summary>A load state of a car by its name, empty among them; null when it has none so named.</summary>
    public static LoadState? LoadNamed(Car car, string name)
    {
        ArgumentNullException.ThrowIfNull(car);
        return name == LoadState.Reference.Name ? LoadState.Reference : car.LoadStates.FirstOrDefault(load => load.Name == name);
    }

    /// <summary>The load that a car is asked about when none is named: its first, or empty where it has none.</summary>
    public static LoadState UsualLoad(Car car)
    {
        ArgumentNullException.ThrowIfNull(car);
        return car.LoadStates.Count > 0 ? car.LoadStates[0] : LoadState.Reference;
    }

    /// <summary>A car beside one under a load: under its own load of that name, or its usual one where it has none so named.</summary>
    /// <param name="name">What it is called beside the other.</param>
    /// <param name="car">The car.</param>
    /// <param name="load">The other's load.</param>
    public static LoadedCar Beside(string name, Car car, LoadState load)
    {
        ArgumentNullException.ThrowIfNull(load);
        return new LoadedCar(name, car, LoadNamed(car, load.Name) ?? UsualLoad(car));
    }

    /// <summary>The loads of cars in words: one name where all are called the same, else each with its car.</summary>
    public static string LoadsOf(IReadOnlyList<LoadedCar> cars)
    {
        ArgumentNullException.ThrowIfNull(cars);
        string[] names = [.. cars.Select(c => c.Load.Name).Distinct()];
        return names is [var one] ? one : string.Join(", ", cars.Select(c => $"{c.Name} under '{c.Load.Name}'"));
    }

    /// <summary>The names that the owner of a car gave: its own, and those of its loads and seats.</summary>
    public static IEnumerable<string> NamesIn(Car car)
    {
        ArgumentNullException.ThrowIfNull(car);
        return [car.Name, .. car.LoadStates.Select(load => load.Name), .. car.Seats.Select(seat => seat.Name)];
    }

    /// <summary>The car at its trim.</summary>
    /// <exception cref="RefusedValueException">It cannot stand so.</exception>
    public RideModel Model => RideModel.Of(Car, Load);
}
