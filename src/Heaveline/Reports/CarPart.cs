using Heaveline.Answers;
using Heaveline.Cars;
using Heaveline.Figures;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Studies;

namespace Heaveline.Reports;

/// <summary>A car at every load state.</summary>
internal static class CarPart
{
    public static IEnumerable<ReportPart> Of(ReportWork work) => work.Choices.Cars.Select(Of);

    private static ReportPart Of(Car car)
    {
        List<RideModel> models = [RideModel.Of(car, LoadState.Reference), .. car.LoadStates.Select(l => RideModel.Of(car, l))];
        var blocks = new List<Block>();
        if (car.Note is { Length: > 0 } note)
        {
            blocks.Add(Paragraph.Of(note.Trim()));
        }

        blocks.Add(Illustration.Of(LoadStatesFigure.Of(models)));
        blocks.AddRange(LoadsTable.Of([.. models.Select(m => new CarAtRest(m))]));
        blocks.Add(Points.Of(DescribeNotes.Of(models)));
        return new ReportPart
        {
            Heading = $"The car: {car.Name}",
            Blocks = [.. blocks],
            Sources = [Sources.Axes, Sources.Terms, Sources.Modes, Sources.Doubts],
        };
    }
}
