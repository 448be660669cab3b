using Heaveline.Answers;

namespace Heaveline.Reports;

/// <summary>What would make the first car pitch less over the road.</summary>
internal static class CurePart
{
    public static ReportPart Of(ReportWork work)
    {
        var heading = $"What would help: {work.Cars[0].Name}";
        if (work.Cure is not { } answer)
        {
            var why = work.Choices.Road.Event is null ? $"{work.Choices.Road.Caption} has no single bump." : work.Passes[0].Pass.OutcomeSentence;
            return new ReportPart { Heading = heading, Blocks = [Paragraph.Of($"Not asked: {why}")] };
        }

        string[] notes = [.. answer.Notes.Select(s => s.Text)];
        return new ReportPart
        {
            Heading = heading,
            Blocks =
            [
                Paragraph.Of($"{answer.Head[0].Text} {answer.Finding.Text}"),
                .. answer.Cures.Length > 0
                    ? new Block[]
                    {
                        Points.Of(answer.Told.Select((cure, k) =>
                            FormattableString.Invariant($"Cure {k + 1}: ") + string.Join(' ', cure.Select(s => s.Text)))),
                        Tabulated.Of(answer.ShortTables[0], $"Each cure beside the car as described, {work.Drive}"),
                    }
                    : [],
                .. answer.Cautions.Select(Caution.Of),
                .. notes.Length > 0 ? [Points.Of(notes)] : Array.Empty<Block>(),
                Caution.Of("Try cures off public roads."),
            ],
            Sources = [.. answer.Sources],
        };
    }
}
