using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Heaveline.Answers;
using Heaveline.Causes;
using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Why a car pitches over a road, and what would help: each cure with its effect, its price and its chance.</summary>
public sealed record CureAnswer : Answer
{
    /// <summary>What the car without a cure is called.</summary>
    internal const string AsDescribed = "as described";

    /// <summary>What was asked.</summary>
    public required CureAsked Asked { get; init; }

    /// <summary>The causes.</summary>
    public required Why Why { get; init; }

    /// <summary>What is to be less.</summary>
    public required Measure<Pass> Measure { get; init; }

    /// <summary>The other of hit and settling, which may not get much worse.</summary>
    public required Measure<Pass> Other { get; init; }

    /// <summary>The car as described over the road, under the load asked about and under each other load under which it gets across.</summary>
    public required ImmutableArray<PassAnswer> Described { get; init; }

    /// <summary>Loads under which the car as described cannot stand or does not get across, so that no cure was driven under them.</summary>
    public ImmutableArray<string> Uncrossed { get; init; } = [];

    /// <summary>The car as described standing under the fullest of these loads.</summary>
    public required CarAtRest Full { get; init; }

    /// <summary>The car as described on the ordinary random road at the same speed; null where that cannot be told.</summary>
    public required CarOnRoad? Ride { get; init; }

    /// <summary>The cures, that which takes off most first; empty where nothing helps.</summary>
    public required ImmutableArray<Cure> Cures { get; init; }

    /// <summary>What would take off what is felt, but does what no cure may do.</summary>
    public required ImmutableArray<CureLeft> Left { get; init; }

    /// <summary>How many passes were driven to find them.</summary>
    public required int Tried { get; init; }

    /// <summary>Whether the car states doubts, so that the cures have a chance.</summary>
    public required bool AreDoubtsStated { get; init; }

    /// <summary>What a cure is called beside others.</summary>
    /// <param name="k">Its place, from 0.</param>
    internal static string Named(int k) => FormattableString.Invariant($"cure {k + 1}");

    /// <summary>The finding: what helps most, or that nothing does.</summary>
    public Sentence Finding => Words.Finding;

    /// <summary>Under which loads nothing was driven; null where it was under every one.</summary>
    public Sentence? NotDriven => Words.Uncrossed;

    /// <summary>The causes in words.</summary>
    public RankingWords Causes => RankingWords.Of(
        Asked.Aim == CureAim.Settling ? "settling" : "hit", Asked.Aim == CureAim.Settling ? Why.Settling : Why.Hit, null);

    /// <summary>Each cure in sentences: its effect, what gets better too, its price, the loads that suffer, its chance.</summary>
    public IReadOnlyList<IReadOnlyList<Sentence>> Told => Words.Cures;

    /// <summary>What a cure does to the number that is to be less ("from 1.21° to 0.98°, 19 % less").</summary>
    public string Change(Cure cure) => Words.Change(cure);

    /// <summary>What gets worse by each cure under every load, a table a cure; without rows where nothing does.</summary>
    public IReadOnlyList<FactTable> Prices => CurePrices.Of(this);

    /// <summary>What stands below the cures: the doubts, how they were found, what their prices leave out, what to check after each.</summary>
    public IReadOnlyList<Sentence> Notes =>
    [
        .. new[] { Words.Left, Words.Doubts, Words.Uncrossed, Words.Method, Words.Unridden, AloneWords.Of(Why.Model), HeightsKept }
            .OfType<Sentence>(),
        .. Standing.Notes, .. Words.Reminders,
    ];

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Head =>
    [
        new("drive", $"{Asked.Car.Name}, {Asked.Car.Load.Name}, over {Asked.Road.CaptionFor(Why.Model.Rolls)} at "
            + FormattableString.Invariant($"{In.KilometresPerHour.Of(Asked.Speed):0.#} km/h.")),
    ];

    /// <inheritdoc/>
    public override IReadOnlyList<FactTable> Tables =>
    [
        .. ShortTables,
        PassTable.Of(
            $"Over the road, {Asked.Car.Load.Name}",
            Columns,
            [.. Cures.Select(cure => cure.Passes[0]).Prepend(Described[0]).Select(pass => (pass.Pass, pass.Measures))]),
        .. Ride is { } ride && Cures.All(cure => cure.Ride is not null)
            ? [
                new FactTable($"On a random road of {CureStudy.Ordinary.Name}, {Asked.Car.Load.Name}", Columns)
                    .Add(RideCatalogue.Of(Asked.Car.Car), [ride, .. Cures.Select(cure => cure.Ride!)]),
            ]
            : Array.Empty<FactTable>(),
        .. Prices.Where(table => table.Rows.Count > 0),
        .. Cost.Tables,
    ];

    /// <inheritdoc/>
    public override IReadOnlyList<FactTable> ShortTables => [CureTable.Of(this)];

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Sentences => [Finding, .. Causes.All, .. Told.SelectMany(cure => cure), .. Notes];

    /// <inheritdoc/>
    public override IReadOnlyList<string> Cautions => ShortRoad.Of(Asked.Road, Asked.Car.Car);

    /// <inheritdoc/>
    public override IReadOnlyList<string> Closing => ["Test off public roads. " + Studies.Cautions.Short];

    /// <inheritdoc/>
    public override IReadOnlyList<Source> Sources =>
    [
        Answers.Sources.Axes, Answers.Sources.Steps, Answers.Sources.Parts, Answers.Sources.Shares, Answers.Sources.SideEffects,
        .. AreDoubtsStated ? new[] { Answers.Sources.Draws } : [],
    ];

    /// <inheritdoc/>
    public override JsonObject Facts => new()
    {
        ["car"] = Asked.Car.Name,
        ["load"] = Asked.Car.Load.Name,
        ["fullest-load"] = Full.Model.Load.Name,
        ["road"] = Asked.Road.Caption,
        ["speed"] = Asked.Speed,
        ["samples"] = AreDoubtsStated ? Asked.Draws : null,
        ["seed"] = AreDoubtsStated ? Asked.Seed : null,
        ["finding"] = Finding.Text,
        ["causes"] = TablesJson.Texts(Causes.All.Select(s => s.Text)),
        ["cures"] = new JsonArray([.. Cures.Select((cure, k) => (JsonNode)new JsonObject
        {
            ["cure"] = cure.Words,
            ["set"] = new JsonObject(cure.Values.Select(one => KeyValuePair.Create(one.Key, (JsonNode?)one.Value))),
            ["before"] = Measure.Of(Described[0].Pass),
            ["after"] = Measure.Of(cure.Passes[0].Pass),
            ["helps"] = cure.Chance?.Helps,
            ["harms"] = cure.Chance?.Harms,
            ["sentences"] = TablesJson.Texts(Told[k].Select(s => s.Text)),
        })]),
        ["notes"] = TablesJson.Texts(Notes.Select(s => s.Text)),
    };

    /// <summary>The cars standing under the fullest load, as the command 'cost' sets them side by side.</summary>
    internal CostAnswer Cost => new()
    {
        Asked = new CostAsked
        {
            Cars = [Asked.Car with { Name = AsDescribed, Load = Full.Model.Load }, .. Cures.Select(c => c.Car with { Load = c.Full.Model.Load })],
        },
        Cars = [Full, .. Cures.Select(cure => cure.Full)],
        Doubts = null,
    };

    // A cure itself is set as a slider sets it; the causes are told apart by frequencies.
    private Sentence? HeightsKept => SwapWords.Turned(Why.Model.Car) is { } turned
        ? turned with { Text = $"To tell the causes apart f{turned.Text[1..]}" }
        : null;

    // What 'cost' notes of the car as described holds for all of them.
    private CostAnswer Standing => new() { Asked = new CostAsked { Cars = [Cost.Asked.Cars[0]] }, Cars = [Full], Doubts = null };

    /// <inheritdoc/>
    public override IEnumerable<string> LinesIn(ReaderUnits units)
    {
        var (shown, all) = (ShortTables.Sum(t => t.Rows.Count), Tables.Sum(t => t.Rows.Count));
        return LinesOf(ShortTables, [FormattableString.Invariant($"{shown} of {all} rows, those that matter most; all with --all.")], units);
    }

    /// <inheritdoc/>
    public override IEnumerable<string> WholeLinesIn(ReaderUnits units) => LinesOf(Tables, [], units);

    private IEnumerable<string> LinesOf(IReadOnlyList<FactTable> tables, IReadOnlyList<string> left, ReaderUnits units) =>
    [
        .. Head.Select(s => units.Text(s.Text)),
        units.Text(Finding.Text),
        "",
        .. Causes.All.Select((s, i) => (i == 0 ? "" : "  ") + units.Text(s.Text)),
        .. Told.Count == 0 ? [] : new[] { "" },
        .. Told.SelectMany((cure, k) => cure.Select((s, i) =>
            (i == 0 ? FormattableString.Invariant($"{k + 1}. ") : "   ") + units.Text(s.Text))),
        .. TableLines(tables, units),
        "",
        .. left,
        .. Cautions.Concat(Notes.Select(s => s.Text)).Concat(Closing).Select(units.Text),
    ];

    private IReadOnlyList<string> Columns => [AsDescribed, .. Cures.Select(cure => cure.Car.Name)];

    private CureWords Words => new(this);
}
