using Heaveline.Answers;
using Heaveline.Studies;

namespace Heaveline.Reports;

/// <summary>The modes of each car under the load.</summary>
internal static class ModesPart
{
    public static IEnumerable<ReportPart> Of(ReportWork work) => work.Cars.Select(car => Of(car, work.Run));

    private static ReportPart Of(LoadedCar car, StudyRun run)
    {
        var answer = DescribeStudy.Run(new DescribeAsked { Car = car.Car, Loads = [car.Load], WithModes = true }, run);
        return new ReportPart
        {
            Heading = $"Modes: {car.Name}, {car.Load.Name}",
            Blocks =
            [
                Illustration.Of(answer.Figure(DescribeAnswer.Modes)),
                Tabulated.Turned(answer.ModesTable, "mode", $"{car.Name}, {car.Load.Name}: damped modes of the whole model, wheels and tyres in it"),
            ],
            Sources = [Sources.Axes, Sources.Modes],
        };
    }
}
