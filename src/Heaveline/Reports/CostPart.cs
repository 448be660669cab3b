using Heaveline.Answers;
using Heaveline.Doubts;
using Heaveline.Measures;
using Heaveline.Studies;

namespace Heaveline.Reports;

/// <summary>What the change from the first car to each other costs elsewhere; alone, where the car stands.</summary>
internal static class CostPart
{
    public static ReportPart Of(ReportWork work)
    {
        List<CarAtRest> rests = [.. work.Models.Select(m => new CarAtRest(m))];
        List<SideEffects> effects = [.. rests.Select(r => r.SideEffects)];
        var cars = work.Choices.Cars;
        var measures = CostTable.Measures(rests);
        var study = Study(work, measures);
        string[] notes =
        [
            .. study is null ? [] : new[] { DoubtTables.Words(study, work.Several) },
            .. effects.SelectMany(e => e.Notes).Distinct(),
            .. LampWords.Of(effects[^1]).Select(line => line.Trim()),
        ];
        return new ReportPart
        {
            Heading = work.Several ? "The price of the change" : "Roll, dive, travel, headlamp",
            Blocks =
            [
                Tabulated.Of(CostTable.Of(work.Names, rests), $"Side effects, {work.Models[0].Load.Name}"),
                .. study is null ? [] : DoubtTables.Of("Side effects", work.Names, measures, study).Select(t => Tabulated.Of(t)),
                .. notes.Length > 0 ? [Points.Of(notes)] : Array.Empty<Block>(),
                .. Enumerable.Range(1, cars.Length - 1).SelectMany(k => Reminders(cars[0], cars[k], SideEffectsChange.Between(effects[0], effects[k]))),
            ],
            Sources = [Sources.Axes, Sources.SideEffects, .. study is null ? [] : new[] { Sources.Draws }],
        };
    }

    private static JointStudy? Study(ReportWork work, IReadOnlyList<Measure<CarAtRest>> outputs)
    {
        CarDoubts[] doubts = [.. work.Models.Select(m => CarDoubts.Of(m.Car, m.Load))];
        var choices = work.Choices;
        return doubts.Any(d => d.AreStated) ? JointStudy.Of(doubts, outputs, choices.Draws, choices.Seed, choices.Degree, cancellation: work.Cancellation) : null;
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
