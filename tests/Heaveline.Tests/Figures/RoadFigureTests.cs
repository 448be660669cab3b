using Heaveline.Figures;
using Heaveline.Roads;

namespace Heaveline.Tests.Figures;

public class RoadFigureTests
{
    // A made road's band ends at 2.83 cycles/m: the last band would fall by decades, and the names would point at the fall.
    [Fact]
    public void The_spectrum_ends_before_the_roads_band_does_and_the_borders_are_named_by_both_classes()
    {
        var road = Road.From(new RandomRoad { Spectrum = RoadSpectrum.Of(RoadClass.C), Track = new(1.5), Length = new(1000.0), Seed = 7 });
        var left = RoadRoughness.Of(road.Left);
        var figure = RoadFigure.Of(road, left, RoadRoughness.Of(road.Right));
        var spectra = Assert.IsType<ChartPanel>(figure.Panels[1]);
        foreach (var curve in spectra.Traces.Where(t => t.Name is "left" or "right"))
        {
            Assert.True(curve.Xs.Length > 10);
            // The last step is no steeper than a factor of ten beyond waviness 2.
            Assert.True(curve.Ys[^1] > 0.1 * curve.Ys[^2] * Math.Pow(curve.Xs[^1] / curve.Xs[^2], -2.0));
            Assert.InRange(curve.Xs[^1], 2.0, 2.83);
        }

        Assert.Contains(spectra.Traces, t => t.Name == "B/C");
        Assert.DoesNotContain("steps", figure.SignNote, StringComparison.Ordinal);
    }
}
