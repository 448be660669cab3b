using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Heaveline.Answers;
using Heaveline.Figures;
using Heaveline.Measures;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Which tolerances the parts of a kit must keep, what they cost, and how a fitted car is tested.</summary>
public sealed record ToleranceAnswer : Answer
{
    /// <summary>Figure of the cars that keep the promise against the tolerance of the springs.</summary>
    public const string Chart = "tolerances";

    /// <summary>What was asked.</summary>
    public required ToleranceAsked Asked { get; init; }

    /// <summary>The promised numbers of the car as designed, SI, in the order of the promises.</summary>
    public required ImmutableArray<double> Designed { get; init; }

    /// <summary>Parts exactly as designed: what remains is how the cars differ.</summary>
    public required ToleranceKept Perfect { get; init; }

    /// <summary>Every combination of the tolerances.</summary>
    public required ImmutableArray<ToleranceKept> All { get; init; }

    /// <summary>The test of a fitted car; null where too few break the promise, or keep it, to make one.</summary>
    public required ToleranceTest? Test { get; init; }

    /// <summary>Cars that with the loosest tolerances cannot stand as described, empty or under the load: no test is made of them.</summary>
    public required int Fallen { get; init; }

    /// <summary>Whether the car as designed keeps what is promised.</summary>
    public bool IsDesigned => Asked.Promises.Zip(Designed).All(p => p.First.Holds(p.Second));

    /// <summary>
    /// The tolerances that surely keep the promise and of which none looser does: cheapest first where prices are given, else the loosest altogether
    /// first (the product of the three).
    /// </summary>
    public ImmutableArray<ToleranceKept> Loosest
    {
        get
        {
            var holding = All.Where(k => k.Holds(Asked.Share)).ToArray();
            return
            [
                .. holding.Where(k => !holding.Any(other => other.IsLooser(k)))
                    .OrderBy(k => k.Price ?? 0.0)
                    .ThenByDescending(k => k.Tolerance.Springs * k.Tolerance.Dampers * k.Tolerance.Heights),
            ];
        }
    }

    /// <summary>The one that is named: the first of the loosest, or with prices the cheapest of all that keep the promise.</summary>
    public ToleranceKept? Chosen => Asked.HasPrices
        ? All.Where(k => k.Holds(Asked.Share)).OrderBy(k => k.Price).ThenByDescending(k => k.Share).FirstOrDefault()
        : Loosest.FirstOrDefault();

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Head =>
    [
        new("draws", $"{Asked.Car.Name}, {Asked.Car.Load.Name}: {string.Join("; ", Asked.Promises.Select(p => p.Words))}{Over}. "
            + FormattableString.Invariant($"{Asked.Draws} fitted cars drawn within the stated doubts of the car, seed {Asked.Seed}.")),
    ];

    /// <inheritdoc/>
    protected override bool TellsFirst => true;

    /// <inheritdoc/>
    public override IReadOnlyList<FactTable> Tables => Loosest.IsEmpty ? [] : [ToleranceTable.Loosest(Loosest)];

    /// <inheritdoc/>
    public override IReadOnlyList<FactTable> WholeTables => [ToleranceTable.Whole(All)];

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Sentences => new ToleranceWords(this).All;

    /// <inheritdoc/>
    public override IReadOnlyList<string> Closing => Studies.Cautions.All;

    /// <inheritdoc/>
    public override IReadOnlyList<Source> Sources =>
        [Answers.Sources.Axes, Answers.Sources.Draws, .. Asked.Road is null ? [] : new[] { Answers.Sources.Steps }];

    /// <inheritdoc/>
    public override IReadOnlyList<string> FigureIds => [Chart];

    /// <inheritdoc/>
    public override JsonObject Facts => new()
    {
        ["car"] = Asked.Car.Name,
        ["load"] = Asked.Car.Load.Name,
        ["samples"] = Asked.Draws,
        ["seed"] = Asked.Seed,
        ["share"] = Asked.Share,
        ["promises"] = new JsonArray([.. Asked.Promises.Zip(Designed).Select(p => (JsonNode)new JsonObject
        {
            ["measure"] = p.First.Measure.Key,
            ["least"] = p.First.IsLeast ? p.First.Limit : null,
            ["most"] = p.First.IsLeast ? null : p.First.Limit,
            ["designed"] = double.IsFinite(p.Second) ? p.Second : null,
        })]),
        ["fallen"] = Fallen,
        ["perfect"] = Perfect.Share,
        ["chosen"] = Json(Chosen),
        ["test"] = Test is not { } test ? null : new JsonObject
        {
            ["windows"] = new JsonArray([.. test.Windows.Select(w => (JsonNode)new JsonObject
            {
                ["of"] = WorkshopReadingWords.Id(w.Reading),
                ["least"] = double.IsFinite(w.Low) ? w.Low : null,
                ["most"] = double.IsFinite(w.High) ? w.High : null,
            })]),
            ["caught"] = test.Caught,
            ["mistaken"] = test.Mistaken,
        },
        ["sentences"] = TablesJson.Texts(Sentences.Select(s => s.Text)),
    };

    /// <inheritdoc/>
    public override Figure Figure(string id) => id == Chart
        ? ToleranceFigure.Of(
            $"{Asked.Car.Name}, {Asked.Car.Load.Name}: cars that keep the promise",
            Sentences[0].Text,
            Heights,
            [
                .. Asked.Dampers.Select(d => (
                    $"dampers ± {Numeral.Of(In.Percent.Of(d.HalfWidth), "0.##")} %",
                    All.Where(k => k.Tolerance.Dampers == d.HalfWidth && k.Tolerance.Heights == Heights)
                        .Select(k => (k.Tolerance.Springs, k.Share)).ToImmutableArray())),
            ],
            Asked.Share)
        : base.Figure(id);

    private double Heights => (Chosen ?? All[0]).Tolerance.Heights;

    private string Over => Asked.Road is { } road
        ? FormattableString.Invariant($", over {road.Name} at {In.KilometresPerHour.Of(Asked.Speed):0.#} km/h")
        : "";

    private static JsonObject? Json(ToleranceKept? kept) => kept is null ? null : new JsonObject
    {
        ["springs"] = kept.Tolerance.Springs,
        ["dampers"] = kept.Tolerance.Dampers,
        ["heights"] = kept.Tolerance.Heights,
        ["share"] = kept.Share,
        ["price"] = kept.Price,
    };
}
