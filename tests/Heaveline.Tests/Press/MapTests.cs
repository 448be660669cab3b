using System.Text;
using Heaveline.Figures;
using Heaveline.Press;
using Heaveline.Press.Colours;
using Heaveline.Press.Plates;
using Heaveline.Quantities;

namespace Heaveline.Tests.Press;

public class MapTests
{
    [Fact]
    public void Lightness_falls_from_the_light_end_and_from_the_middle_to_both_sides()
    {
        double[] shares = [.. Enumerable.Range(0, 21).Select(k => k / 20.0)];
        foreach (var of in new Func<double, Colour>[] { Shades.Sequential, Shades.Diverging, share => Shades.Diverging(-share) })
        {
            double[] lightness = [.. shares.Select(share => of(share).Lightness)];
            Assert.All(
                lightness.Zip(lightness.Skip(1)), pair => Assert.True(pair.Second < pair.First - 0.5, $"{pair.First:F2} then {pair.Second:F2}"));
            Assert.InRange(lightness[0] - lightness[^1], 30.0, 100.0);
        }

        // Both sides are of a weight: the same distance from the middle is the same grey, within a step the eye does not see between fields.
        Assert.All(shares, share => Assert.InRange(Shades.Diverging(share).Lightness - Shades.Diverging(-share).Lightness, -3.0, 3.0));
    }

    /// <summary>Contrast of at least 4.5 for small text [W3C Web Content Accessibility Guidelines 2.1, 1.4.3].</summary>
    [Fact]
    public void Lettering_stands_out_from_every_shade()
    {
        foreach (var shade in new[] { Shades.Sequential(1.0), Shades.Diverging(1.0), Shades.Diverging(-1.0) })
        {
            Assert.True((shade.Luminance + 0.05) / (Palette.Text.Luminance + 0.05) >= 4.5, shade.Hex);
        }
    }

    [Fact]
    public void Levels_are_whole_steps_counted_from_the_middle_and_lines_tell_the_side()
    {
        var scale = new MapScale(Plain(z => z) with { Middle = 1.0 }, 11);
        Assert.Equal(["0.2", "0.4", "0.6", "0.8", "1.0", "1.2", "1.4", "1.6", "1.8"], scale.Numbers());
        Assert.Equal(Dash.Dashed, scale.LineOf(0.8).Dash);
        Assert.Equal(Dash.Solid, scale.LineOf(1.0).Dash);
        Assert.Equal(Dash.Solid, scale.LineOf(1.2).Dash);
        Assert.True(scale.LineOf(scale.Levels[4]).Width > scale.LineOf(1.2).Width);
        Assert.Equal(["0.25", "1.50"], new MapScale(Plain(z => z) with { Levels = [0.25, 1.5] }, 9).Numbers());
    }

    [Fact]
    public void Shades_turn_at_the_middle_and_the_farther_side_sets_the_depth_of_both()
    {
        // Levels 0.2 to 1.8 round 1: the bands beside the middle lie 0.1 of 1 away, on either side.
        var scale = new MapScale(Plain(z => z) with { Middle = 1.0 }, 11);
        Assert.Equal(Shades.Diverging(-0.1), scale.ShadeOf(4));
        Assert.Equal(Shades.Diverging(0.1), scale.ShadeOf(5));
        Assert.Equal(Shades.Diverging(0.9), scale.ShadeOf(9));
    }

    [Fact]
    public void A_pixel_shows_the_shade_of_its_value_and_white_where_there_is_none()
    {
        // Steps of value along x over a flat y: 0.5, 1.5 and none, far from any line.
        var panel = Plain(z => z) with
        {
            Levels = [1.0],
            Grid = MapGrid.From(
                [0, 1, 1.001, 2, 2.001, 3],
                [0, 1],
                new double[,] { { 0.5, 0.5, 1.5, 1.5, double.NaN, double.NaN }, { 0.5, 0.5, 1.5, 1.5, double.NaN, double.NaN } }),
        };
        var scale = new MapScale(panel, 9);
        using var bitmap = SkiaSharp.SKBitmap.Decode(Png.Of(FigureOf(panel), 144.0));
        var row = bitmap.Height / 2;
        var seen = Enumerable.Range(0, bitmap.Width)
            .Select(x => bitmap.GetPixel(x, row)).Select(pixel => new Colour(pixel.Red, pixel.Green, pixel.Blue)).ToList();
        Assert.True(seen.Count(pixel => pixel == scale.ShadeOf(0)) > 60);
        Assert.True(seen.Count(pixel => pixel == scale.ShadeOf(1)) > 60);
        Assert.True(seen.IndexOf(scale.ShadeOf(0)) < seen.IndexOf(scale.ShadeOf(1)));
    }

    [Fact]
    public void A_map_keeps_inside_its_axes_and_may_be_empty_flat_or_partly_outside()
    {
        MapPanel[] panels =
        [
            Plain(_ => double.NaN), Plain(_ => 4.0), Plain(z => z) with { X = new Axis { Label = "x", From = 0.5, To = 1.2 } },
            Plain(z => z) with { X = new Axis { Label = "x", From = 5.0, To = 6.0 } },
            Plain(z => z) with { X = new Axis { Label = "x", From = -1.0, To = 4.0 } },
        ];
        foreach (var panel in panels)
        {
            var setting = new FigureSetting(FigureOf(panel));
            var sheet = new RecordedSheet();
            setting.Draw(sheet);
            Assert.All(
                sheet.Spots, spot => Assert.True(spot.X >= 0.0 && spot.X <= setting.Width && spot.Y >= 0.0 && spot.Y <= setting.Height, $"{spot}"));
        }

        // Values run 0 to 2 over x: cut at 0.5 and 1.2, the line of 1 stands at 5/7 of the plot.
        var cut = new RecordedSheet();
        new FigureSetting(FigureOf(panels[2] with { Levels = [1.0] })).Draw(cut);
        var ticks = cut.Texts.Where(text => text.Text is "0.6" or "1.2")
            .OrderByDescending(text => text.Room.Top).Take(2).Select(text => text.Room.Centre.X).Order().ToArray();
        var at = ticks[0] + ((1.0 - 0.6) / 0.6 * (ticks[1] - ticks[0]));
        Assert.Contains(cut.Spots, spot => Math.Abs(spot.X - at) < 0.1);
    }

    [Fact]
    public void A_map_of_200_by_60_places_stays_below_400_kB()
    {
        Assert.InRange(Svg.Of(MapSamples.Ratio()).Length, 30_000, 400_000);
        Assert.InRange(Svg.Of(MapSamples.Noise()).Length, 30_000, 400_000);
    }

    [Fact]
    public void Numbers_stand_on_lines_of_the_map_and_most_levels_find_a_place()
    {
        var sheet = new RecordedSheet();
        new FigureSetting(MapSamples.Settings()).Draw(sheet);
        var bar = sheet.Texts
            .Where(text => text.Text.StartsWith("0.", StringComparison.Ordinal) || text.Text.StartsWith("1.", StringComparison.Ordinal))
            .GroupBy(text => text.Text);
        Assert.True(bar.Count(group => group.Count() >= 2) >= 5, string.Join(", ", bar.Select(group => $"{group.Key}×{group.Count()}")));
    }

    [Fact]
    public void What_a_map_cannot_show_is_refused_where_it_is_given()
    {
        Assert.Contains(
            "rising", Assert.Throws<RefusedValueException>(() => MapGrid.From([0, 0], [0, 1], new double[2, 2])).Message, StringComparison.Ordinal);
        Assert.Contains(
            "2 by 3", Assert.Throws<RefusedValueException>(() => MapGrid.From([0, 1], [0, 1], new double[2, 3])).Message, StringComparison.Ordinal);
        Assert.Throws<RefusedValueException>(() => MapGrid.From([0, 1], [0, 1], new double[,] { { 0, 1 }, { 2, double.PositiveInfinity } }));
        Assert.Throws<RefusedValueException>(() => Plain(z => z).Grid with { Xs = [1, 2] });
        Assert.Throws<RefusedValueException>(() => Plain(z => z) with { Levels = [2, 1] });
        Assert.Contains(
            "logarithmic",
            Assert.Throws<RefusedValueException>(
                () => Plain(z => z) with { Value = new Axis { Label = "z", Scale = AxisScale.Logarithmic } }).Message,
            StringComparison.Ordinal);
        var logarithmic = Plain(z => z + 1.0) with { Value = new Axis { Label = "z", Scale = AxisScale.Logarithmic } };
        Assert.Throws<RefusedValueException>(() => logarithmic with { Middle = 0.0 });
        Assert.Throws<RefusedValueException>(() => logarithmic with { Levels = [-1.0, 2.0] });
        Assert.Throws<RefusedValueException>(() => new MapHatch { From = 1, To = 1, Label = "none" });
    }

    [Fact]
    public void The_ready_figure_says_in_words_what_the_map_shows()
    {
        var figure = RatioMapFigure.Of(
            "t",
            "c",
            "",
            [20, 40, 60],
            [0.9, 1.1],
            new[,] { { 1.2, 1.0, 1.1 }, { 0.7, 0.9, double.NaN } },
            "settling",
            "",
            1.0,
            [("driver only", 1.05), ("towing", 0.7)],
            [1.1, 1.1, 1.0]);
        Assert.Contains("Lowest 0.7 at 20 km/h and ratio 1.1, highest 1.2 at 20 km/h and ratio 0.9.", figure.AltText, StringComparison.Ordinal);
        Assert.Contains("1.05 (driver only), 0.70 (towing)", figure.AltText, StringComparison.Ordinal);
        var map = Assert.IsType<MapPanel>(Assert.Single(figure.Panels));
        Assert.Equal(["best", "driver only"], map.Traces.Select(trace => trace.Name));
        Assert.Contains("<title>t</title>", Encoding.UTF8.GetString(Svg.Of(figure)), StringComparison.Ordinal);
    }

    private static Figure FigureOf(MapPanel panel) => new() { Title = "t", AltText = "a", Panels = [panel] };

    [Fact]
    public void The_doubt_of_a_point_is_a_line_through_it_from_end_to_end_and_stays_on_the_map()
    {
        string Drawn(double? low, double? high)
        {
            var panel = Plain(z => z) with { Marks = [new Mark { X = 1.0, Y = 0.5, Low = low, High = high }] };
            var figure = new Figure { Title = "t", AltText = "a", Caption = "", Size = FigureSize.Page, Panels = [panel] };
            return Encoding.UTF8.GetString(Svg.Of(figure));
        }

        Assert.NotEqual(Drawn(null, null), Drawn(0.4, 0.6));
        Assert.NotEqual(Drawn(0.3, 0.6), Drawn(0.4, 0.6));
        Assert.Equal(Drawn(0.0, 1.0), Drawn(-5.0, 7.0));
    }

    private static MapPanel Plain(Func<double, double> of) => new()
    {
        X = new Axis { Label = "x" }, Y = new Axis { Label = "y" }, Value = new Axis { Label = "z" },
        Grid = MapGrid.From([0, 1, 2], [0, 1], MapSamples.Table([0, 1, 2], [0, 1], (x, _) => of(x))),
    };
}
