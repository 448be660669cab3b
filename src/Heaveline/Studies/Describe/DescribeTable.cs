using Heaveline.Answers;
using Heaveline.Measures;

namespace Heaveline.Studies;

/// <summary>What a car is, load state by load state.</summary>
public static class DescribeTable
{
    /// <summary>Three tables, a column a load state: standing, axles, body.</summary>
    /// <param name="cars">One per load state.</param>
    public static IReadOnlyList<FactTable> Of(IReadOnlyList<CarAtRest> cars) =>
        [.. RestCatalogue.Groups.Select(group => new FactTable(group.Title, [.. cars.Select(c => c.Model.Load.Name)]).Add(group.Measures, cars))];

    /// <summary>Every wheel, the ride rates and the loaded body's inertias, a column a load state.</summary>
    /// <param name="cars">One per load state, at least one.</param>
    public static FactTable Wheels(IReadOnlyList<CarAtRest> cars)
    {
        ArgumentNullException.ThrowIfNull(cars);
        return new FactTable("Wheels, ride rates and inertias", [.. cars.Select(c => c.Model.Load.Name)])
            .Add(RestDetailCatalogue.Of(WheelPlace.Each(cars[0].Model.Rolls)), cars);
    }
}
