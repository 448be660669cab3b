using Heaveline.Figures;
using Heaveline.Press;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Tests.Figures;

public class ObstacleFigureTests
{
    [Fact]
    public void A_table_is_drawn_to_scale_with_the_length_of_each_of_its_pieces_and_its_height()
    {
        var figure = ObstacleFigure.Of(Road.From(new FlatTopHump
        {
            Height = Length.FromMillimetres(100),
            Plateau = Length.FromMetres(2.5),
            RampUp = Length.FromMetres(1.0),
            RampDown = Length.FromMetres(1.2),
        }));
        var scene = Assert.IsType<ScenePanel>(figure.Panels[0]);
        Assert.Equal(["1.00 m", "2.50 m", "1.20 m", "4.70 m"], scene.Shapes.OfType<DimensionShape>().Select(one => one.Text));
        Assert.All(scene.Shapes.OfType<DimensionShape>(), one => Assert.Equal(
            one.Text, FormattableString.Invariant($"{one.To.X - one.From.X:0.00} m")));
        Assert.Equal("100 mm", Assert.Single(scene.Shapes.OfType<TextShape>()).Text);
        Assert.Equal(0.1, scene.Shapes.OfType<LineShape>().First().Points.Max(point => point.Z), 12);
    }

    [Fact]
    public void A_hole_is_drawn_below_the_road_and_a_sharp_edge_upright()
    {
        var figure = ObstacleFigure.Of(Road.From(new Pothole
        {
            Depth = Length.FromMillimetres(50), Length = Length.FromMetres(0.6), Edge = Length.FromMillimetres(0),
        }));
        var scene = Assert.IsType<ScenePanel>(figure.Panels[0]);
        var points = scene.Shapes.OfType<LineShape>().First().Points;
        Assert.Equal(-0.05, points.Min(point => point.Z), 12);
        Assert.Contains(points.Zip(points.Skip(1)), pair => pair.Second.X - pair.First.X < 1e-6 && pair.First.Z - pair.Second.Z > 0.049);
        Assert.Equal(["-50 mm".Replace('-', '−')], scene.Shapes.OfType<TextShape>().Select(one => one.Text));
    }

    [Fact]
    public void A_long_road_of_waves_has_its_heights_alone()
    {
        var figure = ObstacleFigure.Of(Road.From(new SineRoad
        {
            Amplitude = Length.FromMillimetres(15), Wavelength = Length.FromMetres(8.0), Waves = 10,
        }));
        Assert.IsType<ChartPanel>(Assert.Single(figure.Panels));
        Assert.DoesNotContain("to scale", figure.Caption, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_obstacle_can_be_printed()
    {
        foreach (var road in Heaveline.Files.Roads.NamedRoads.All.Values.Where(road => road.Event is not null))
        {
            Assert.NotEmpty(FigureFile.Of(ObstacleFigure.Of(road), "figure.svg"));
        }
    }
}
