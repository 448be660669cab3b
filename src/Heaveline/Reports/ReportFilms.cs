using System.Collections.Immutable;
using Heaveline.Films;
using Heaveline.Quantities;
using Heaveline.Studies;

namespace Heaveline.Reports;

/// <summary>The films of a report: of one car, or of the cars that passed one bump.</summary>
public sealed record ReportFilms
{
    private const int Most = 200;

    private ReportFilms()
    {
    }

    /// <summary>The films.</summary>
    public required ImmutableArray<KeptFilm> Films { get; init; }

    /// <summary>Films of the same car after a change; empty for none.</summary>
    public required ImmutableArray<KeptFilm> After { get; init; }

    /// <summary>Whether the first car of the report is the one that was filmed, over the road of the report.</summary>
    public required bool IsFirstCar { get; init; }

    /// <summary>
    /// The questions that they answer: each place where several cars were filmed, then each car that no such place holds, in the
    /// order of their films.
    /// </summary>
    public IEnumerable<FilmAsked> Questions
    {
        get
        {
            var places = Films.Where(film => film.Sheet.Place.Length > 0).GroupBy(film => film.Sheet.Place)
                .Where(place => place.Select(film => film.Sheet.Seen).Distinct().Count() > 1).ToArray();
            var ordered = places.SelectMany(place => place).ToHashSet();
            return
            [
                .. places.Select(place => new FilmAsked { Films = [.. place], Place = place.Key }),
                .. Films.Where(film => !ordered.Contains(film)).GroupBy(film => film.Sheet.Seen)
                    .Select(car => new FilmAsked { Films = [.. car], After = After }),
            ];
        }
    }

    /// <summary>Names in their sheets, which are left as they are in whatever units a report is read.</summary>
    public IEnumerable<string> Names =>
        Films.Concat(After).SelectMany(film => new[] { film.Sheet.Name, film.Sheet.Seen, film.Sheet.Place }).Where(name => name.Length > 0);

    /// <summary>The films of a report from their words; null: none was given, or one is objected to.</summary>
    /// <param name="reader">What was given.</param>
    internal static ReportFilms? Of(AskedReader reader)
    {
        var (films, after) = (Kept(reader, ReportStudy.Films), Kept(reader, ReportStudy.FilmsAfter));
        var isFirst = reader.IsTicked(ReportStudy.FilmedCar);
        if (reader.Given.All(ReportStudy.Films).Count is 0)
        {
            foreach (var choice in new[] { ReportStudy.FilmsAfter, ReportStudy.FilmedCar }.Where(choice => reader.Given.Of(choice) is not null))
            {
                reader.Object(choice.Name, $"{choice.Name}: it speaks of films; name them with film too, or leave it out.");
            }

            return null;
        }

        if (reader.IsRefused)
        {
            return null;
        }

        KeptFilm[] all = [.. films, .. after];
        var cars = all.Select(film => film.Sheet.Seen).Distinct().ToList();
        if (all.Index().FirstOrDefault(f => all.Take(f.Index).Any(one => one.Track.Frames.SequenceEqual(f.Item.Track.Frames))) is
            { Item: { } twice })
        {
            reader.Object(
                ReportStudy.Films.Name, $"the track of '{twice.Sheet.Name}' is given twice, frame by frame: one film tells nothing twice.",
                isUsage: false);
        }

        if (cars.Count > 1 && (after.Count > 0 || isFirst))
        {
            reader.Object(
                after.Count > 0 ? ReportStudy.FilmsAfter.Name : ReportStudy.FilmedCar.Name,
                $"the films show several cars ({string.Join(", ", cars)}): a change, or a car file beside them, is of one car's films.",
                isUsage: false);
        }

        return reader.IsRefused ? null : new ReportFilms { Films = [.. films], After = [.. after], IsFirstCar = isFirst };
    }

    // A report is made again from texts, to the last byte: a film that is followed anew is none.
    private static List<KeptFilm> Kept(AskedReader reader, Choice choice)
    {
        var names = reader.Given.All(choice);
        if (names.Count > Most || names.Distinct(StringComparer.Ordinal).Count() < names.Count)
        {
            reader.Object(
                choice.Name,
                names.Count > Most ? $"{choice.Name}: {Numeral.Of(names.Count, 0)} are too many; give at most {Numeral.Of(Most, 0)}."
                    : $"{choice.Name}: a film is given twice; give each once.");
            return [];
        }

        List<KeptFilm> kept = [];
        foreach (var (k, name) in reader.Texts(choice).Index())
        {
            if (reader.Of(choice, finder => finder.Film(name, null)) is not { } film)
            {
                continue;
            }

            kept.Add(film);
            if (reader.Inputs(choice)[k].Count < 2)
            {
                reader.Object(
                    choice.Name,
                    $"the track of '{film.Sheet.Name}' is not kept, and a report is made again from texts: keep it beside its sheet first, under the "
                    + $"sheet's name, with heaveline film {name} --track FILE.csv.",
                    isUsage: false);
            }
        }

        return kept;
    }
}
