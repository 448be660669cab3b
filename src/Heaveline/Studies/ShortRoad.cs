using Heaveline.Cars;
using Heaveline.Roads;

namespace Heaveline.Studies;

/// <summary>What must be said of a measured or drawn stretch of road that is shorter than the car is long between its axles.</summary>
public static class ShortRoad
{
    /// <summary>One sentence where the front wheels leave the road before the rear ones reach it; none of an obstacle, which is whole.</summary>
    /// <param name="road">The road.</param>
    /// <param name="cars">The cars that are driven over it; the longest is named.</param>
    public static IReadOnlyList<string> Of(Road road, params IEnumerable<Car> cars)
    {
        ArgumentNullException.ThrowIfNull(road);
        var longest = cars.MaxBy(car => car.Wheelbase.Si)!;
        var length = road.End - road.Start;
        return road.Event is null && road.Kind is not RoadKind.Flat && length < longest.Wheelbase.Si
            ? [FormattableString.Invariant(
                $"The road is only {length:0.##} m long, less than the wheelbase of {longest.Name} ({longest.Wheelbase.Si:0.###} m): the front ")
                + "wheels are past its end, on level ground that nobody measured, before the rear ones reach it. Measure a longer stretch."]
            : [];
    }
}
