using Heaveline.Answers;
using Heaveline.Doubts;
using Heaveline.Figures;
using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Studies;

namespace Heaveline.Reports;

/// <summary>How sure the first car's numbers are.</summary>
internal static class DoubtPart
{
    public static ReportPart Of(ReportWork work)
    {
        var choices = work.Choices;
        var (car, load) = (choices.Cars[0], work.Models[0].Load);
        var heading = $"How sure the numbers are: {car.Name}";
        if (!CarDoubts.Of(car, load).AreStated)
        {
            return new ReportPart { Heading = heading, Blocks = [Paragraph.Of("The car file states no doubts: write them behind the values (24.5 N/mm ± 5 %).")] };
        }

        List<DoubtStudy> studies = [DoubtStudy.Of(car, load, RestCatalogue.For(MeasureUse.Doubt), choices.Draws, choices.Seed, choices.Degree, cancellation: work.Cancellation)];
        if (work.Passes[0].Pass.Outcome == PassOutcome.Completed)
        {
            var measures = PassCatalogue.For(work.Models[0], choices.Road, MeasureUse.Doubt);
            studies.Add(DoubtStudy.OfPasses(car, load, choices.Road, choices.Speed, measures, choices.Draws, choices.Seed, degree: choices.Degree, cancellation: work.Cancellation));
        }

        List<DoubtResult> results = [.. studies.SelectMany(s => s.Results).Select(r => r.Shown()).Where(r => double.IsFinite(r.Stated))];
        return new ReportPart
        {
            Heading = heading,
            Blocks =
            [
                Paragraph.Of(FormattableString.Invariant($"{choices.Draws} cars drawn within the doubts of the car file, seed {choices.Seed}; {load.Name}, {work.Drive}.")),
                Illustration.Of(DoubtFigure.Of(car.Name, results, choices.Draws, choices.Seed)),
                Tabulated.Of(DrawnTable.Of(results), $"{car.Name}, {load.Name}: what the doubts leave possible"),
                Points.Of(DrawnTable.Sentences(studies, results)),
            ],
            Sources = [Sources.Draws, Sources.Steps, Sources.Parts],
        };
    }
}
