using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Heaveline.Answers;
using Heaveline.Doubts;
using Heaveline.Figures;
using Heaveline.Measures;

namespace Heaveline.Studies;

/// <summary>What a change costs elsewhere, and what must be checked after it.</summary>
public sealed record CostAnswer : Answer
{
    /// <summary>What was asked.</summary>
    public required CostAsked Asked { get; init; }

    /// <summary>The cars at rest, in the order in which they were asked for.</summary>
    public required ImmutableArray<CarAtRest> Cars { get; init; }

    /// <summary>The cars drawn within their doubts; null where none states any.</summary>
    public required JointStudy? Doubts { get; init; }

    /// <summary>The load's name.</summary>
    public string Load => LoadedCar.LoadsOf(Asked.Cars);

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Head =>
    [
        new("cars", $"{string.Join("; ", Names)}, {Load}."),
        .. Asked.Turned.Length > 0 ? new[] { new Sentence("turned", Asked.Turned) } : [],
    ];

    /// <summary>The side effects, and where doubts are stated tables of their intervals and of those of each change.</summary>
    public override IReadOnlyList<FactTable> Tables =>
    [
        CostTable.Of(Names, Cars),
        .. Doubts is { } study ? DoubtTables.Of("Side effects", Names, CostTable.Measures(Cars), study) : [],
    ];

    /// <summary>Of all of these the rows that matter most; those with intervals hold the plain ones.</summary>
    public override IReadOnlyList<FactTable> ShortTables
    {
        get
        {
            HashSet<string> keys = [.. CostTable.Measures(Cars).Where(m => m.Uses.HasFlag(MeasureUse.Short)).Select(m => m.Key)];
            return [.. Tables.Skip(Tables.Count > 1 ? 1 : 0).Select(t => t.Only(keys)).Where(t => t.Rows.Count > 0)];
        }
    }

    /// <summary>How the numbers came about: their intervals, what was left out, what was taken for granted.</summary>
    public IReadOnlyList<Sentence> Notes =>
    [
        .. Doubts is { } study ? new[] { new Sentence("doubts", DoubtTables.Words(study, Cars.Length > 1, Vehicles)) } : [],
        .. Doubts is { } drawn
            ? Names.SelectMany((name, k) => DoubtTables.Unended(name, drawn.Cars[k])).Select(s => new Sentence("doubts-unended", s)) : [],
        .. Cars.Zip(Names, StopWords.Of),
        .. FirstStops,
        .. Cars.Zip(Names, (car, name) => SwapWords.Of([car.Model]).Concat(CoilWords.Of(car.Model, troubleOnly: true))
            .Select(sentence => sentence with { Text = $"{name}: {sentence.Text}" })).SelectMany(sentences => sentences),
        .. Cars.SelectMany(c => c.SideEffects.Notes).Distinct().Select(n => new Sentence(n.Id, n.Text)),
    ];

    /// <summary>The last car's dipped beam against the range that its file chooses; empty without a lamp.</summary>
    public IReadOnlyList<Sentence> Headlamp => LampWords.Of(Cars[^1]);

    /// <summary>What to check on the real car, for each car that the first becomes and that asks for a check.</summary>
    public IReadOnlyList<(LoadedCar After, IReadOnlyList<Sentence> Reminders)> Reminders =>
    [
        .. from k in Enumerable.Range(1, Cars.Length - 1)
           let change = SideEffectsChange.Between(Cars[0].SideEffects, Cars[k].SideEffects)
           let reminders = ChangeReminders.Of(Asked.Cars[0].Car, Asked.Cars[k].Car, change)
           where reminders.Count > 0
           select (Asked.Cars[k], reminders),
    ];

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Sentences => [.. Notes, .. Headlamp, .. Reminders.SelectMany(r => r.Reminders)];

    /// <inheritdoc/>
    public override IReadOnlyList<string> Closing => Studies.Cautions.All;

    /// <inheritdoc/>
    public override IReadOnlyList<Source> Sources =>
        [Answers.Sources.Axes, Answers.Sources.SideEffects, .. Doubts is null ? [] : new[] { Answers.Sources.Draws }];

    /// <inheritdoc/>
    public override IReadOnlyList<string> FigureIds => [CostFigure.Id];

    /// <inheritdoc/>
    public override JsonObject Facts => new()
    {
        ["load"] = Load,
        ["samples"] = Doubts?.Samples,
        ["seed"] = Doubts?.Seed,
        ["notes"] = TablesJson.Texts(Notes.Select(s => s.Text)),
        ["headlamp"] = TablesJson.Texts(Headlamp.Select(s => s.Text)),
        ["reminders"] = TablesJson.Texts(Reminders.SelectMany(r => r.Reminders).Select(s => s.Text)),
    };

    /// <inheritdoc/>
    public override Figure Figure(string id) => id == CostFigure.Id ? CostFigure.Of(Names, Load, Cars, Doubts) : base.Figure(id);

    // When a stop is first met, where the change moves that: cornering stands in no row.
    private IEnumerable<Sentence> FirstStops =>
        from k in Enumerable.Range(1, Cars.Length - 1)
        where Cars[k].Model.Rolls == Cars[0].Model.Rolls && Cars[k].Model.Load.Name == Cars[0].Model.Load.Name
        let stops = CureStopWords.Of([(Cars[0].Model.Load.Name, CureStance.Of(Cars[0].Model), CureStance.Of(Cars[k].Model))])
        where stops is not null
        select new Sentence(FormattableString.Invariant($"first-stops-{k}"), $"{Names[k]}: {stops}.");

    private string Vehicles => Cars.Any(c => c.Model.Rolls) ? "cars" : "motorcycles";

    private IReadOnlyList<string> Names => [.. Asked.Cars.Select(c => c.Name)];
}
