using System.Text.Json.Nodes;
using Heaveline.Answers;
using Heaveline.Figures;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Several cars over one road, their numbers side by side.</summary>
public sealed record CompareAnswer : Answer
{
    /// <summary>Figure of the cars' motions over time, at the first speed.</summary>
    public const string Traces = "compare";

    /// <summary>Figure of the headline measures over speed; only from two speeds on.</summary>
    public const string OverSpeeds = "speeds";

    /// <summary>What was asked.</summary>
    public required CompareAsked Asked { get; init; }

    /// <summary>The passes: of every speed, in their order, those of every car.</summary>
    public required IReadOnlyList<IReadOnlyList<PassAnswer>> Passes { get; init; }

    /// <summary>Intervals within the stated doubts; empty where none were asked for.</summary>
    public IReadOnlyList<FactTable> Intervals { get; init; } = [];

    /// <summary>How the intervals came about; null without them.</summary>
    public string? IntervalsFrom { get; init; }

    /// <summary>The cars' names.</summary>
    public IReadOnlyList<string> Names => [.. Asked.Cars.Select(c => c.Name)];

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Head =>
    [
        new("road", $"Over {Asked.Road.CaptionFor(Asked.Cars[0].Model.Rolls)}, {LoadedCar.LoadsOf(Asked.Cars)}."),
        .. Asked.Turned.Length > 0 ? new[] { new Sentence("turned", Asked.Turned) } : [],
    ];

    /// <summary>A table a speed at which every car got across, then the intervals.</summary>
    public override IReadOnlyList<FactTable> Tables =>
        [.. Crossed.Select(cars => Side(PassTable.Of, cars)), .. Intervals];

    /// <inheritdoc/>
    public override IReadOnlyList<FactTable> ShortTables => [.. Crossed.Select(cars => Side(PassTable.Short, cars)), .. Intervals];

    /// <inheritdoc/>
    public override IReadOnlyList<string> Cautions => ShortRoad.Of(Asked.Road, Asked.Cars.Select(c => c.Car));

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Sentences => IntervalsFrom is null ? [] : [new("doubts", IntervalsFrom)];

    /// <inheritdoc/>
    public override IReadOnlyList<string> Closing => [Studies.Cautions.Short];

    /// <inheritdoc/>
    public override IReadOnlyList<Source> Sources =>
        [
            Answers.Sources.Axes,
            Answers.Sources.Steps,
            Answers.Sources.Parts,
            .. Intervals.Count > 0 ? [Answers.Sources.Draws] : Array.Empty<Source>(),
        ];

    /// <inheritdoc/>
    public override IReadOnlyList<string> FigureIds => Passes.Count > 1 ? [OverSpeeds, Traces] : [Traces];

    /// <inheritdoc/>
    public override string? Failure => Passes.SelectMany(cars => cars).FirstOrDefault(c => !c.IsWhole) is { Pass: var broken, Name: var name }
        ? FormattableString.Invariant($"{name} at {In.KilometresPerHour.Of(broken.Speed):0.#} km/h: {broken.OutcomeSentence}")
        : null;

    /// <inheritdoc/>
    public override JsonObject Facts => new()
    {
        ["cars"] = TablesJson.Texts(Names),
        ["loads"] = TablesJson.Texts(Asked.Cars.Select(c => c.Load.Name)),
        ["road"] = Asked.Road.Caption,
        ["notes"] = TablesJson.Texts(Sentences.Select(s => s.Text)),
    };

    /// <inheritdoc/>
    public override Figure Figure(string id) => id switch
    {
        Traces => CompareFigure.Of([.. Passes[0].Select(c => (c.Name, c.Pass, c.Measures))]),
        OverSpeeds when Passes.Count > 1 => CompareSpeedsFigure.Of([.. Names.Select(
            (name, i) => (name, (IReadOnlyList<(Passes.Pass, Measures.PassMeasures)>)[.. Passes.Select(cars => (cars[i].Pass, cars[i].Measures))]))]),
        _ => base.Figure(id),
    };

    /// <summary>All traces over time of the first speed's passes, each column under its car's name.</summary>
    public override byte[] Csv() => TraceCsv.Of([.. Passes[0].Select(c => (c.Name, c.Pass))]);

    // Speeds at which every car got across.
    private IEnumerable<IReadOnlyList<PassAnswer>> Crossed => Passes.Where(cars => cars.All(c => c.IsWhole));

    private static FactTable Side(
        Func<string, IReadOnlyList<string>, IReadOnlyList<(Passes.Pass, Measures.PassMeasures)>, FactTable> table, IReadOnlyList<PassAnswer> cars) =>
        table(
            FormattableString.Invariant($"At {In.KilometresPerHour.Of(cars[0].Pass.Speed):0.#} km/h"),
            [.. cars.Select(c => c.Name)],
            [.. cars.Select(c => (c.Pass, c.Measures))]);

    /// <summary>The numbers of passes side by side.</summary>
    /// <param name="title">Title of the table.</param>
    /// <param name="cars">The passes, a column each.</param>
    public static FactTable Table(string title, IReadOnlyList<PassAnswer> cars)
    {
        ArgumentNullException.ThrowIfNull(cars);
        return PassTable.Of(title, [.. cars.Select(c => c.Name)], [.. cars.Select(c => (c.Pass, c.Measures))]);
    }
}
