using Heaveline.Answers;
using Heaveline.Drives.Comparison;
using Heaveline.Drives.Identification;
using Heaveline.Measures;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>The two cars that move most like two drives, and what became of each number.</summary>
public static class ChangeTable
{
    private static readonly Measure<NumberChange>[] All =
    [
        .. Enum.GetValues<CarNumber>().Select(number => DriveCarTable.Of(number)).Select(measure => new Measure<NumberChange>(
            $"change-{measure.Key}",
            $"change of {measure.Name}",
            In.Percent,
            1,
            change => change.Effect.Value,
            $"After over before less one, {measure.Name}, of the cars that move most like two drives.") { Page = "guide/did-the-change-work.md" }),
    ];

    /// <summary>All that the table of changes holds, for the glossary.</summary>
    public static IReadOnlyList<Measure> Measures { get; } = [.. All];

    /// <summary>The tables; none where nothing is told.</summary>
    /// <param name="change">What changed; null where no car is known.</param>
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
            cars.Add(DriveCarTable.Of(number.Number), [number.Before, number.After]);
            parts.Add(All[(int)number.Number], [number.Effect.Value, number.Effect.Low, number.Effect.High]);
        }

        return [cars, parts];
    }
}
