using Heaveline.Answers;
using Heaveline.Drives.Comparison;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>The two cars that move most like two drives, and what became of each number.</summary>
internal static class ChangeTable
{
    /// <summary>The tables; none where nothing is told.</summary>
    public static IEnumerable<FactTable> Of(CarChange? change)
    {
        if (change is not { Numbers.IsEmpty: false })
        {
            return [];
        }

        var cars = new FactTable("The cars that move like the drives", ["before", "after"]);
        var parts = new FactTable("What changed in the car", ["change", "lower end", "upper end"]);
        foreach (var number in change.Numbers)
        {
            var measure = DriveCarTable.Of(number.Number);
            cars.Add(measure, [number.Before, number.After]);
            var effect = number.Effect;
            parts.Add($"change-{measure.Key}", measure.Name, In.Percent.Symbol, "F1", new[] { effect.Value, effect.Low, effect.High }
                .Select(v => (double?)In.Percent.Of(v)));
        }

        return [cars, parts];
    }
}
