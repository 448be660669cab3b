using Heaveline.Answers;
using Heaveline.Drives.Identification;
using Heaveline.Drives.Planning;
using Heaveline.Measures;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>What each hump would tell on a test day, as a table.</summary>
public static class PlanTable
{
    private const string Page = "guide/a-test-day.md";

    private static readonly Measure<TestDrive>[] All =
    [
        Of("plan-slowest", "slowest of three speeds", In.KilometresPerHour, 1, d => d.Speeds[0], "The slowest of the three speeds of a test day."),
        Of("plan-fastest", "fastest of three speeds", In.KilometresPerHour, 1, d => d.Speeds[^1],
            "The fastest speed up to 30 km/h at which every tyre keeps 20 % of its load and every wheel stays 5 mm off its stops, "
            + "tried 5 % faster too; the others are 0.8 and 0.6 of it."),
        Half("plan-front-frequency", "front frequency", CarNumber.FrontFrequency),
        Half("plan-rear-frequency", "rear frequency", CarNumber.RearFrequency),
        Half("plan-ratio", "frequency ratio", CarNumber.FrequencyRatio),
        Half("plan-front-damping", "front damping", CarNumber.FrontDamping),
        Half("plan-rear-damping", "rear damping", CarNumber.RearDamping),
        Half("plan-index", "dynamic index", CarNumber.PitchIndex),
        Of("plan-passes", $"passes to halve the doubt asked about, ≥ {TestDrive.Passes}", In.Plain, 0, d => d.PassesForNumber ?? double.NaN,
            "Fewest passes, a third at each speed and twelve at least, "
            + "after which the 90 % interval is half as wide as that of the car file's doubts."),
        Of("plan-headline", "RMS pitch, first second, over three speeds", In.Degrees, 3, d => d.Headline,
            "Root mean square pitch in the first second after the rear wheels have left, over the three speeds.") with
        {
            Name = "RMS pitch in the first second, over the three speeds",
        },
        Of("plan-scatter", "one pass scatters by", In.Percent, 1, d => d.Scatter,
            "Standard deviation of the logarithm of one pass's RMS pitch, from the road's roughness, the phone's noise, "
            + "the onset and the speed.") with
        {
            Name = "scatter of one pass",
        },
        Of("plan-change", "change of it to be shown", In.Percent, 1, d => d.Change is { } change ? Math.Exp(change) - 1.0 : double.NaN,
            "Change of that RMS pitch by the variant, mean over the three speeds, by nonlinear passes."),
        Of("plan-change-passes", $"passes before and after that show it, ≥ {TestDrive.Passes}", In.Plain, 0, d => d.PassesForChange ?? double.NaN,
            "Fewest passes in each state, a third at each speed and twelve at least, "
            + "that show the change in four of five test days, at a level of 10 %."),
        Of("plan-least-load", "least load of a tyre, of that at rest", In.Percent, 0, d => d.LeastLoad,
            "Least load of any tyre at the three speeds and 5 % above them, over what it bears at rest."),
        Of("plan-travel-left", "travel left to the nearest stop", In.Millimetres, 0, d => d.TravelLeft,
            "Least distance of any wheel from where it would touch a stop, at the three speeds and 5 % above them."),
    ];

    /// <summary>All that the table holds, for the glossary.</summary>
    public static IReadOnlyList<Measure> Measures { get; } = [.. All];

    /// <summary>The table, a column a hump.</summary>
    /// <param name="day">The day.</param>
    public static FactTable Of(TestDay day) =>
        new FactTable(
            FormattableString.Invariant($"Half-widths of 90 % intervals after {TestDrive.Passes} passes"), [.. day.Drives.Select(d => d.Hump.Name)])
            .Add(All, day.Drives);

    private static Measure<TestDrive> Half(string key, string what, CarNumber number) => Of(
        key, $"{what} to ±", In.Percent, 1, d => d.HalfWidths[number],
        $"Half-width of the 90 % interval of the {what} of the motion's equivalent linear car, expected after twelve passes.");

    private static Measure<TestDrive> Of(string key, string label, ShownUnit unit, int digits, Func<TestDrive, double> of, string says) =>
        new(key, label, unit, digits, of, says) { Page = Page };
}
