using System.Text.Json.Nodes;
using Heaveline.Answers;
using Heaveline.Figures;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Studies;

/// <summary>How rough a road is, or which roads have a short name.</summary>
public sealed record RoadAnswer : Answer
{
    /// <summary>Figure of the heights and their spectrum.</summary>
    public const string Heights = "road";

    /// <summary>What was asked.</summary>
    public required RoadAsked Asked { get; init; }

    /// <summary>The roughness of its one track, or of the left and the right; empty where no road was named.</summary>
    public required IReadOnlyList<RoadRoughness> Tracks { get; init; }

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Head => Asked.Road is { } road ? [new("road", road.Caption)] : [];

    /// <inheritdoc/>
    public override IReadOnlyList<FactTable> Tables => Asked.Road is { } road ? [RoadTable.Of(road, Tracks)] : [];

    /// <summary>What cannot be said of it, and why.</summary>
    public override IReadOnlyList<string> Cautions => [.. Tracks.SelectMany(t => t.Refused).Distinct()];

    /// <inheritdoc/>
    public override IReadOnlyList<Source> Sources => [Answers.Sources.RoadClasses];

    /// <inheritdoc/>
    public override IReadOnlyList<string> FigureIds => Asked.Road is null ? [] : [Heights];

    /// <inheritdoc/>
    public override JsonObject Facts => Asked.Road is { } road
        ? new JsonObject { ["road"] = road.Caption, ["refused"] = TablesJson.Texts(Cautions) }
        : new JsonObject
        {
            ["roads"] = new JsonArray([.. Asked.Known.Select(r => (JsonNode)new JsonObject { ["name"] = r.Name, ["what"] = r.Caption })]),
        };

    /// <inheritdoc/>
    public override IEnumerable<string> LinesIn(ReaderUnits units) =>
        Asked.Road is { } road ? [units.Text(road.Caption), .. TableLines(Tables, units), .. Cautions.Select(units.Text)] : Names.Select(units.Text);

    /// <inheritdoc/>
    public override Figure Figure(string id) =>
        id == Heights && Asked.Road is { } road ? RoadFigure.Of(road, Tracks[0], Tracks.Count > 1 ? Tracks[1] : null) : base.Figure(id);

    /// <summary>The heights, in the form that measured profiles are read in.</summary>
    public override byte[] Csv() => Asked.Road is { } road ? HeightsCsv.Of(road) : base.Csv();

    private IEnumerable<string> Names
    {
        get
        {
            var width = Asked.Known.Select(r => r.Name.Length).DefaultIfEmpty().Max();
            return
            [
                .. Asked.Known.Select(r => $"{r.Name.PadRight(width)}  {r.Caption}"),
                "",
                "Give one of these names after --road, or the path of a road file or of a measured profile (CSV).",
            ];
        }
    }
}
