using System.Text.Json.Nodes;
using Heaveline.Answers;
using Heaveline.Causes;
using Heaveline.Figures;
using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Why a car pitches: ranked causes with their sizes, and the road tests planned for them.</summary>
public sealed record WhyAnswer : Answer
{
    /// <summary>Figure of the causes' shares.</summary>
    public const string Shares = "shares";

    /// <summary>The causes.</summary>
    public required Why Why { get; init; }

    /// <summary>Causes of the settling in words, each with its road test.</summary>
    public RankingWords Settling => RankingWords.Of("settling", Why.Settling, Why);

    /// <summary>Causes of the hit in words; the road tests are those of the settling.</summary>
    public RankingWords Hit => RankingWords.Of("hit", Why.Hit, null);

    /// <summary>What the numbers of the planned tests rest on.</summary>
    public Sentence Assumed => TestWords.Assumed;

    /// <summary>How the shares came about.</summary>
    public Sentence Method => new("method", FormattableString.Invariant(
        $"Each cause was taken to its neutral value alone and together with the others ({Why.Passes} passes); ")
        + "its share is the mean over the orders of taking them.");

    /// <summary>Of which load the causes are told, with what they are under the load asked about; null where that is the one.</summary>
    public Sentence? Alone => AloneWords.Of(Why.Model);

    /// <summary>How the frequencies of bought springs were taken to neutral; null without any.</summary>
    public Sentence? HeightsKept => SwapWords.Turned(Why.Model.Car);

    /// <summary>All that is said of how the causes were told apart: of which car, under which load, with what kept.</summary>
    public IReadOnlyList<Sentence> Told => [Method, .. new[] { HeightsKept, Alone }.OfType<Sentence>()];

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Head =>
    [
        new("drive", $"{Car}, {Load}, over {Why.Road.CaptionFor(Why.Model.Rolls)} at "
            + FormattableString.Invariant($"{In.KilometresPerHour.Of(Why.Speed):0.#} km/h.")),
        .. ShortRoad.Of(Why.Road, Why.Model.Car).Select(text => new Sentence("short-road", text)),
    ];

    /// <inheritdoc/>
    public override IReadOnlyList<FactTable> Tables => [Table(Why.Settling), Table(Why.Hit)];

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Sentences =>
        [.. Settling.All, .. Hit.All, .. Told, Assumed];

    /// <inheritdoc/>
    public override IReadOnlyList<string> Closing => ["Test off public roads. " + Studies.Cautions.Short];

    /// <inheritdoc/>
    public override IReadOnlyList<Source> Sources => [Answers.Sources.Steps, Answers.Sources.Parts, Answers.Sources.Shares];

    /// <inheritdoc/>
    public override IReadOnlyList<string> FigureIds => [Shares];

    /// <summary>Why the shares add up to nothing known: the neutral car does not get over the road.</summary>
    public override string? Failure => Why.NeutralOutcome == PassOutcome.Completed
        ? null
        : $"with every cause neutral {(Why.NeutralOutcome is { } outcome ? BrokenOff.Of(outcome) : "the car cannot stand")}: of "
        + FormattableString.Invariant($"{Why.Missing} combinations of causes there is no number, and the shares leave them out.");

    /// <inheritdoc/>
    public override JsonObject Facts => new()
    {
        ["car"] = Car,
        ["load"] = Load,
        ["road"] = Why.Road.Caption,
        ["sentences"] = TablesJson.Texts(Why.Settling.Causes.Select(c => c.Sentence)),
        ["tests"] = TablesJson.Texts(Settling.Causes.Select(c => c.Proof?.Text).OfType<string>()),
    };

    /// <summary>The rankings one after the other; the tables hold the same numbers.</summary>
    public override IEnumerable<string> LinesIn(ReaderUnits units) =>
        new[]
        {
            Head.Select(s => s.Text),
            Ranked(Settling),
            Ranked(Hit),
            ["", .. Told.Select(s => s.Text), Assumed.Text],
            Closing,
        }
            .SelectMany(lines => lines).Select(units.Text);

    private string Car => Why.Model.Car.Name;

    private string Load => Why.Model.Load.Name;

    /// <inheritdoc/>
    public override Figure Figure(string id) => id == Shares ? WhyFigure.Of(Why) : base.Figure(id);

    private static IEnumerable<string> Ranked(RankingWords words) =>
    [
        "",
        words.Opening.Text,
        .. words.Causes
            .SelectMany(c => c.Proof is { } proof ? [$"  {c.Cause.Text}", $"    {proof.Text}"] : new[] { $"  {c.Cause.Text}" }),
        .. new[] { words.Rest, words.Unknown }.OfType<Sentence>().Select(s => $"  {s.Text}"),
    ];

    private static FactTable Table(WhyRanking ranking)
    {
        var measure = ranking.Measure;
        var table = new FactTable(ranking.Measure.Name, ["share of the measure", "alone"]);
        foreach (var cause in ranking.Causes)
        {
            table.Add(cause.Kind.ToString(), cause.Is, measure.Unit.Symbol, measure.Format, [measure.Shown(cause.Share), measure.Shown(cause.Alone)]);
        }

        return table;
    }
}
