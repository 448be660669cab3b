using Heaveline.Answers;

namespace Heaveline.Reports;

/// <summary>What the change from the first car to each other costs elsewhere; alone, where the car stands.</summary>
internal static class CostPart
{
    public static ReportPart Of(ReportWork work)
    {
        var answer = work.Cost;
        string[] notes = [.. answer.Notes.Concat(answer.Headlamp).Select(s => s.Text.Trim())];
        return new ReportPart
        {
            Heading = work.Several ? "The price of the change" : "Roll, dive, travel, headlamp",
            Blocks =
            [
                Illustration.Of(answer.Figure(answer.FigureIds[0])),
                .. answer.ShortTables.Select(t => Tabulated.Of(t, $"{t.Title}, {answer.Load}")),
                .. notes.Length > 0 ? [Points.Of(notes)] : Array.Empty<Block>(),
                .. answer.Reminders.SelectMany(r => new Block[]
                {
                    Paragraph.Of($"To check on the real car when {answer.Asked.Cars[0].Name} becomes {r.After.Name}:"),
                    Points.Of(r.Reminders.Select(s => s.Text)),
                }),
            ],
            Sources = [.. answer.Sources],
        };
    }
}
