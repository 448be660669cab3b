using System.Text.Json.Nodes;
using Heaveline.Answers;
using Heaveline.Figures;
using Heaveline.Quantities;
using Heaveline.Tuning;

namespace Heaveline.Studies;

/// <summary>What a front–rear interconnection does in heave, pitch, roll and warp, and its price in braking.</summary>
public sealed record LinkAnswer : Answer
{
    /// <summary>What was asked.</summary>
    public required LinkAsked Asked { get; init; }

    /// <summary>The link on the bench.</summary>
    public required InterconnectionBench Bench { get; init; }

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Head => [new("car", $"{Asked.Car.Name}, {Asked.Car.Load.Name}.")];

    /// <summary>The states of the link, and its pipe where it has one.</summary>
    public override IReadOnlyList<FactTable> Tables =>
        Bench.Line is { } line ? [LinkTable.States(Bench), LinkTable.Line(line)] : [LinkTable.States(Bench)];

    /// <summary>What is wrong with the pipe.</summary>
    public override IReadOnlyList<string> Cautions => Bench.Line?.Warnings ?? [];

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Sentences =>
    [
        new("shares", FormattableString.Invariant(
            $"The link carries {In.Percent.Of(Bench.HeaveShare):F0} % of the stiffness in heave ")
            + FormattableString.Invariant($"and {In.Percent.Of(Bench.PitchShare):F0} % in pitch. ")
            + "Shared springs shorten the settling; what they do not resist in pitch is missing in braking too."),
    ];

    /// <inheritdoc/>
    public override IReadOnlyList<string> Closing => [Studies.Cautions.Short];

    /// <inheritdoc/>
    public override IReadOnlyList<Source> Sources => [Answers.Sources.Axes, Answers.Sources.SideEffects];

    /// <inheritdoc/>
    public override IReadOnlyList<string> FigureIds => [LinkFigure.Id];

    /// <inheritdoc/>
    public override Figure Figure(string id) =>
        id == LinkFigure.Id ? LinkFigure.Of(Asked.Car.Name, Asked.Car.Load.Name, Bench) : base.Figure(id);

    /// <inheritdoc/>
    public override JsonObject Facts => new() { ["car"] = Asked.Car.Name, ["load"] = Asked.Car.Load.Name, ["warnings"] = TablesJson.Texts(Cautions) };
}
