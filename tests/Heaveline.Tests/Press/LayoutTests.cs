using Heaveline.Figures;
using Heaveline.Press;
using Heaveline.Press.Curves;
using Heaveline.Press.Paper;
using Heaveline.Press.Plates;
using Heaveline.Quantities;

namespace Heaveline.Tests.Press;

public class LayoutTests
{
    public static TheoryData<string> Names => [.. Samples.All.Select(sample => sample.Name)];

    [Theory, MemberData(nameof(Names))]
    public void No_text_is_cut_off_and_none_overlaps_another(string name)
    {
        var setting = new FigureSetting(Samples.All.Single(sample => sample.Name == name).Figure);
        var sheet = new RecordedSheet();
        setting.Draw(sheet);
        var page = new Box(0.0, 0.0, setting.Width, setting.Height);
        Assert.NotEmpty(sheet.Texts);
        Assert.All(sheet.Texts, text => Assert.True(page.Holds(text.Room), $"'{text.Text}' leaves the sheet: {text.Room}"));
        Assert.All(sheet.Spots, spot => Assert.True(page.Grown(0.5).Holds(new Box(spot.X, spot.Y, spot.X, spot.Y)), $"{spot} leaves the sheet"));
        for (var i = 0; i < sheet.Texts.Count; i++)
        {
            foreach (var other in sheet.Texts.Skip(i + 1).Where(other => other.Room.Overlaps(sheet.Texts[i].Room)))
            {
                Assert.Fail($"'{sheet.Texts[i].Text}' overlaps '{other.Text}'");
            }
        }
    }

    [Fact]
    public void Only_the_lowest_panel_on_a_shared_axis_is_headed_and_shared_bands_are_named_once()
    {
        var sheet = new RecordedSheet();
        new FigureSetting(Samples.Pass(FigureSize.Page)).Draw(sheet);
        var heading = Assert.Single(sheet.Texts, text => text.Text == "time after first contact (s)");
        Assert.Single(sheet.Texts, text => text.Text == "hit");
        Assert.Single(sheet.Texts, text => text.Text == "settling");
        Assert.True(heading.Room.Top > sheet.Texts.Single(text => text.Text == "suspension travel (mm)").Room.Bottom);
    }

    [Fact]
    public void A_limit_beyond_the_range_is_named_at_the_edge_with_an_arrow()
    {
        var sheet = new RecordedSheet();
        new FigureSetting(Samples.Pass(FigureSize.Page)).Draw(sheet);
        Assert.Contains(sheet.Texts, text => text.Text == "↓ rebound stop");
        Assert.Contains(sheet.Texts, text => text.Text == "bump stop");
    }

    [Fact]
    public void Names_that_do_not_fit_at_the_curves_go_into_a_row_above()
    {
        var figure = new Figure
        {
            Title = "crowded", AltText = "Twenty curves.",
            Panels =
            [
                new ChartPanel
                {
                    X = new Axis { Label = "x" }, Y = new Axis { Label = "y" }, Height = 25.0,
                    Traces = [.. Enumerable.Range(0, 20).Select(i => Trace.From($"curve {i}", [0, 1], [0, i]))],
                },
            ],
        };
        var sheet = new RecordedSheet();
        new FigureSetting(figure).Draw(sheet);
        var names = sheet.Texts.Where(text => text.Text.StartsWith("curve", StringComparison.Ordinal)).ToArray();
        Assert.Equal(20, names.Length);
        var tick = sheet.Texts.Where(text => text.Text == "20").Min(text => text.Room.Top);
        Assert.All(names, one => Assert.True(one.Room.Bottom < tick + 8.0));
    }

    [Fact]
    public void A_scene_has_one_scale_in_both_directions()
    {
        var figure = new Figure
        {
            Title = "square", AltText = "A square of one metre.",
            Panels = [new ScenePanel
            {
                XFrom = -1,
                XTo = 3,
                ZFrom = 0,
                ZTo = 2,
                Shapes = [new LineShape { Closed = true, Points = [new(0, 0.5), new(1, 0.5), new(1, 1.5), new(0, 1.5)] }],
            }],
        };
        var sheet = new RecordedSheet();
        new FigureSetting(figure).Draw(sheet);
        var square = sheet.Spots.TakeLast(4).ToArray();
        Assert.Equal(square[1].X - square[0].X, square[1].Y - square[2].Y, 9);
        Assert.True(square[2].Y < square[1].Y);
    }

    [Fact]
    public void A_logarithmic_axis_that_reaches_zero_is_refused_by_name()
    {
        var figure = new Figure
        {
            Title = "t", AltText = "a",
            Panels = [new ChartPanel
            {
                X = new Axis { Label = "frequency", From = 0, To = 10, Scale = AxisScale.Logarithmic },
                Y = new Axis { Label = "y" },
            }],
        };
        Assert.Contains("frequency", Assert.Throws<RefusedValueException>(() => Svg.Of(figure)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Flat_empty_and_single_point_curves_can_be_drawn()
    {
        foreach (var trace in new[]
        {
            Trace.From("flat", [0, 1], [5, 5]),
            Trace.From("empty", [], []),
            Trace.From("point", [2], [3]),
            Trace.From("gap", [0, 1], [double.NaN, double.NaN]),
        })
        {
            var panel = new ChartPanel { X = new Axis { Label = "x" }, Y = new Axis { Label = "y" }, Traces = [trace] };
            var sheet = new RecordedSheet();
            new FigureSetting(new Figure { Title = "t", AltText = "a", Panels = [panel] }).Draw(sheet);
            Assert.All(sheet.Spots, spot => Assert.True(double.IsFinite(spot.X) && double.IsFinite(spot.Y)));
        }
    }

    [Fact]
    public void A_curve_is_cut_at_the_edges_of_the_plot_and_lifted_over_gaps()
    {
        var runs = Clipped.Of([new(-5, 5), new(5, 5), new(5, 20), new(5, double.NaN), new(6, 6), new(7, 7)], new Box(0, 0, 10, 10));
        Assert.Equal(2, runs.Count);
        Assert.Equal([new Spot(0, 5), new Spot(5, 5), new Spot(5, 10)], runs[0]);
        Assert.Equal([new Spot(6, 6), new Spot(7, 7)], runs[1]);
    }

    [Fact]
    public void A_thinned_curve_stays_within_its_tolerance()
    {
        Spot[] wave = [.. Enumerable.Range(0, 1500).Select(i => new Spot(i * 0.3, 40.0 * Math.Sin(i * 0.02)))];
        var kept = Thinned.Of(wave);
        Assert.InRange(kept.Length, 20, 500);
        Assert.All(wave, point => Assert.True(
            kept.Zip(kept.Skip(1)).Min(leg => Away(point, leg.First, leg.Second)) <= Thinned.Tolerance + 1e-9));
    }

    private static double Away(Spot point, Spot from, Spot to)
    {
        var (dx, dy) = (to.X - from.X, to.Y - from.Y);
        var along = Math.Clamp(((point.X - from.X) * dx + (point.Y - from.Y) * dy) / (dx * dx + dy * dy), 0.0, 1.0);
        return Math.Sqrt(Math.Pow(point.X - from.X - along * dx, 2) + Math.Pow(point.Y - from.Y - along * dy, 2));
    }
}
