using Heaveline.Answers;
using Heaveline.Causes;
using Heaveline.Figures;
using Heaveline.Passes;
using Heaveline.Studies;

namespace Heaveline.Reports;

/// <summary>Why the first car pitches.</summary>
internal static class WhyPart
{
    public static ReportPart Of(ReportWork work)
    {
        var model = work.Models[0];
        var heading = $"Why it pitches: {model.Car.Name}";
        if (work.Passes[0].Pass is { Outcome: not PassOutcome.Completed } broken)
        {
            return new ReportPart { Heading = heading, Blocks = [Paragraph.Of($"Not asked: the pass did not run to its end. {broken.OutcomeSentence}")] };
        }

        var why = Why.Of(model, work.Choices.Road, work.Choices.Speed, degree: work.Choices.Degree, cancellation: work.Cancellation);
        return new ReportPart
        {
            Heading = heading,
            Blocks =
            [
                Paragraph.Of($"{model.Car.Name}, {model.Load.Name}, {work.Drive}. {WhySentences.Method(why)}"),
                Illustration.Of(WhyFigure.Of(why)),
                .. Ranking(why.Settling, withTests: true),
                .. Ranking(why.Hit, withTests: false),
                Caution.Of("Road tests belong off public roads."),
            ],
            Sources = [Sources.Steps, Sources.Parts, Sources.Shares],
        };
    }

    private static IEnumerable<Block> Ranking(WhyRanking ranking, bool withTests)
    {
        yield return Paragraph.Of(WhySentences.Opening(ranking));
        string[] causes = [.. WhySentences.Causes(ranking).Select(c => withTests && c.Proof is { } proof ? $"{c.Sentence} To prove it: {proof}" : c.Sentence)];
        if (causes.Length > 0)
        {
            yield return Points.Of(causes);
        }

        if (WhySentences.Rest(ranking) is { } rest)
        {
            yield return Paragraph.Of(rest);
        }
    }
}
