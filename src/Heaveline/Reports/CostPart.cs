using Heaveline.Insight;
using Heaveline.Measures;

namespace Heaveline.Reports;

/// <summary>What the change from the first car to each other costs elsewhere; alone, where the car stands.</summary>
internal static class CostPart
{
    public static ReportPart Of(ReportWork work)
    {
        List<SideEffects> effects = [.. work.Models.Select(SideEffects.Of)];
        var cars = work.Choices.Cars;
        string[] notes = [.. effects.SelectMany(e => e.Notes).Distinct(), .. LampWords.Of(effects[^1]).Select(line => line.Trim())];
        return new ReportPart
        {
            Heading = work.Several ? "The price of the change" : "Roll, dive, travel, headlamp",
            Blocks =
            [
                Tabulated.Of(CostTable.Of(work.Names, effects), $"Side effects, {work.Models[0].Load.Name}"),
                .. notes.Length > 0 ? [Points.Of(notes)] : Array.Empty<Block>(),
                .. Enumerable.Range(1, cars.Length - 1).SelectMany(k => Reminders(cars[0], cars[k], SideEffectsChange.Between(effects[0], effects[k]))),
            ],
            Sources = [Sources.Axes, Sources.SideEffects],
        };
    }

    private static IEnumerable<Block> Reminders(Heaveline.Cars.Car before, Heaveline.Cars.Car after, SideEffectsChange change)
    {
        var reminders = ChangeReminders.Of(before, after, change);
        if (reminders.Count > 0)
        {
            yield return Paragraph.Of($"To check on the real car when {before.Name} becomes {after.Name}:");
            yield return Points.Of(reminders);
        }
    }
}
