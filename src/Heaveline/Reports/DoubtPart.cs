using Heaveline.Answers;
using Heaveline.Passes;
using Heaveline.Studies;

namespace Heaveline.Reports;

/// <summary>How sure the first car's numbers are.</summary>
internal static class DoubtPart
{
    public static ReportPart Of(ReportWork work)
    {
        var choices = work.Choices;
        var asked = new DoubtAsked
        {
            Car = work.Cars[0],
            Road = work.Passes[0].Pass.Outcome == PassOutcome.Completed ? choices.Road : null,
            Speed = choices.Speed,
            Draws = choices.Draws,
            Seed = choices.Seed,
        };
        var heading = $"How sure the numbers are: {asked.Car.Name}";
        if (!asked.AreStated)
        {
            return new ReportPart { Heading = heading, Blocks = [Paragraph.Of(DoubtAnswer.NotStated.Text)] };
        }

        var answer = DoubtStudy.Run(asked, work.Run);
        var load = asked.Car.Load.Name;
        return new ReportPart
        {
            Heading = heading,
            Blocks =
            [
                Paragraph.Of(FormattableString.Invariant(
                    $"{asked.Draws} cars drawn within the doubts of the car file, seed {asked.Seed}; {load}, {work.Drive}.")),
                Illustration.Of(answer.Figure(DoubtAnswer.Bands)),
                Tabulated.Of(answer.Tables[0], $"{asked.Car.Name}, {load}: what the doubts leave possible"),
                Points.Of(answer.Sentences.Select(s => s.Text)),
            ],
            Sources = [.. answer.Sources],
        };
    }
}
