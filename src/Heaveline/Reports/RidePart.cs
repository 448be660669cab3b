using Heaveline.Answers;
using Heaveline.Quantities;
using Heaveline.Studies;

namespace Heaveline.Reports;

/// <summary>All cars on a random road of a class.</summary>
internal static class RidePart
{
    public static ReportPart Of(ReportWork work)
    {
        var answer = RideStudy.Run(
            new RideAsked { Cars = work.Cars, Road = NamedSpectrum.Of(work.Choices.RoadClass), Speeds = work.Choices.Speeds }, work.Run);
        var road = answer.Asked.Road.Name;
        if (answer.Failure is { } failure)
        {
            return new ReportPart { Heading = $"The ride on a road of {road}", Blocks = [Caution.Of(FirstLetter.Raised(failure))] };
        }

        return new ReportPart
        {
            Heading = $"The ride on a road of {road}",
            Blocks =
            [
                Paragraph.Of($"A random road of {road} (ISO 8608, geometric mean), {LoadedCar.LoadsOf(work.Cars)}. {RideWords.Both}"),
                Illustration.Of(answer.Figure(RideAnswer.Sweep)),
                .. answer.Cars.Select(c => Tabulated.Of(answer.Table(c), $"{c.Name} on a road of {road}, by speed")),
                .. answer.Cautions.Select(Caution.Of),
            ],
            Sources = [.. answer.Sources],
        };
    }
}
