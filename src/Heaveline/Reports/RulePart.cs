using Heaveline.Answers;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Studies;

namespace Heaveline.Reports;

/// <summary>A rule of the trade as a map over speed, for the first car.</summary>
internal static class RulePart
{
    public static ReportPart Of(ReportWork work)
    {
        var (model, road, rule) = (work.Cars[0].Model, work.Choices.Road, work.Choices.Rule);
        var claim = rule.Axis(model, 2).Claim;
        var heading = $"The rule: is it true that {FirstLetter.Lowered(claim).TrimEnd('.')}?";
        if (RuleAsked.NoBump(road) is { } noBump)
        {
            return new ReportPart { Heading = heading, Blocks = [Paragraph.Of(noBump)] };
        }

        try
        {
            var asked = new RuleAsked { Car = work.Cars[0], Road = road, Rule = rule, MapAlone = true };
            return Of(heading, RuleStudy.Run(asked, work.Run));
        }
        catch (RunFailedException failure)
        {
            return new ReportPart { Heading = heading, Blocks = [Paragraph.Of(failure.Message)] };
        }
    }

    private static ReportPart Of(string heading, RuleAnswer answer) => new()
    {
        Heading = heading,
        Blocks =
        [
            Paragraph.Of(string.Join(' ', answer.Head.Select(s => s.Text))),
            Illustration.Of(answer.Figure(RuleAnswer.WithEveryLoad)),
            Points.Of(answer.SentencesForReaders.Select(s => s.Text)),
            Tabulated.Of(answer.Grid, $"The measure over that of {answer.Map.Axis.Against}, by speed and {answer.Map.Axis.ShortName}"),
            .. answer.Absolute is { } itself
                ? new[] { Tabulated.Of(itself, $"{answer.Map.Measure.Name} itself, where {answer.Map.Axis.Plain.BottomsOut}") } : [],
        ],
        Sources = [.. answer.Sources],
    };
}
