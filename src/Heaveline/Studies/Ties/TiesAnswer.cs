using System.Text.Json.Nodes;
using Heaveline.Answers;
using Heaveline.Figures;
using Heaveline.Ties;

namespace Heaveline.Studies;

/// <summary>What cable ties say of a car, and what they cannot.</summary>
public sealed record TiesAnswer : Answer
{
    /// <summary>What was asked.</summary>
    public required TiesAsked Asked { get; init; }

    /// <summary>The fit.</summary>
    public required TieFit Fit { get; init; }

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Head => [new("ties", TiesWords.Head(Asked))];

    /// <inheritdoc/>
    public override IReadOnlyList<FactTable> Tables =>
        [TiesTable.Car(Fit), .. Fit.IsBelieved ? new[] { TiesTable.Learned(Fit) } : [], TiesTable.Readings(Fit)];

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Sentences => [.. TiesWords.Of(Fit)];

    /// <inheritdoc/>
    public override IReadOnlyList<string> Cautions => [.. TiesWords.Cautions(Fit)];

    /// <inheritdoc/>
    public override IReadOnlyList<string> Closing => [TiesWords.Meaning, TiesWords.Safety];

    /// <inheritdoc/>
    public override IReadOnlyList<Source> Sources => [Answers.Sources.Axes, Answers.Sources.Doubts];

    /// <inheritdoc/>
    public override IReadOnlyList<string> FigureIds => [TiesFigure.Id];

    /// <inheritdoc/>
    public override JsonObject Facts => new()
    {
        ["car"] = Asked.Car.Car.Name,
        ["load"] = Asked.Car.Load.Name,
        ["road"] = Asked.Road.Name,
        ["verdict"] = Fit.IsBelieved ? Fit.Estimates.Any(e => e.IsSaid) ? "said" : "cannot-say" : "misfit",
        ["chance"] = Fit.Chance,
        ["swapped"] = Fit.FitsSwapped,
        ["numbers"] = new JsonArray([.. Fit.Estimates.Select((e, i) => (JsonNode)new JsonObject
        {
            ["key"] = TiesTable.Of(e).Key,
            ["said"] = e.IsSaid,
            ["why-not"] = e.IsSaid ? null : TiesWords.Why(e.Refusal),
            ["learned"] = Fit.IsBelieved ? e.Learned : null,
            ["correlations"] = Fit.IsBelieved ? new JsonArray([.. Fit.Correlations[i].Select(c => (JsonNode)JsonValue.Create(c))]) : null,
        })]),
        ["advice"] = Fit.Advice is { } more
            ? new JsonObject { ["speed-km-h"] = Quantities.In.KilometresPerHour.Of(more.Speed), ["learned"] = more.Learned }
            : null,
        ["sentences"] = TablesJson.Texts([.. Sentences.Select(s => s.Text), .. Cautions, .. Closing]),
    };

    /// <inheritdoc/>
    public override Figure Figure(string id) => id == TiesFigure.Id ? TiesFigure.Of(Asked, Fit) : base.Figure(id);

    /// <summary>What is said as a variant of the car file, in UTF-8.</summary>
    public override byte[] Csv() => TiesVariant.Of(Asked, Fit);

    /// <inheritdoc/>
    protected override bool TellsFirst => true;
}
