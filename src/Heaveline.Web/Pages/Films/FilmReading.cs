using Heaveline.Files.Garages;
using Heaveline.Studies;
using Heaveline.Web.Serving;
using Heaveline.Web.Studying;

namespace Heaveline.Web.Pages.Films;

/// <summary>What the page of the film asks.</summary>
internal sealed record FilmReading
{
    /// <summary>The film, by its file in the garage, or one that no file describes yet.</summary>
    public static Choice Film { get; } = new()
    {
        Name = "film", Kind = ChoiceKind.Film, Says = "The film, by its file in the garage; the first one when none is named.",
    };

    /// <summary>Other films of the same car, read together with it.</summary>
    public static Choice With { get; } = new()
    {
        Name = "with", Kind = ChoiceKind.Film, Says = "Another film of the same car, read together with it.", IsRepeated = true,
    };

    /// <summary>Films of the same car after a change.</summary>
    public static Choice After { get; } = new()
    {
        Name = "after", Kind = ChoiceKind.Film, Says = "A film of the same car after a change.", IsRepeated = true,
    };

    /// <summary>The car file beside it.</summary>
    public static Choice Against { get; } = new() { Name = "against", Kind = ChoiceKind.Car, Says = "A car file to stand beside the film." };

    /// <summary>Its load.</summary>
    public static Choice Aboard { get; } = new() { Name = "aboard", Kind = ChoiceKind.Load, Says = "How that car is laden." };

    /// <summary>The bump that was filmed.</summary>
    public static Choice Hump { get; } = new()
    {
        Name = "hump", Kind = ChoiceKind.Road, Says = "The bump that was filmed: that car is driven over it at the film's speed.",
    };

    /// <summary>Whether a film that no file describes is of an oncoming headlamp.</summary>
    public static Choice OfLamp { get; } = new() { Name = "lamp", Kind = ChoiceKind.Tick, Says = "The film is of an oncoming headlamp at night." };

    /// <summary>When the rear wheels left the bump, in such a film.</summary>
    public static Choice Left { get; } = FlashStudy.From with { Name = "left" };

    /// <summary>All of them.</summary>
    public static IReadOnlyList<Choice> All { get; } = [Film, With, After, Against, Aboard, Hump, OfLamp, Left];

    /// <summary>What is chosen; null in a garage without any.</summary>
    public string? Name { get; private init; }

    /// <summary>The film as it lies in the garage; null where none is described under that name.</summary>
    public GarageFilm? Kept { get; private init; }

    /// <summary>Whether it is a film that no file describes yet.</summary>
    public bool IsUndescribed { get; private init; }

    /// <summary>The film as one of a headlamp at night; null where it is none.</summary>
    public GarageLamp? Lamp { get; private init; }

    /// <summary>What is asked of that lamp; nothing where none was followed.</summary>
    public required AskedReading<FlashAsked> AskedOfLamp { get; init; }

    /// <summary>Why there is none; blank where there is.</summary>
    public string Problem { get; private init; } = "";

    /// <summary>Films that no file describes.</summary>
    public IReadOnlyList<string> Undescribed { get; private init; } = [];

    /// <summary>The other films of the same car, each with its title, that have a track.</summary>
    public IReadOnlyList<(string Name, string Words)> Others { get; private init; } = [];

    /// <summary>What the study is asked of this film.</summary>
    public required AskedReading<FilmAsked> Asked { get; init; }

    /// <summary>What it is asked of all cars filmed at the same place; nothing where there is one car alone.</summary>
    public required AskedReading<FilmAsked> AtPlace { get; init; }

    /// <summary>Reads what is chosen.</summary>
    public static FilmReading Of(PageChoices chosen, GarageView garage)
    {
        var undescribed = GarageFilm.Undescribed(garage.Garage);
        var name = chosen.Typed.Of(Film) ?? garage.FilmTitles.Select(film => film.Name).Concat(undescribed).FirstOrDefault();
        if (name is null || undescribed.Contains(name))
        {
            var none = Nothing(name is null ? "There is no film in this garage yet." : "Nothing is written down about this film yet.", name);
            var lamp = name is null ? null : GarageLamp.Of(garage.Garage, name);
            return new FilmReading
            {
                Name = name,
                IsUndescribed = name is not null,
                Undescribed = undescribed,
                Asked = none,
                AtPlace = none,
                Lamp = lamp is { HasTrack: true } || chosen.Typed.Of(OfLamp) == Choice.Yes ? lamp : null,
                AskedOfLamp = lamp is { HasTrack: true } ? FlashStudy.Question.Read(
                    new Given([(FlashStudy.Lamp.Name, name), (FlashStudy.From.Name, chosen.Typed.Of(Left))]), garage) : NoLamp,
            };
        }

        var (film, problem) = GarageFilm.Of(garage.Garage, name);
        if (film is null)
        {
            return new FilmReading
            {
                Name = name, Undescribed = undescribed, Problem = problem, Asked = Nothing(problem, name), AtPlace = Nothing(problem, name),
                AskedOfLamp = NoLamp,
            };
        }

        GarageFilm[] tracked =
        [
            .. garage.FilmTitles.Where(one => one.Name != name).Select(one => GarageFilm.Of(garage.Garage, one.Name).Film).OfType<GarageFilm>()
                .Where(one => one.HasTrack),
        ];
        var titles = garage.FilmTitles.ToDictionary(one => one.Name, one => one.Words, StringComparer.Ordinal);
        return new FilmReading
        {
            Name = name,
            Kept = film,
            Undescribed = undescribed,
            Others = [.. tracked.Where(one => one.Sheet.Seen == film.Sheet.Seen).Select(one => (one.Name, titles[one.Name]))],
            Asked = film.HasTrack ? FilmStudy.Question.Read(GivenOf(chosen, name), garage) : Nothing("The car has not been followed yet.", name),
            AtPlace = PlaceOf(film, tracked, garage),
            AskedOfLamp = NoLamp,
        };
    }

    private static Given GivenOf(PageChoices chosen, string name)
    {
        var typed = chosen.Typed;
        var words = new List<(string, string?)> { (FilmStudy.Films.Name, name) };
        words.AddRange(typed.All(With).Where(one => one != name).Select(one => (FilmStudy.Films.Name, (string?)one)));
        words.AddRange(typed.All(After).Select(one => (FilmStudy.After.Name, (string?)one)));
        if (typed.Of(Against) is { } car)
        {
            words.Add((FilmStudy.Car.Name, car));
            words.Add((Choices.Load.Name, typed.Of(Aboard)));
            words.Add((FilmStudy.Over.Name, typed.Of(Hump)));
        }

        return new Given(words);
    }

    // An order needs two cars.
    private static AskedReading<FilmAsked> PlaceOf(GarageFilm film, GarageFilm[] others, GarageView garage)
    {
        GarageFilm[] there =
        [
            .. others.Append(film).Where(one => one.HasTrack && one.Sheet.Place.Length > 0 && one.Sheet.Place == film.Sheet.Place)
                .OrderBy(one => one.Name, StringComparer.Ordinal),
        ];
        return there.Select(one => one.Sheet.Seen).Distinct().Count() < 2
            ? Nothing("One car alone was filmed there.", film.Name)
            : FilmStudy.Question.Read(
                new Given([.. there.Select(one => (FilmStudy.Films.Name, (string?)one.Name)), (FilmStudy.At.Name, film.Sheet.Place)]), garage);
    }

    private static AskedReading<FlashAsked> NoLamp { get; } =
        new() { Asked = null, Objections = [new Objection(OfLamp.Name, "No lamp has been followed.", false) { IsMissing = true }], Key = "" };

    private static AskedReading<FilmAsked> Nothing(string why, string? name) =>
        new() { Asked = null, Objections = [new Objection(Film.Name, why, false) { IsMissing = true }], Key = $"{name}: {why}" };
}
