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
                .. answer.ModesTables.Select((table, k) => Tabulated.Turned(
                    table,
                    "mode",
                    k == 0
                        ? $"{car.Name}, {car.Load.Name}: damped modes of the whole model, wheels and tyres in it"
                        : $"{car.Name}, {car.Load.Name}: motions of the whole model that creep back without swinging")),
            ],
            Sources = [Sources.Axes, Sources.Modes],
        };
    }
}
