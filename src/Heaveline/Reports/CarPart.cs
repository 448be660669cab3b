using Heaveline.Answers;
using Heaveline.Cars;
using Heaveline.Studies;

namespace Heaveline.Reports;

/// <summary>A car at every load state.</summary>
internal static class CarPart
{
    public static IEnumerable<ReportPart> Of(ReportWork work) => work.Cars.Select(car => Of(car.Car, work.Run));

    private static ReportPart Of(Car car, StudyRun run)
    {
        var answer = DescribeStudy.Run(DescribeAsked.Of(car) with { WithSlopes = true }, run);
        return new ReportPart
        {
            Heading = $"The car: {car.Name}",
            Blocks =
            [
                .. car.Note is { Length: > 0 } note ? [Paragraph.Of(note.Trim())] : Array.Empty<Block>(),
                Illustration.Of(answer.Figure(DescribeAnswer.LoadStates)),
                .. LoadsTable.Of(answer),
                Points.Of(answer.Sentences.Select(s => s.Text)),
            ],
            Sources = [.. answer.Sources],
        };
    }
}
