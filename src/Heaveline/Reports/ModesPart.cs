using Heaveline.Answers;
using Heaveline.Figures;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Studies;

namespace Heaveline.Reports;

/// <summary>The modes of each car under the load.</summary>
internal static class ModesPart
{
    public static IEnumerable<ReportPart> Of(ReportWork work) => work.Models.Select(Of);

    private static ReportPart Of(RideModel model) => new()
    {
        Heading = $"Modes: {model.Car.Name}, {model.Load.Name}",
        Blocks =
        [
            Illustration.Of(ModesFigure.Of(model, BodyModes.Of(model))),
            Tabulated.Turned(ModesTable.Of(model), "mode", $"{model.Car.Name}, {model.Load.Name}: damped modes of the whole model, wheels and tyres in it"),
        ],
        Sources = [Sources.Axes, Sources.Modes],
    };
}
