using System.Runtime.InteropServices;
using System.Text.Json.Nodes;
using Heaveline.Figures;
using Heaveline.Web.Charts;

namespace Heaveline.Tests.Web;

public class ChartSheetTests
{
    [Fact]
    public void A_map_goes_with_its_zones_as_runs_and_its_points_with_their_doubt()
    {
        var sheet = Of(new MapPanel
        {
            X = new Axis { Label = "speed", Unit = "km/h" },
            Y = new Axis { Label = "ratio" },
            Value = new Axis { Label = "settling" },
            Grid = MapGrid.From([1.0, 2.0, 3.0], [0.5, 1.5], new[,] { { 1.0, double.NaN, double.NaN }, { 2.0, 3.0, double.NaN } }),
            Zones = [new MapZone { Label = "both bottom out", IsBetter = null, Nodes = [false, true, true, false, false, true] }],
            Marks = [new Mark { X = 2.0, Y = 1.0, Low = 0.9, High = 1.1, IsHere = true, Label = "driver" }],
        });
        var panel = sheet.Panel;
        Assert.Equal("[1,2,2,1]", panel["zones"]![0]!["runs"]!.ToJsonString());
        Assert.Equal((3, 2), ((int)panel["columns"]!, (int)panel["rows"]!));
        var mark = panel["marks"]![0]!;
        Assert.Equal((0.9, 1.1, true), ((double)mark["low"]!, (double)mark["high"]!, (bool)mark["isHere"]!));
        Assert.Equal([1f, 2f, 3f, 0.5f, 1.5f, 1f, float.NaN, float.NaN, 2f, 3f, float.NaN], sheet.Numbers);
    }

    [Fact]
    public void A_zone_that_begins_with_the_first_node_has_a_run_of_none_before_it()
    {
        var panel = Of(new MapPanel
        {
            X = new Axis { Label = "speed" },
            Y = new Axis { Label = "ratio" },
            Value = new Axis { Label = "settling" },
            Grid = MapGrid.From([1.0, 2.0], [0.5, 1.5], new[,] { { double.NaN, 1.0 }, { 2.0, 3.0 } }),
            Zones = [new MapZone { Label = "bottoms out", IsBetter = false, Nodes = [true, false, false, false] }],
        }).Panel;
        Assert.Equal("[0,1,3]", panel["zones"]![0]!["runs"]!.ToJsonString());
    }

    [Fact]
    public void A_border_of_classes_says_what_lies_on_both_of_its_sides()
    {
        var panel = Of(new ChartPanel
        {
            X = new Axis { Label = "spatial frequency" },
            Y = new Axis { Label = "density" },
            Traces = [Trace.From("B/C", [1.0, 2.0], [4.0, 1.0]) with { Below = "B", Above = "C" }, Trace.From("left", [1.0, 2.0], [3.0, 2.0])],
        }).Panel;
        Assert.Equal(["C", ""], panel["traces"]!.AsArray().Select(trace => (string?)trace!["above"]));
        Assert.Equal(["B", ""], panel["traces"]!.AsArray().Select(trace => (string?)trace!["below"]));
    }

    private static (JsonNode Panel, float[] Numbers) Of(Panel panel)
    {
        var sheet = ChartSheet.Of(new Figure { Title = "Map", AltText = "A map.", Caption = "", Size = FigureSize.Page, Panels = [panel] });
        return (JsonNode.Parse(sheet.Structure)!["panels"]![0]!, MemoryMarshal.Cast<byte, float>(sheet.Numbers).ToArray());
    }
}
