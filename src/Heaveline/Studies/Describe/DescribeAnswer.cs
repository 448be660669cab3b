using System.Text.Json.Nodes;
using Heaveline.Answers;
using Heaveline.Doubts;
using Heaveline.Figures;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>How a car stands and swings, a column a load state.</summary>
public sealed record DescribeAnswer : Answer
{
    /// <summary>Figure of the car at its load states, over a table of them.</summary>
    public const string LoadStates = "load-states";

    /// <summary>Figure of the body's two modes under the first load state in the file.</summary>
    public const string Modes = "modes";

    /// <summary>What a column or a table of doubts by slopes is called.</summary>
    internal const string PlusMinus = "± (2σ)";

    /// <summary>What was asked.</summary>
    public required DescribeAsked Asked { get; init; }

    /// <summary>The car at rest under each load that it can bear; none only where unbearable loads are left out.</summary>
    public required IReadOnlyList<CarAtRest> Rests { get; init; }

    /// <summary>Loads that it cannot bear, each with the reason.</summary>
    public IReadOnlyList<string> Unbearable { get; init; } = [];

    /// <summary>
    /// Doubts by slopes under each load, in the order of <see cref="RestCatalogue.All"/>; empty where none were asked for, or are not there yet.
    /// </summary>
    public IReadOnlyList<FirstOrder> Slopes { get; init; } = [];

    /// <summary>A number's doubt by slopes; only where <see cref="Slopes"/> are there.</summary>
    /// <param name="measure">One of <see cref="RestCatalogue.All"/>.</param>
    /// <param name="load">Place of the load among <see cref="Rests"/>.</param>
    public FirstOrderResult SlopesOf(Measure<CarAtRest> measure, int load) =>
        Slopes[load].Results[RestCatalogue.All.Index().First(m => m.Item == measure).Index];

    /// <summary>The numbers with a value under at least one load, part by part, with their doubts by slopes.</summary>
    public IReadOnlyList<(string Title, IReadOnlyList<DoubtedRow> Rows)> Rows =>
        [.. RestCatalogue.Groups.Select(g => (g.Title, (IReadOnlyList<DoubtedRow>)[.. g.Measures.Select(Row).OfType<DoubtedRow>()]))];

    /// <summary>Why the doubts cannot be followed by slopes; null where they can, or were not asked for.</summary>
    public string? NoSlopes { get; init; }

    /// <summary>Intervals within the stated doubts under each load; empty where none were asked for.</summary>
    public IReadOnlyList<JointStudy> Doubts { get; init; } = [];

    /// <summary>The car under each load.</summary>
    public IReadOnlyList<RideModel> Models => [.. Rests.Select(r => r.Model)];

    /// <summary>The car under the load that its modes are shown for: the first load state in the file where that is among them.</summary>
    public RideModel ModesModel => ModesRest.Model;

    private CarAtRest ModesRest => Rests.FirstOrDefault(r => r.Model.Load.Loads.Count > 0) ?? Rests[0];

    /// <summary>All damped modes under that load: those that swing, then those that creep back.</summary>
    public IReadOnlyList<FactTable> ModesTables => ModesTable.Of(ModesModel);

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Head => [new("car", Asked.Car.Name)];

    /// <summary>Standing, axles, body; the wheels, the modes and the intervals where they were asked for.</summary>
    public override IReadOnlyList<FactTable> Tables => Rests.Count == 0
        ? []
        : [
            .. DescribeTable.Of(Rests),
            .. Asked.WithWheels ? [DescribeTable.Wheels(Rests)] : Array.Empty<FactTable>(),
            .. Asked.WithModes ? ModesTables : [],
            .. Doubts.SelectMany((study, k) => Intervals(Rests[k].Model, study)),
        ];

    /// <summary>The doubts by slopes too, where there are any: of each part a table, in the part's units.</summary>
    public override IReadOnlyList<FactTable> WholeTables => Slopes.Count == 0 ? Tables : [.. Tables, .. Rows.Select(Doubted)];

    /// <inheritdoc/>
    public override IReadOnlyList<string> Cautions => Unbearable;

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Sentences => Rests.Count == 0
        ? []
        : [
            .. Doubts.Count == 0 ? [] : new[] { new Sentence("doubts", DoubtTables.Words(Doubts[^1], several: false)) },
            .. Unended,
            .. DescribeNotes.Of(Rests),
        ];

    private IEnumerable<Sentence> Unended => Doubts
        .SelectMany((study, k) => DoubtTables.Unended(FirstLetter.Raised(Rests[k].Model.Load.Name), study.Cars[0]))
        .Select(sentence => new Sentence("doubts-unended", sentence));

    /// <inheritdoc/>
    public override IReadOnlyList<string> Closing => [Studies.Cautions.Short];

    /// <inheritdoc/>
    public override IReadOnlyList<Source> Sources =>
    [
        Answers.Sources.Axes, Answers.Sources.Terms, Answers.Sources.Modes,
        .. Slopes.Count > 0 ? [Answers.Sources.Doubts] : Array.Empty<Source>(),
        .. Doubts.Count > 0 ? [Answers.Sources.Draws] : Array.Empty<Source>(),
    ];

    /// <inheritdoc/>
    public override IReadOnlyList<string> FigureIds => Rests.Count == 0 ? [] : Asked.WithModes ? [Modes, LoadStates] : [LoadStates, Modes];

    /// <inheritdoc/>
    public override JsonObject Facts =>
        new() { ["car"] = Asked.Car.Name, ["notes"] = TablesJson.Texts([.. Unbearable, .. Sentences.Select(s => s.Text), .. Closing]) };

    /// <inheritdoc/>
    public override Figure Figure(string id) => id switch
    {
        LoadStates when Rests.Count > 0 => LoadStatesFigure.Of(Models),
        Modes when Rests.Count > 0 => ModesFigure.Of(ModesModel, ModesRest.Modes),
        _ => base.Figure(id),
    };

    /// <summary>The numbers of every part, each load state with its doubt beside it.</summary>
    public override byte[] Csv() => DescribeCsv.Of(this);

    private DoubtedRow? Row(Measure<CarAtRest> measure)
    {
        double[] values = [.. Rests.Select(measure.Of)];
        return measure.IsNothing(values)
            ? null
            : new(
                measure,
                [.. values.Select((si, load) => measure.Shown(si) is { } shown ? new DoubtedNumber(shown, HalfWidth(measure, load)) : null)]);
    }

    private double HalfWidth(Measure<CarAtRest> measure, int load) =>
        Slopes.Count > 0 && SlopesOf(measure, load).StandardDeviation is var deviation && double.IsFinite(deviation)
            ? 2.0 * measure.Unit.Of(deviation)
            : 0.0;

    private FactTable Doubted((string Title, IReadOnlyList<DoubtedRow> Rows) part) => part.Rows.Aggregate(
        new FactTable($"{part.Title}, {PlusMinus}", [.. Models.Select(m => m.Load.Name)]),
        (table, row) => table.Add(
            row.Measure.Key, row.Measure.Label, row.Measure.Unit.Symbol, row.Measure.Format, row.Cells.Select(cell => cell?.HalfWidth)));

    private IEnumerable<FactTable> Intervals(RideModel model, JointStudy study) =>
        DoubtTables.Of(model.Load.Name, [model.Car.Name], RestCatalogue.All, study);
}
