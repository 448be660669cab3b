using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Heaveline.Answers;
using Heaveline.Drives.Planning;
using Heaveline.Figures;
using Heaveline.Modes;

namespace Heaveline.Studies;

/// <summary>Rows of planks that leave almost only one motion of a car.</summary>
public sealed record PlankAnswer : Answer
{
    /// <summary>Figure of the rows with the motion that follows.</summary>
    public const string Drawing = "planks";

    /// <summary>A motion is had almost alone where it keeps at least so much of the energy (–). A choice of words.</summary>
    public const double Almost = 0.8;

    /// <summary>Pitch is called alone where it keeps at least so much (–), below that mostly pitch. A choice of words.</summary>
    public const double Alone = 0.9;

    /// <summary>What was asked.</summary>
    public required PlankAsked Asked { get; init; }

    /// <summary>The purest safe row for each goal that has any.</summary>
    public required ImmutableArray<PlankFind> Finds { get; init; }

    /// <summary>The rows that leave almost only what is wanted, in every one of their passes and by the closed form.</summary>
    public ImmutableArray<PlankFind> Proposed => [.. Finds.Where(f => Math.Min(f.LeastShare, f.LinearShare) >= Almost)];

    /// <summary>The car's body modes.</summary>
    public required BodyModes Modes { get; init; }

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Head => [new("car", $"{Asked.Car.Name}, {Asked.Car.Load.Name}: {Words.Modes}.")];

    /// <inheritdoc/>
    public override IReadOnlyList<FactTable> Tables =>
        Proposed.IsEmpty ? [] : [PlankTable.Of([.. Proposed.Select(Words.Name)], Proposed)];

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Sentences => [.. Enum.GetValues<PlankGoal>().SelectMany(Words.Of), .. Words.Notes];

    /// <inheritdoc/>
    public override IReadOnlyList<string> Cautions => Proposed.IsEmpty ? [] : PlankWords.Limits;

    /// <inheritdoc/>
    public override IReadOnlyList<string> Closing =>
        [.. Proposed.IsEmpty ? [] : PlankWords.Safety, Asked.Car.Model.Rolls ? DriveWords.Safety : DriveWords.RiderSafety];

    /// <inheritdoc/>
    public override IReadOnlyList<Source> Sources => [Answers.Sources.Axes, Answers.Sources.Modes, Answers.Sources.Steps];

    /// <inheritdoc/>
    public override IReadOnlyList<string> FigureIds => [Drawing];

    /// <inheritdoc/>
    public override JsonObject Facts => new()
    {
        ["car"] = Asked.Car.Name,
        ["load"] = Asked.Car.Load.Name,
        ["rows"] = new JsonArray([.. Finds.Select(f => (JsonNode)new JsonObject
        {
            ["wanted"] = Words.Name(f.Goal),
            ["proposed"] = Proposed.Contains(f),
            ["speed"] = f.Speed,
            ["share"] = f.Share,
            ["least-share"] = f.LeastShare,
            ["linear-share"] = f.LinearShare,
            ["places"] = new JsonArray([.. f.Layout.Places.Select(p => (JsonNode)new JsonObject
            {
                ["start"] = p.Start, ["length"] = p.Length, ["height"] = p.Height, ["edge"] = p.Edge, ["along"] = p.IsAlong,
                ["side-by-side"] = p.SideBySide, ["layers"] = p.Layers, ["board"] = p.Size.Words,
            })]),
        })]),
        ["sentences"] = TablesJson.Texts(Sentences.Select(s => s.Text)),
        ["cautions"] = TablesJson.Texts([.. Cautions, .. Closing]),
    };

    /// <inheritdoc/>
    public override Figure Figure(string id) => (id, Proposed) switch
    {
        (Drawing, []) => SentenceFigure.Of("No row of planks", [.. Sentences.Select(s => s.Text)]),
        (Drawing, var rows) => PlankFigure.Of($"{Asked.Car.Name}, {Asked.Car.Load.Name}", [.. rows.Select(f => (Words.Name(f), f))]),
        _ => base.Figure(id),
    };

    private PlankWords Words => new(this);
}
