using Heaveline.Cars;

namespace Heaveline.Causes;

/// <summary>
/// The load that a car's load is held against: its driver or rider alone, since nobody can drive an empty car. Where no load is called so, the
/// lightest load state in the file; without one that is lighter, nothing.
/// </summary>
internal static class NeutralLoad
{
    private static readonly string[] Alone = ["driver", "rider"];

    /// <summary>The neutral load of a car under a load; the same load where it is nobody but the driver.</summary>
    /// <param name="car">The car.</param>
    /// <param name="load">Its load.</param>
    public static LoadState Of(Car car, LoadState load)
    {
        if (load.Loads.Count == 0)
        {
            return load;
        }

        if (load.Loads.FirstOrDefault(l => Alone.Contains(l.Name, StringComparer.OrdinalIgnoreCase)) is { } driver)
        {
            return load.Loads.Count == 1 ? load : new LoadState { Name = $"{driver.Name} alone", Loads = [driver] };
        }

        var lightest = car.LoadStates.Where(state => state.Loads.Count > 0).MinBy(Mass);
        return lightest is null ? LoadState.Reference : Mass(lightest) < Mass(load) ? lightest : load;
    }

    /// <summary>A neutral load in words.</summary>
    public static string Words(LoadState load) => load.Loads.Count == 0 ? "nothing loaded" : load.Name;

    /// <summary>The heaviest of loads, the first of equals; nothing loaded where there is none.</summary>
    /// <param name="loads">The loads.</param>
    public static LoadState Heaviest(IReadOnlyList<LoadState> loads) => loads.Count == 0 ? LoadState.Reference : loads.MaxBy(Mass)!;

    /// <summary>Mass of a load, kg.</summary>
    public static double Mass(LoadState load) => load.Loads.Sum(l => l.Mass.Si);
}
