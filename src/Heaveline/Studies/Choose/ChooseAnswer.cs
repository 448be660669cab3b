using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Heaveline.Answers;
using Heaveline.Figures;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Which parts to buy: a shortlist with reasons, or that the car is best left as it is.</summary>
public sealed record ChooseAnswer : Answer
{
    /// <summary>Figure of price against settling.</summary>
    public const string TradeOff = "trade-off";

    internal ChooseAnswer(ChooseFindings findings) => Findings = findings;

    /// <summary>The finding: what to buy, or that nothing is worth it.</summary>
    public Sentence Finding => Words.Finding;

    /// <summary>The shortlist in words, one sentence a setup.</summary>
    public IReadOnlyList<Sentence> Shortlist => Words.List;

    /// <summary>What each setup of the shortlist costs, the best first.</summary>
    public ImmutableArray<string> Prices => [.. Findings.List.Select(one => Findings.Parts.Price(one.Entry.Setup).ToString())];

    /// <summary>What changes besides, of each setup beside the car as it is; none without a shortlist.</summary>
    public IReadOnlyList<FactTable> PriceTables => [.. ChooseTables.Standing(Findings), .. new ChooseSideWords(Findings).Tables];

    /// <summary>What was found.</summary>
    internal ChooseFindings Findings { get; init; }

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Head => [Words.Asked];

    /// <inheritdoc/>
    public override IReadOnlyList<FactTable> Tables =>
        [.. ShortTables, .. ChooseTables.Cases(Findings), .. ChooseTables.Aside(Findings), .. PriceTables];

    /// <inheritdoc/>
    public override IReadOnlyList<FactTable> ShortTables => [.. ChooseTables.Shortlist(Findings), .. ChooseGrip.Table(Findings)];

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Sentences => [Finding, .. Shortlist, .. Words.Reasons, .. Words.Method, .. Words.Reminders];

    /// <inheritdoc/>
    public override IReadOnlyList<string> Closing => ["Test off public roads. " + Studies.Cautions.Short];

    /// <inheritdoc/>
    public override string? Failure => Words.Failure;

    /// <inheritdoc/>
    public override IReadOnlyList<Source> Sources =>
    [
        Answers.Sources.Axes, Answers.Sources.Steps, Answers.Sources.Parts, Answers.Sources.Comfort, Answers.Sources.RoadClasses,
        Answers.Sources.Shares, Answers.Sources.SideEffects, .. Findings.AreDoubtsStated ? new[] { Answers.Sources.Draws } : [],
    ];

    /// <inheritdoc/>
    public override IReadOnlyList<string> FigureIds => [TradeOff];

    /// <inheritdoc/>
    public override JsonObject Facts => new()
    {
        ["car"] = Findings.Asked.Car.Name,
        ["lists"] = TablesJson.Texts(Findings.Asked.Lists.Select(list => list.Name)),
        ["setups"] = Findings.Parts.Space.Count,
        ["driven"] = Findings.Found.Driven.Length,
        ["whole"] = Findings.Found.IsWhole,
        // How far it came stands beside it: setups driven, and draws where any were made.
        ["stopped"] = Failure is not null,
        ["draws"] = Findings.AreDoubtsStated ? Findings.Trial.Draws : null,
        ["seed"] = Findings.Asked.Seed,
        ["finding"] = Finding.Text,
        ["shortlist"] = new JsonArray([.. Findings.List.Select(one => (JsonNode)new JsonObject
        {
            ["setup"] = one.Letter,
            ["parts"] = new JsonArray([.. one.Fitted.Parts.Select(part => (JsonNode)new JsonObject
            {
                ["place"] = Parts.PartPlaces.Name(part.Place), ["part"] = part.Option.Name,
            })]),
            ["price"] = Findings.Parts.HasPrices ? Findings.Parts.Space.Price(one.Entry.Setup) : null,
            ["reasons"] = TablesJson.Texts(one.Entry.Reasons.Select(ChooseWords.Reason)),
        })]),
        ["limits"] = ChooseLimitFacts.Of(Findings),
        ["notes"] = TablesJson.Texts(Words.Reasons.Concat(Words.Method).Select(s => s.Text)),
    };

    /// <inheritdoc/>
    public override Figure Figure(string id) => id == TradeOff ? ChooseFigure.Of(Findings, Words) : base.Figure(id);

    /// <inheritdoc/>
    public override IEnumerable<string> LinesIn(ReaderUnits units)
    {
        var (shown, all) = (ShortTables.Sum(t => t.Rows.Count), Tables.Sum(t => t.Rows.Count));
        return LinesOf(
            ShortTables, shown < all ? [FormattableString.Invariant($"{shown} of {all} rows, those that matter most; all with --all.")] : [], units);
    }

    /// <inheritdoc/>
    public override IEnumerable<string> WholeLinesIn(ReaderUnits units) => LinesOf(Tables, [], units);

    // Where nothing is told between two blank lines one of them is left.
    private IEnumerable<string> LinesOf(IReadOnlyList<FactTable> tables, IReadOnlyList<string> left, ReaderUnits units)
    {
        string[] lines =
        [
            .. Head.Select(s => units.Text(s.Text)),
            units.Text(Finding.Text),
            "",
            .. Shortlist.Select(s => units.Text(s.Text)),
            .. TableLines(tables, units),
            "",
            .. left,
            .. Words.Reasons.Concat(Words.Method).Concat(Words.Reminders).Select(s => units.Text(s.Text)),
            .. Closing.Select(units.Text),
        ];
        return lines.Where((line, k) => line.Length > 0 || k == 0 || lines[k - 1].Length > 0);
    }

    internal ChooseWords Words => new(Findings);
}
