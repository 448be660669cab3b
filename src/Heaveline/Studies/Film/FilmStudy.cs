using Heaveline.Films;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>What films of a car that passes a bump tell: does it heave or pitch, and which car stands between its wheels.</summary>
public static class FilmStudy
{
    internal static readonly Choice Films = new()
    {
        Name = "film",
        Kind = ChoiceKind.Film,
        Says = "Sheets of films (docs/film-file.md), their tracks beside them; or kept tracks or films with --marks. Several of one car are read "
            + "together.",
        IsArgument = true,
        Range = (1, 200),
    };

    private static readonly Choice Marks = new()
    {
        Name = "marks",
        Kind = ChoiceKind.Film,
        Says = "The sheet that says wheelbase and marks of a track or a film that is named itself.",
        HelpName = "SHEET",
    };

    internal static readonly Choice After = Films with
    {
        Name = "after",
        Says = "Films of the same car after a change. Repeat it.",
        HelpName = "FILM",
        IsArgument = false,
        IsRepeated = true,
    };

    internal static readonly Choice At = new()
    {
        Name = "at",
        Kind = ChoiceKind.Word,
        Says = "Put the cars that were filmed at this place in order, in the words of their sheets.",
        HelpName = "PLACE",
    };

    internal static readonly Choice Car = Choices.Car with
    {
        Name = "car",
        Says = "A car file to stand beside the film.",
        HelpName = "CAR",
        IsArgument = false,
        Range = (0, 1),
    };

    internal static readonly Choice Over = Choices.Road with
    {
        Name = "over",
        Says = "The bump that was filmed: --car is driven over it at the film's speed.",
        Usual = null,
    };

    /// <summary>The question as a command offers it.</summary>
    public static Question<FilmAsked, FilmAnswer> Question { get; } = new()
    {
        Word = "film",
        Says =
            """
            Say what films of a car that passes a bump tell, taken from the roadside: does it heave or pitch, how long, about which point, and
            which car stands between its wheels, with intervals; or what the films cannot tell, and which would. The wheels are seen, so neither
            the bump nor the tyres need be known; the wheelbase is the ruler.

            Examples:
              heaveline film examples/films/grey-saloon-25.yaml
              heaveline film examples/films/grey-saloon-25.yaml --car examples/garage/fern-saloon.yaml --over village-hump --figure film.pdf
              heaveline film examples/films/grey-saloon-25.yaml examples/films/red-saloon-25.yaml --at "school hump"
            """,
        Choices = [Films, Marks, After, At, Car, Choices.Load, Over],
        CsvOption = "track",
        CsvEnding = ".csv",
        CsvSays = "Write the track of the first film to FILE; beside its sheet under the same name it is read from then on.",
        Reads = Read,
        Answers = Run,
    };

    /// <summary>Reads the films.</summary>
    /// <param name="asked">What is asked.</param>
    /// <param name="run">How it is run; null: plainly.</param>
    /// <exception cref="RefusedValueException">A film tells nothing, or the car cannot stand so.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static FilmAnswer Run(FilmAsked asked, StudyRun? run = null)
    {
        ArgumentNullException.ThrowIfNull(asked);
        run ??= StudyRun.Plain;
        SeenCar Of(IReadOnlyList<KeptFilm> films) => SeenCar.Of(
            films[0].Sheet.Seen, films[0].Sheet.Place, [.. films.Select(f => (f.Track, f.Sheet.Given))], run.Cancellation);
        var (cars, leftOut) = (new List<SeenCar>(), new List<string>());
        var groups = asked.Place is null ? [asked.Films.ToArray()] : asked.Films.GroupBy(f => f.Sheet.Seen).Select(g => g.ToArray()).ToArray();
        foreach (var (k, group) in groups.Index())
        {
            try
            {
                cars.Add(Of(group));
            }
            catch (RefusedValueException refused) when (asked.Place is not null)
            {
                leftOut.Add($"{group[0].Sheet.Seen}: {refused.Message}");
            }

            run.Progress?.Report((k + 1.0) / (groups.Length + 1.0));
        }

        if (cars.Count == 0)
        {
            throw new RefusedValueException("films of the place", "none that tells anything", "one at least", string.Join(' ', leftOut));
        }

        var after = asked.After.IsEmpty ? null : Of(asked.After);
        var forecast = asked.Car is { } car && asked.Place is null
            ? FilmForecast.Of(car, asked.Road, cars[0].Passes[FilmAnswer.ShownOf(cars[0])], run.Cancellation) : null;
        run.Progress?.Report(1.0);
        return new FilmAnswer { Asked = asked, Cars = SeenList.Of(cars), After = after, Forecast = forecast, LeftOut = [.. leftOut] };
    }

    private static FilmAsked? Read(AskedReader reader)
    {
        var marks = reader.Given.Of(Marks);
        KeptFilm[] Kept(Choice choice) => [.. reader.Texts(choice).Select(name => reader.Of(choice, f => f.Film(name, marks))).OfType<KeptFilm>()];
        var (films, after) = (Kept(Films), Kept(After));
        var place = reader.Text(At);
        var car = reader.Given.Of(Car) is null ? null : reader.Car(Car, Choices.Load);
        var road = reader.Given.Of(Over) is null ? null : reader.Road(Over);
        if (reader.Given.Of(Over) is not null && reader.Given.Of(Car) is null)
        {
            reader.Object(Over.Name, "--over is the bump that --car is driven over: give that too, or leave it out.");
        }

        if (place is not null && (reader.Given.Of(After) is not null || reader.Given.Of(Car) is not null))
        {
            reader.Object(At.Name, "--at puts cars in order: leave --after and --car out, or ask about one car.");
        }

        var there = place is null ? films : films.Where(f => f.Sheet.Place == place).ToArray();
        if (!reader.IsRefused && there.Length == 0)
        {
            var places = films.Select(f => f.Sheet.Place).Where(p => p.Length > 0).Distinct().ToList();
            reader.Object(
                At.Name,
                $"no film was taken at '{place}'; " + (places.Count == 0 ? "no sheet names a place." : $"there are {string.Join(", ", places)}."));
        }

        if (!reader.IsRefused && place is null && films.Concat(after).Select(f => f.Sheet.Seen).Distinct().Count() > 1)
        {
            reader.Object(
                Films.Name,
                $"the films show several cars ({string.Join(", ", films.Concat(after).Select(f => f.Sheet.Seen).Distinct())}): ask about one, "
                + "or put them in order with --at.");
        }

        KeptFilm[] all = [.. there, .. after];
        if (!reader.IsRefused && all.Index().FirstOrDefault(f => all.Take(f.Index).Any(one => one.Track.Frames.SequenceEqual(f.Item.Track.Frames)))
            is { Item: not null } twice)
        {
            reader.Object(Films.Name, $"the track of '{twice.Item.Sheet.Name}' is given twice, frame by frame: one film tells nothing twice.");
        }

        return reader.IsRefused
            ? null
            : new FilmAsked { Films = [.. there], After = [.. after], Place = place, Car = car, Road = road };
    }
}
