using Heaveline.Answers;
using Heaveline.Figures;
using Heaveline.Rides;
using Heaveline.Roads;
using Heaveline.Studies;

namespace Heaveline.Reports;

/// <summary>All cars on a random road of a class.</summary>
internal static class RidePart
{
    public static ReportPart Of(ReportWork work)
    {
        var spectrum = RoadSpectrum.Of(work.Choices.RoadClass);
        var cars = work.Models
            .Select(model => (model.Car.Name, (IReadOnlyList<RandomResponse>)[.. work.Choices.Speeds.Select(v => RandomResponse.Of(model, spectrum, v, cancellation: work.Cancellation))]))
            .ToList();
        var cautions = cars.SelectMany(c => c.Item2).SelectMany(r => r.Cautions.Append(r.OutcomeSentence).Where(t => t.Length > 0).Select(t => FormattableString.Invariant($"{r.Model.Car.Name} at {3.6 * r.Speed:0.#} km/h: {t}")));
        return new ReportPart
        {
            Heading = $"The ride on a road of {work.Choices.RoadClass}",
            Blocks =
            [
                Paragraph.Of($"A random road of {work.Choices.RoadClass} (ISO 8608, geometric mean), {work.Models[0].Load.Name}. {RideWords.Both}"),
                Illustration.Of(RideSweepFigure.Of(cars)),
                .. cars.Select(c => Tabulated.Of(RideTable.Of(c.Name, c.Item2, null), $"{c.Name} on a road of {work.Choices.RoadClass}, by speed")),
                .. cautions.Select(Caution.Of),
            ],
            Sources = [Sources.RoadClasses, Sources.Linearisation, Sources.Comfort, Sources.Weightings],
        };
    }
}
