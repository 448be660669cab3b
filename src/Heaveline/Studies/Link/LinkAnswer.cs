using System.Text.Json.Nodes;
using Heaveline.Answers;
using Heaveline.Figures;
using Heaveline.Passes;
using Heaveline.Tuning;

namespace Heaveline.Studies;

/// <summary>What a front–rear interconnection does in heave, pitch, roll and warp, and its price in braking.</summary>
public sealed record LinkAnswer : Answer
{
    /// <summary>Id of the figure of the bench.</summary>
    public const string Bars = LinkFigure.Id;

    /// <summary>Id of the figure of two passes.</summary>
    public const string Traces = "traces";

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

    /// <summary>What is wrong with the pipe, and what a link that is tried does that no cure may do.</summary>
    public override IReadOnlyList<string> Cautions =>
        [.. Bench.Line?.Warnings ?? [], .. LinkGuards.Cautions(Asked, Hump, Crossings), .. LinkWords.Flow(Hump, Crossings)];

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Sentences =>
    [
        LinkWords.Shares(Bench), LinkWords.Price(Bench), .. LinkWords.Hump(Hump, Crossings), .. LinkGuards.Reminders(Asked),
    ];

    /// <inheritdoc/>
    public override IReadOnlyList<string> Closing => Asked.Before is null ? [Studies.Cautions.Short] : Studies.Cautions.All;

    /// <inheritdoc/>
    public override IReadOnlyList<Source> Sources =>
        [Answers.Sources.Axes, Answers.Sources.Steps, Answers.Sources.Parts, Answers.Sources.SideEffects];

    /// <inheritdoc/>
    public override IReadOnlyList<string> FigureIds => IsDrawn ? [Bars, Traces] : [Bars];

    // A pass that broke off at once leaves nothing to draw.
    private bool IsDrawn => Drawn.With.Count > 1 && Drawn.Separate is not { Count: < 2 };

    /// <summary>The crossing that is drawn over time: at the speed asked for, else at the middle one.</summary>
    public LinkCrossing Drawn => Asked.Drawn is { } speed && Crossings.FirstOrDefault(c => Math.Abs(c.Speed - speed) < 1e-9) is { } asked
        ? asked : Crossings[Crossings.Count / 2];

    /// <inheritdoc/>
    public override Figure Figure(string id) => id switch
    {
        Bars => LinkFigure.Of(Asked.Car.Name, Asked.Car.Load.Name, Bench),
        Traces => IsDrawn ? LinkFigure.Of(Drawn) : throw new RunFailedException(
            $"At {Drawn.SpeedWords} km/h the passes cannot be drawn.", Drawn.With.OutcomeSentence),
        _ => base.Figure(id),
    };

    /// <inheritdoc/>
    public override JsonObject Facts => new() { ["car"] = Asked.Car.Name, ["load"] = Asked.Car.Load.Name, ["warnings"] = TablesJson.Texts(Cautions) };
}
