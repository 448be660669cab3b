using Heaveline.Cars;
using Heaveline.Figures;
using Heaveline.Models;
using Heaveline.Quantities;

namespace Heaveline.Tests.Figures;

public class FigureInUnitsTests
{
    private static readonly Figure Drawn = new()
    {
        Title = "A car at 50 km/h",
        AltText = "A curve up to 254 mm.",
        SharedX = new Axis { Label = "speed", Unit = "km/h", From = 0.0, To = 160.9344 },
        SharedBands = [new Band { From = 16.09344, To = 32.18688, Label = "to 32 km/h" }],
        Panels =
        [
            new ChartPanel
            {
                Y = new Axis { Label = "travel", Unit = "mm" },
                Traces = [Trace.From("front", [0.0, 160.9344], [0.0, 254.0])],
                Limits = [new Limit { At = 50.8, Label = "stop at 50.8 mm" }],
                Notes = [new Note { X = 16.09344, Y = 25.4, Text = "25.4 mm" }],
            },
        ],
    };

    [Fact]
    public void Curves_limits_bands_and_words_are_turned_together()
    {
        var turned = Drawn.In(ReaderUnits.Imperial);
        var panel = Assert.IsType<ChartPanel>(Assert.Single(turned.Panels));
        Assert.Equal(("mph", "in"), (turned.SharedX!.Unit, panel.Y.Unit));
        Assert.Equal(100.0, turned.SharedX.To!.Value, 1e-9);
        Assert.Equal([0.0, 100.0], panel.Traces[0].Xs.Select(x => Math.Round(x, 9)));
        Assert.Equal([0.0, 10.0], panel.Traces[0].Ys.Select(y => Math.Round(y, 9)));
        Assert.Equal((2.0, "stop at 2.000 in"), (Math.Round(panel.Limits[0].At, 9), panel.Limits[0].Label));
        Assert.Equal((10.0, 1.0), (Math.Round(panel.Notes[0].X, 9), Math.Round(panel.Notes[0].Y, 9)));
        Assert.Equal((10.0, 20.0), (Math.Round(turned.SharedBands[0].From, 9), Math.Round(turned.SharedBands[0].To, 9)));
        Assert.Equal(("A car at 31.1 mph", "A curve up to 10.00 in."), (turned.Title, turned.AltText));
    }

    [Fact]
    public void A_metric_reader_gets_the_figure_itself() => Assert.Same(Drawn, Drawn.In(ReaderUnits.Metric));

    [Fact]
    public void A_row_with_a_unit_of_its_own_is_turned_with_its_doubts()
    {
        var table = new TablePanel
        {
            Columns = [new TableColumn { Heading = "quantity" }, new TableColumn { Heading = "unit" }, new TableColumn { Heading = "empty" }],
            Rows = [TableRow.Of("mass", "kg", "1360.0 ± 2.8") with { Unit = "kg" }, TableRow.Of("ratio", "–", "1.13") with { Unit = "–" }],
        };
        var turned = table.In(ReaderUnits.Imperial);
        Assert.Equal(["mass", "lb", "2998.3 ± 6.2"], turned.Rows[0].Cells);
        Assert.Equal(["ratio", "–", "1.13"], turned.Rows[1].Cells);
    }

    // Whole and to scale: the bar is as long as it says.
    [Fact]
    public void A_scale_bar_is_whole_feet_long()
    {
        var scene = Assert.Single(
            LoadStatesFigure.Of([RideModel.Of(PlainCar.Saloon, LoadState.Reference)]).In(ReaderUnits.Imperial).Panels.OfType<ScenePanel>());
        Assert.Matches("^[1-9] ft$", scene.ScaleLabel);
        Assert.Equal(0.3048 * (scene.ScaleLabel[0] - '0'), scene.ScaleBar!.Value, 1e-12);
    }
}
