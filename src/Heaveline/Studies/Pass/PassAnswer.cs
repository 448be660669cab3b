using System.Text.Json.Nodes;
using Heaveline.Answers;
using Heaveline.Figures;
using Heaveline.Measures;
using Heaveline.Measures.Comfort;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>What happened in one pass: the hit and the settling apart, seats, travel, grip, headlamp.</summary>
public sealed record PassAnswer : Answer
{
    /// <summary>Figure of all that happened, over time.</summary>
    public const string Traces = "pass";

    /// <summary>Figure of what the comfort standard counts of the seat; only where one was asked for.</summary>
    public const string Comfort = "comfort";

    /// <summary>What the car is called beside others.</summary>
    public required string Name { get; init; }

    /// <summary>The pass.</summary>
    public required Pass Pass { get; init; }

    /// <summary>Its numbers.</summary>
    public required PassMeasures Measures { get; init; }

    /// <summary>What the comfort standard makes of the seat; null where none was asked for, or the pass broke off.</summary>
    public PassComfort? AtSeat { get; init; }

    /// <summary>How the pass is run once more for its traces where they are taken away; null: they are those of the pass itself.</summary>
    public PassOptions? CsvOptions { get; init; }

    /// <summary>Car and load.</summary>
    public RideModel Model => Pass.Model;

    /// <summary>Whether it ran to its end: a pass that broke off has no settling to speak of, its sentences and its traces only.</summary>
    public bool IsWhole => Pass.Outcome == PassOutcome.Completed;

    /// <inheritdoc/>
    public override IReadOnlyList<FactTable> Tables => !IsWhole ? [] : [Table(), .. AtSeat is null ? [] : new[] { ComfortTable.Of(AtSeat) }];

    /// <inheritdoc/>
    public override IReadOnlyList<FactTable> ShortTables =>
        !IsWhole ? [] : [PassTable.Short("Pass", [Model.Load.Name], [(Pass, Measures)]), .. Tables.Skip(1)];

    /// <summary>What happened, and what the standard makes of the seat.</summary>
    public override IReadOnlyList<Sentence> Sentences => [.. PassStory.Of(Pass, Measures), .. AtSeat is null ? [] : ComfortTable.Words(AtSeat)];

    /// <summary>Where dampers and linkages are driven past what was measured of them.</summary>
    public override IReadOnlyList<string> Cautions => [.. MeasuredEnd.In(Pass).Select(end => end.Sentence)];

    /// <inheritdoc/>
    public override IReadOnlyList<string> Closing =>
        [
            FormattableString.Invariant(
                $"Computed by {Pass.Statistics.Method}: {Pass.Statistics.Steps} steps of {In.Milliseconds.Of(Pass.Statistics.Step):F3} ms."),
            Studies.Cautions.Short,
        ];

    /// <inheritdoc/>
    public override IReadOnlyList<Source> Sources =>
    [
        Answers.Sources.Axes, Answers.Sources.Steps, Answers.Sources.Parts,
        .. AtSeat is null ? [] : new[] { Answers.Sources.Comfort, Answers.Sources.Weightings },
    ];

    /// <inheritdoc/>
    public override IReadOnlyList<string> FigureIds => AtSeat is null ? [Traces] : [Comfort, Traces];

    /// <inheritdoc/>
    public override string? Failure => IsWhole ? null : $"the pass stopped. {Pass.OutcomeSentence}";

    /// <inheritdoc/>
    public override JsonObject Facts => new()
    {
        ["car"] = Model.Car.Name,
        ["load"] = Model.Load.Name,
        ["road"] = Pass.Road.Caption,
        ["outcome"] = Pass.Outcome.ToString(),
        ["method"] = Pass.Statistics.Method,
        ["step"] = Pass.Statistics.Step,
        ["steps"] = Pass.Statistics.Steps,
        ["story"] = TablesJson.Texts(Sentences.Select(s => s.Text)),
        ["cautions"] = TablesJson.Texts(Cautions),
    };

    /// <summary>The story comes before its numbers.</summary>
    protected override bool TellsFirst => true;

    /// <inheritdoc/>
    /// <exception cref="Quantities.RefusedValueException">The pass broke off before there were two samples to draw.</exception>
    public override Figure Figure(string id) => id switch
    {
        Traces => PassFigure.Of(Pass, Measures),
        Comfort when AtSeat is not null => ComfortCountFigure.Of(Pass, AtSeat),
        _ => base.Figure(id),
    };

    /// <summary>All traces over time, recorded as was asked for. The numbers are those of the pass, however its traces are recorded.</summary>
    public override byte[] Csv() => TraceCsv.Of(CsvOptions is { } options ? Pass.Of(Model, Pass.Road, Pass.Speed, options) : Pass);

    private FactTable Table() => PassTable.Of("Pass", [Model.Load.Name], [(Pass, Measures)]);
}
