using Heaveline.Answers;
using Heaveline.Studies;

namespace Heaveline.Reports;

/// <summary>Why the first car pitches.</summary>
internal static class WhyPart
{
    public static ReportPart Of(ReportWork work)
    {
        var car = work.Cars[0];
        var heading = $"Why it pitches: {car.Name}";
        if (work.Why is not { } answer)
        {
            return new ReportPart
            {
                Heading = heading,
                Blocks = [Paragraph.Of($"Not asked: the pass did not run to its end. {work.Passes[0].Pass.OutcomeSentence}")],
            };
        }

        return new ReportPart
        {
            Heading = heading,
            Blocks =
            [
                Paragraph.Of(string.Join(' ', answer.Told.Prepend(answer.Head[0]).Select(s => s.Text))),
                Illustration.Of(answer.Figure(WhyAnswer.Shares)),
                .. Ranking(answer.Settling),
                .. Ranking(answer.Hit),
                Paragraph.Of(answer.Assumed.Text),
                Caution.Of("Road tests belong off public roads."),
            ],
            Sources = [.. answer.Sources],
        };
    }

    private static IEnumerable<Block> Ranking(RankingWords words)
    {
        yield return Paragraph.Of(words.Opening.Text);
        if (words.Causes.Count > 0)
        {
            yield return Points.Of(words.Causes.Select(c => c.Proof is { } proof ? $"{c.Cause.Text} {proof.Text}" : c.Cause.Text));
        }

        if (words.Rest is { } rest)
        {
            yield return Paragraph.Of(rest.Text);
        }
    }
}
