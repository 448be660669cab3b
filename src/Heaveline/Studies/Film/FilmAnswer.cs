using System.Collections.Immutable;
using System.Text;
using System.Text.Json.Nodes;
using Heaveline.Answers;
using Heaveline.Figures;
using Heaveline.Films;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>What films of passing cars tell.</summary>
public sealed record FilmAnswer : Answer
{
    /// <summary>Figure of one car's film.</summary>
    public const string Seen = "film";

    /// <summary>Figure of the cars at a place.</summary>
    public const string List = "list";

    /// <summary>What was asked.</summary>
    public required FilmAsked Asked { get; init; }

    /// <summary>The cars: one, or all at the place.</summary>
    public required SeenList Cars { get; init; }

    /// <summary>The car that is asked about, or the one that pitches least.</summary>
    public SeenCar Car => Cars.Cars[0];

    /// <summary>
    /// The film whose pass is told: one that shows the settling's first second, the slowest of them, in whichever order they were given.
    /// </summary>
    public int Shown => ShownOf(Car);

    /// <summary>The same car after the change; null for none.</summary>
    public SeenCar? After { get; init; }

    /// <summary>What changed; null for none.</summary>
    public FilmChange? Change => After is null ? null : FilmChange.Of(Car, After);

    /// <summary>The car file beside the film; null for none.</summary>
    public FilmForecast? Forecast { get; init; }

    /// <summary>Films of the place that tell nothing, with why.</summary>
    public ImmutableArray<string> LeftOut { get; init => field = value.IsDefault ? [] : value; } = [];

    /// <summary>Whether cars are put in order.</summary>
    public bool IsList => Asked.Place is not null;

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Head => [new("film", IsList ? SeenListWords.Head(this) : FilmWords.Head(this))];

    /// <inheritdoc/>
    public override IReadOnlyList<FactTable> Tables => IsList ? [FilmTable.List(Cars)] : FilmTable.Of(this);

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Sentences => [.. IsList ? SeenListWords.Of(this) : FilmWords.Of(this)];

    /// <inheritdoc/>
    public override IReadOnlyList<string> Cautions => [.. IsList ? SeenListWords.Cautions(this) : FilmWords.Cautions(this)];

    /// <inheritdoc/>
    public override IReadOnlyList<string> Closing => [FilmWords.Meaning, FilmWords.Safety];

    /// <inheritdoc/>
    public override IReadOnlyList<Source> Sources => [Answers.Sources.Axes, Answers.Sources.Doubts];

    /// <inheritdoc/>
    public override IReadOnlyList<string> FigureIds => IsList ? [List] : [Seen];

    /// <inheritdoc/>
    public override JsonObject Facts => new()
    {
        ["verdict"] = IsList ? Cars.NotTold.Any() ? "not-all-told" : "told" : Car.Car.IsBelieved && !Car.MayBeSlowMotion ? "said" : "cannot-say",
        ["place"] = Car.Place,
        ["cars"] = new JsonArray([.. Cars.Cars.Select(c => (JsonNode)new JsonObject
        {
            ["car"] = c.Name,
            ["films"] = c.Passes.Length,
            ["speed-km-h"] = In.KilometresPerHour.Of(c.Speed),
            ["may-be-slow-motion"] = c.MayBeSlowMotion,
            ["believed"] = c.Car.IsBelieved,
            ["slower-end"] = c.Car.SlowerEnd > 0 ? "front" : c.Car.SlowerEnd < 0 ? "rear" : null,
            ["numbers"] = new JsonArray([.. c.Car.Estimates.Select(e => (JsonNode)new JsonObject
            {
                ["key"] = FilmTable.Of(e.Number).Key, ["said"] = e.IsSaid, ["value"] = e.Value, ["low"] = e.Low, ["high"] = e.High,
                ["learned"] = e.Learned, ["why-not"] = e.IsSaid ? null : e.Reason,
            })]),
            ["refusals"] = TablesJson.Texts(c.Car.Refusals.Select(r => $"{r.Says} {r.WouldTell}".TrimEnd())),
        })]),
        ["left-out"] = TablesJson.Texts(LeftOut),
        ["sentences"] = TablesJson.Texts([.. Sentences.Select(s => s.Text), .. Cautions, .. Closing]),
    };

    /// <inheritdoc/>
    public override Figure Figure(string id) => id switch
    {
        Seen when !IsList => FilmFigure.Of(
            Asked.Named, $"{Head[0].Text} {Sentences[0].Text}", Car.Passes[Shown], Car.Car, Shown,
            Forecast?.Pass is { } pass ? (pass, Forecast.Shift) : null),
        List when IsList => SeenListFigure.Of(Asked.Place!, string.Join(' ', Sentences.Select(s => s.Text)), Cars),
        _ => base.Figure(id),
    };

    /// <summary>Which film of a car is told.</summary>
    /// <param name="car">The car.</param>
    internal static int ShownOf(SeenCar car) => Enumerable.Range(0, car.Passes.Length)
        .OrderByDescending(f => car.Numbers[f].IsSecondSeen).ThenBy(f => car.Passes[f].Speed).First();

    /// <summary>The track of the first film, to be kept beside its sheet.</summary>
    public override byte[] Csv() => Encoding.UTF8.GetBytes(TrackText.Of(Asked.Films[0].Track));

    /// <inheritdoc/>
    protected override bool TellsFirst => true;
}
