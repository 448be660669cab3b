using System.Collections.Immutable;
using System.Runtime.InteropServices;
using System.Text.Json.Nodes;
using Heaveline.Figures;

namespace Heaveline.Web.Charts;

/// <summary>
/// The charts and maps of a figure as a page's script draws them: their structure as JSON, and every number of their curves in one block of single
/// precision behind it, in the order in which the structure names them.
/// </summary>
/// <param name="Structure">Panels, axes, names, inks, spans; each curve says how many numbers it takes from the block.</param>
/// <param name="Numbers">Little-endian single-precision numbers.</param>
public sealed record ChartSheet(string Structure, byte[] Numbers)
{
    /// <summary>The chart and map panels of a figure. Scenes, categories and tables are shown by other means and left out.</summary>
    /// <param name="figure">The figure.</param>
    /// <param name="titled">Whether each chart bears its own title.</param>
    public static ChartSheet Of(Figure figure, bool titled = false)
    {
        ArgumentNullException.ThrowIfNull(figure);
        var block = new List<float>();
        var panels = new JsonArray();
        foreach (var panel in figure.Panels)
        {
            JsonObject? drawn = panel switch
            {
                ChartPanel chart => Chart(figure, chart, block, titled),
                MapPanel map => Map(map, block),
                _ => null,
            };
            if (drawn is not null)
            {
                panels.Add(drawn);
            }
        }

        var structure = new JsonObject { ["panels"] = panels, ["bands"] = Bands(figure.SharedBands), ["alt"] = figure.AltText };
        return new ChartSheet(structure.ToJsonString(), MemoryMarshal.AsBytes(CollectionsMarshal.AsSpan(block)).ToArray());
    }

    private static JsonObject Chart(Figure figure, ChartPanel panel, List<float> block, bool titled) => new()
    {
        ["kind"] = "chart",
        ["id"] = panel.Id,
        ["title"] = titled ? panel.Title : "",
        ["x"] = AxisOf(figure.XAxisOf(panel)),
        ["shared"] = panel.X is null,
        ["y"] = AxisOf(panel.Y),
        ["height"] = panel.Height,
        ["ribbons"] = Each(
            panel.Ribbons, ribbon => new JsonObject { ["ink"] = ribbon.Ink.ToString(), ["n"] = Put(block, ribbon.Xs, ribbon.Lows, ribbon.Highs) }),
        ["traces"] = Traces(panel.Traces, block),
        ["bands"] = Bands(panel.Bands),
        ["limits"] = Each(panel.Limits, limit => new JsonObject
        {
            ["at"] = limit.At,
            ["label"] = limit.Label,
            ["end"] = limit.End?.ToString(),
            ["upright"] = limit.Direction == LimitDirection.AtX,
        }),
        ["marks"] = Marks(panel.Marks),
        ["notes"] = Each(panel.Notes, note => new JsonObject { ["x"] = note.X, ["y"] = note.Y, ["text"] = note.Text }),
    };

    private static JsonObject Map(MapPanel panel, List<float> block) => new()
    {
        ["kind"] = "map",
        ["x"] = AxisOf(panel.X),
        ["y"] = AxisOf(panel.Y),
        ["value"] = AxisOf(panel.Value),
        ["height"] = panel.Height,
        ["middle"] = panel.Middle,
        ["levels"] = new JsonArray([.. panel.Levels.Select(level => (JsonNode)level)]),
        ["columns"] = panel.Grid.Xs.Length,
        ["rows"] = panel.Grid.Ys.Length,
        ["hatch"] = panel.Hatch is { } hatch ? new JsonObject { ["from"] = hatch.From, ["to"] = hatch.To, ["label"] = hatch.Label } : null,
        ["zones"] = Each(panel.Zones, zone => new JsonObject { ["label"] = zone.Label, ["isBetter"] = zone.IsBetter, ["runs"] = Runs(zone.Nodes) }),
        ["grid"] = Put(block, panel.Grid.Xs, panel.Grid.Ys, panel.Grid.Values),
        ["traces"] = Traces(panel.Traces, block),
        ["marks"] = Marks(panel.Marks),
    };

    private static JsonObject AxisOf(Axis axis) =>
        new() { ["label"] = axis.Label, ["unit"] = axis.Unit, ["from"] = axis.From, ["to"] = axis.To, ["log"] = axis.Scale == AxisScale.Logarithmic };

    private static JsonArray Traces(ImmutableArray<Trace> traces, List<float> block) => Each(traces, trace => new JsonObject
    {
        ["name"] = trace.Name,
        ["above"] = trace.Above,
        ["below"] = trace.Below,
        ["ink"] = trace.Pen.Ink.ToString(),
        ["dash"] = trace.Pen.Dash.ToString(),
        ["width"] = trace.Pen.Width,
        ["n"] = Put(block, trace.Xs, trace.Ys),
    });

    private static JsonArray Marks(ImmutableArray<Mark> marks) =>
        Each(marks, mark => new JsonObject
        {
            ["x"] = mark.X,
            ["y"] = mark.Y,
            ["label"] = mark.Label,
            ["low"] = mark.Low,
            ["high"] = mark.High,
            ["isHere"] = mark.IsHere,
            ["symbol"] = mark.Symbol.ToString(),
            ["ink"] = mark.Ink.ToString(),
        });

    private static JsonArray Bands(ImmutableArray<Band> bands) =>
        Each(bands, band => new JsonObject { ["from"] = band.From, ["to"] = band.To, ["label"] = band.Label, ["shade"] = band.Shade.ToString() });

    // Lengths of the runs of nodes outside and inside, outside first.
    private static JsonArray Runs(ImmutableArray<bool> nodes)
    {
        var runs = new JsonArray();
        for (var (at, inside) = (0, false); at < nodes.Length; inside = !inside)
        {
            var first = at;
            while (at < nodes.Length && nodes[at] == inside)
            {
                at++;
            }

            runs.Add(at - first);
        }

        return runs;
    }

    private static JsonArray Each<T>(ImmutableArray<T> items, Func<T, JsonObject> one) => new([.. items.Select(item => (JsonNode)one(item))]);

    private static int Put(List<float> block, params ReadOnlySpan<ImmutableArray<double>> columns)
    {
        foreach (var column in columns)
        {
            foreach (var value in column)
            {
                block.Add((float)value);
            }
        }

        return columns[0].Length;
    }
}
