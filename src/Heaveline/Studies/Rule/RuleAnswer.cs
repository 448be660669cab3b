using System.Text.Json.Nodes;
using Heaveline.Answers;
using Heaveline.Figures;
using Heaveline.Quantities;
using Heaveline.Rules;

namespace Heaveline.Studies;

/// <summary>What a rule of the trade is worth for a car, over a bump, by a measure.</summary>
public sealed record RuleAnswer : Answer
{
    /// <summary>Figure of the map with the lines of every load.</summary>
    public const string WithEveryLoad = "map";

    /// <summary>Figure of the map with the line of its own load alone.</summary>
    public const string WithOneLoad = "map-one-load";

    /// <summary>What was asked.</summary>
    public required RuleAsked Asked { get; init; }

    /// <summary>The map, of one load.</summary>
    public required RuleMap Map { get; init; }

    /// <summary>The same passes by the hit, so that no verdict on what follows stands without it; null where the map itself is of the hit.</summary>
    public required RuleMap? Hit { get; init; }

    /// <summary>The answers by the other measures that were asked for, as far as a point of them could be computed.</summary>
    public IReadOnlyList<RuleAnswer> Others { get; init; } = [];

    /// <summary>Whether it is the map that comes before the one asked for.</summary>
    public bool IsCoarse { get; init; }

    /// <summary>Where the car stands under each load, the map's own load among them.</summary>
    public required IReadOnlyList<RuleLoad> Loads { get; init; }

    /// <summary>Which loads could not be marked and why, one sentence each.</summary>
    public IReadOnlyList<string> NotMarked { get; init; } = [];

    /// <summary>Which damping suits what on a rough road; null where the rule is another one.</summary>
    public RoughDamping? Damping { get; init; }

    /// <summary>The closed forms by speed; null where there are none: another rule, the hit, or an end that does not swing.</summary>
    public IReadOnlyList<RatioRule>? Closed =>
        Own is { Ends: { FrontPeriod: not null, RearPeriod: not null } } && Map.JudgesSettling ? RatioRule.Of(Map) : null;

    /// <summary>The grid of the map, as much as people read.</summary>
    public FactTable Grid => RuleTables.Grid(Map, Closed, whole: false);

    /// <summary>The measure itself where the reference bottoms out, as much as people read; null where it does so nowhere.</summary>
    public FactTable? Absolute => RuleTables.Absolute(Map, whole: false);

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Head => [.. RuleSentences.Head(Map)];

    /// <inheritdoc/>
    public override IReadOnlyList<FactTable> Tables => Absolute is { } itself ? [Grid, itself] : [Grid];

    /// <inheritdoc/>
    public override IReadOnlyList<FactTable> WholeTables =>
    [
        RuleTables.Grid(Map, Closed, whole: true),
        .. RuleTables.Absolute(Map, whole: true) is { } itself ? new[] { itself } : [],
        RuleTables.Loads(Map, Loads),
        .. Damping is { } damping ? new[] { RuleTables.Optima(damping.Optima) } : [],
    ];

    /// <inheritdoc/>
    public override IReadOnlyList<string> Cautions => [.. ShortRoad.Of(Map.Road, Map.Model.Car), .. NotMarked];

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Sentences => SentencesWith(RuleSentences.WindowAtCommand(Map));

    /// <summary>The sentences for those who have no command line before them.</summary>
    public IReadOnlyList<Sentence> SentencesForReaders => SentencesWith(RuleSentences.Window(Map));

    /// <inheritdoc/>
    public override IReadOnlyList<string> Closing => [Studies.Cautions.Short];

    /// <inheritdoc/>
    public override IReadOnlyList<Source> Sources =>
        [Answers.Sources.Steps, Answers.Sources.Parts, .. Map.Axis.Kind == RuleKind.FrequencyRatio ? new[] { Answers.Sources.Rule } : []];

    /// <inheritdoc/>
    public override IReadOnlyList<string> FigureIds => [WithEveryLoad, WithOneLoad];

    /// <inheritdoc/>
    public override JsonObject Facts
    {
        get
        {
            var tally = RuleTally.Of(Map);
            return new JsonObject
            {
                ["car"] = Map.Model.Car.Name,
                ["load"] = Map.Model.Load.Name,
                ["road"] = Map.Road.Caption,
                ["rule"] = Map.Axis.Claim,
                ["turned"] = Map.Axis.Name,
                ["against"] = Map.Axis.Against,
                ["measure"] = Map.Measure.Name,
                ["true"] = tally.Holds,
                ["false"] = tally.Fails,
                ["no-difference"] = tally.NoDifference,
                ["only-this-passes"] = tally.OnlyThisPasses,
                ["only-the-reference-passes"] = tally.OnlyReferencePasses,
                ["neither-passes"] = tally.NeitherPasses,
                ["not-computed"] = tally.NotComputed,
                ["by-speed"] = BySpeed(Map),
                ["by-speed-of-the-hit"] = Hit is { } hit ? BySpeed(hit) : null,
                ["sentences"] = TablesJson.Texts([.. Sentences.Select(s => s.Text), .. NotMarked]),
            };
        }
    }

    private static JsonArray BySpeed(RuleMap map) =>
    [
        .. RuleAtSpeed.Of(map).Select(row => (JsonNode)new JsonObject
        {
            ["speed-km-h"] = Math.Round(In.KilometresPerHour.Of(row.Speed), 6),
            ["verdict"] = row.Verdict.ToString(),
        }),
    ];

    // Loads that stand at the same place share one line.
    private IReadOnlyList<(string Load, double Value)> Standing =>
    [
        .. Loads.GroupBy(l => Math.Round(l.Own, 4))
            .Select(g => (g.Count() == Loads.Count && Loads.Count > 1 ? "this car" : string.Join(", ", g.Select(l => l.Name)), g.First().Own)),
    ];

    private RuleLoad? Own => Loads.FirstOrDefault(l => l.Name == Map.Model.Load.Name);

    /// <inheritdoc/>
    public override byte[] Csv() => RuleCsv.Of(Map);

    /// <inheritdoc/>
    public override Figure Figure(string id) => id switch
    {
        WithEveryLoad => Drawn(Standing),
        WithOneLoad => Drawn([("this car", Map.Own)]),
        _ => base.Figure(id),
    };

    /// <summary>The answer by a measure; null where it is not held.</summary>
    /// <param name="word">The measure's word.</param>
    public RuleAnswer? By(string word) => Asked.Measure.Word == word ? this : Others.FirstOrDefault(other => other.Asked.Measure.Word == word);

    /// <summary>The map with the car as a point under each load, with its doubt.</summary>
    /// <param name="speed">Speed at which the points are drawn, m/s; one beside the map is drawn at its edge.</param>
    /// <param name="onlyOne">Whether the point of the map's own load is all.</param>
    public Figure Points(double speed, bool onlyOne) => RuleMapFigure.WithPoints(
        Map,
        [
            .. Loads.Where(l => !onlyOne || l.Name == Map.Model.Load.Name)
                .Select(l => new RulePoint(l.Name, l.Own, l.Doubt?.Low, l.Doubt?.High, IsMapped: l.Name == Map.Model.Load.Name)),
        ],
        speed,
        Closed is null ? null : RatioForms.Of(Map.Model));

    private Figure Drawn(IReadOnlyList<(string Load, double Value)> standing) =>
        RuleMapFigure.Of(Map, standing, Closed is null ? null : RatioForms.Of(Map.Model));

    private IReadOnlyList<Sentence> SentencesWith(Sentence window) =>
    [
        .. RuleSentences.Rule(Map, Hit),
        .. RuleSentences.Loads(Map, Loads),
        .. Closed is null ? [] : new[] { RuleSentences.ClosedForms(Map) },
        window,
        .. Map.Axis.Kind == RuleKind.FrequencyRatio && SwapWords.Turned(Map.Model.Car) is { } turned ? [turned] : Array.Empty<Sentence>(),
        .. Damping is { } damping ? RuleSentences.Optima(damping) : [],
    ];
}
