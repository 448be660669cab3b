using Heaveline.Answers;
using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Modes;

namespace Heaveline.Studies;

/// <summary>Static side effects, a column a car.</summary>
public static class CostTable
{
    /// <summary>The measures that cars have between them; left and right alike are said once.</summary>
    public static IReadOnlyList<Measure<CarAtRest>> Measures(IReadOnlyList<CarAtRest> cars)
    {
        ArgumentNullException.ThrowIfNull(cars);
        var sides = cars[0].Model.Rolls;
        bool Same(int right) => cars.All(c => Alike(c.SideEffects, right));
        return SideEffectCatalogue.Of(WheelPlace.Each(sides)
            .Where(place => !Same(place.Corners[0]))
            .Select(place => Same(place.Corners[0] + 1) ? place with { Name = CornerNames.Of((AxleEnd)(place.Corners[0] / 2)) } : place));
    }

    /// <summary>The table.</summary>
    /// <param name="names">Names, a column each.</param>
    /// <param name="cars">The cars at rest under one load.</param>
    public static FactTable Of(IReadOnlyList<string> names, IReadOnlyList<CarAtRest> cars) =>
        new FactTable("Side effects", names).Add(Measures(cars), cars);

    private static bool Alike(SideEffects e, int i) => e.Wheels.Count == 4 && i % 2 == 1
        && Math.Abs(e.Wheels[i].Deflection - e.Wheels[i - 1].Deflection) < 1e-6
        && Math.Abs(e.Wheels[i].HeightChange - e.Wheels[i - 1].HeightChange) < 1e-6;
}
