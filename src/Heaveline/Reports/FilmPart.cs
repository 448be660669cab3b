using Heaveline.Answers;
using Heaveline.Quantities;
using Heaveline.Studies;

namespace Heaveline.Reports;

/// <summary>What films from the roadside tell: each place where several cars were seen, then each other car.</summary>
internal static class FilmPart
{
    /// <summary>What whoever films and whoever publishes has to mind.</summary>
    public const string Publishing =
        "Nothing of a film itself stands in this report: what is drawn is drawn from tracks, which hold neither faces nor number plates. Whether "
        + "strangers' cars may be filmed, and what of it may be shown, the law of the place says; whoever is filmed close by is asked first.";

    public static IEnumerable<ReportPart> Of(ReportWork work)
    {
        var films = work.Choices.Films!;
        foreach (var question in films.Questions)
        {
            work.Run.Cancellation.ThrowIfCancellationRequested();
            yield return Of(work, question with
            {
                Car = films.IsFirstCar ? work.Cars[0] : null,
                Road = films.IsFirstCar ? work.Choices.Road : null,
            });
        }
    }

    private static ReportPart Of(ReportWork work, FilmAsked asked)
    {
        var heading = asked.Place is { } place ? $"Seen at {place}" : $"The film: {asked.Named}";
        FilmAnswer answer;
        try
        {
            answer = FilmStudy.Run(asked, work.Run);
        }
        catch (RefusedValueException refused)
        {
            return new ReportPart { Heading = heading, Blocks = [Caution.Of($"Nothing is told: {FirstLetter.Raised(refused.Message)}")] };
        }

        return new ReportPart
        {
            Heading = heading,
            Blocks =
            [
                Points.Of(answer.Head.Select(s => s.Text)),
                Points.Of(answer.Sentences.Select(s => s.Text)),
                .. answer.FigureIds.Select(id => Illustration.Of(answer.Figure(id) with { Caption = Drawn(answer) })),
                .. answer.Tables.Select(table => Tabulated.Of(table)),
                .. answer.IsList ? [] : new Block[] { Paragraph.Of(Filmed(work, answer)) },
                .. answer.Cautions.Select(Caution.Of),
                .. answer.Closing.Append(Publishing).Select(Caution.Of),
            ],
            Sources = [.. answer.Sources],
        };
    }

    // The finding stands above it already.
    private static string Drawn(FilmAnswer answer) => answer.IsList
        ? $"RMS pitch of the settling's first second for the lift of the wheels, cars seen at {answer.Asked.Place}, nine cases of ten."
        : $"The film of {answer.Asked.Named}, drawn from its track.";

    private static string Filmed(ReportWork work, FilmAnswer answer)
    {
        var scale = $"The scale is the wheelbase of the sheet, {Numeral.Of(answer.Car.Passes[answer.Shown].Wheelbase, 2)} m.";
        return answer.Forecast is { } beside
            ? $"{scale} That the car filmed is {beside.Car.Name}, {beside.Car.Load.Name}, and the bump {work.Choices.Road.Name}, is taken from "
                + "whoever made this report, not from the film."
            : $"{scale} No car file stands beside the film: which car file is its car's, if any, is not said.";
    }
}
