using System.Text.Json.Nodes;
using Heaveline.Answers;
using Heaveline.Figures;
using Heaveline.Tuning;

namespace Heaveline.Studies;

/// <summary>What a front–rear interconnection does in heave, pitch, roll and warp, and its price in braking.</summary>
public sealed record LinkAnswer : Answer
{
    /// <summary>What was asked.</summary>
    public required LinkAsked Asked { get; init; }

    /// <summary>The link on the bench.</summary>
    public required InterconnectionBench Bench { get; init; }

    /// <summary>The hump that it is tried on, in words.</summary>
    public required string Hump { get; init; }

    /// <summary>The crossings of the hump, by speed.</summary>
    public required IReadOnlyList<LinkCrossing> Crossings { get; init; }

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Head => [new("car", $"{Asked.Car.Name}, {Asked.Car.Load.Name}.")];

    /// <summary>The states of the link, its pipe where it has one, and what it does over the hump.</summary>
    public override IReadOnlyList<FactTable> Tables =>
    [
        LinkTable.States(Bench),
        .. Bench.Line is { } line ? new[] { LinkTable.Line(line) } : [],
        LinkTable.Hump(Hump, Crossings),
    ];

    /// <summary>What is wrong with the pipe.</summary>
    public override IReadOnlyList<string> Cautions => [.. Bench.Line?.Warnings ?? [], .. LinkWords.Flow(Crossings)];

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Sentences => [LinkWords.Shares(Bench), LinkWords.Price(Bench), .. LinkWords.Hump(Hump, Crossings)];

    /// <inheritdoc/>
    public override IReadOnlyList<string> Closing => [Studies.Cautions.Short];

    /// <inheritdoc/>
    public override IReadOnlyList<Source> Sources =>
        [Answers.Sources.Axes, Answers.Sources.Steps, Answers.Sources.Parts, Answers.Sources.SideEffects];

    /// <inheritdoc/>
    public override IReadOnlyList<string> FigureIds => [LinkFigure.Id];

    /// <inheritdoc/>
    public override Figure Figure(string id) =>
        id == LinkFigure.Id ? LinkFigure.Of(Asked.Car.Name, Asked.Car.Load.Name, Bench) : base.Figure(id);

    /// <inheritdoc/>
    public override JsonObject Facts => new() { ["car"] = Asked.Car.Name, ["load"] = Asked.Car.Load.Name, ["warnings"] = TablesJson.Texts(Cautions) };
}
