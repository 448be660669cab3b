using Heaveline.Answers;
using Heaveline.Studies;

namespace Heaveline.Reports;

/// <summary>Whether a change worked: the drive before it, the drive after it.</summary>
internal static class ProvePart
{
    public static ReportPart Of(ReportWork work)
    {
        var (before, after) = work.Choices.Pair!.Value;
        var answer = work.Proof;
        // How to judge a second time is for who drives, not for who reads.
        string[] said = [.. answer.Sentences.Where(s => s.Id != "looks").Select(s => s.Text)];
        return new ReportPart
        {
            Heading = $"Before and after: {before.Name}, then {after.Name}",
            Blocks =
            [
                .. DriveCautions.OfStrangers(work.Choices.Cars, before, after)
                    .Concat(answer.Asked.Contradicted).Select(Caution.Of),
                .. after.Change.Length > 0
                    ? [Paragraph.Of($"What was changed, as it is written down: \"{after.Change.Trim()}\".")] : Array.Empty<Block>(),
                Points.Of(answer.Head.Select(s => s.Text)),
                .. answer.Opening.Select(Caution.Of),
                Illustration.Of(answer.Figure(ProveAnswer.Dots)),
                .. answer.Tables.Select(table => Tabulated.Of(table)),
                .. said.Length > 0 ? [Points.Of(said)] : Array.Empty<Block>(),
                .. answer.FigureIds.Contains(ProveAnswer.Foreseen)
                    ? [Illustration.Of(answer.Figure(ProveAnswer.Foreseen))] : Array.Empty<Block>(),
                Illustration.Of(answer.Figure(ProveAnswer.Power)),
                .. answer.Cautions.Except(answer.Opening).Except(answer.Asked.Contradicted).Select(Caution.Of),
                .. answer.Closing.Select(Caution.Of),
            ],
            Sources = [.. answer.Sources],
        };
    }
}
