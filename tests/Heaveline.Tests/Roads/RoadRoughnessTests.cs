using Heaveline.Roads;

namespace Heaveline.Tests.Roads;

public class RoadRoughnessTests
{
    // Waves of one length: a line in the spectrum, not a slope of it; the index exists all the same.
    [Theory]
    [InlineData(1.0, 100)]
    [InlineData(2.7, 40)]
    [InlineData(5.4, 20)]
    [InlineData(8.0, 12)]
    [InlineData(20.0, 10)]
    public void A_road_of_one_wave_has_no_class_but_an_index(double wavelength, int waves)
    {
        var track = RoadRoughness.Of(Road.From(new SineRoad { Wavelength = new(wavelength), Amplitude = new(0.015), Waves = waves }).Left);
        Assert.Null(track.Fit);
        var refused = Assert.Single(track.Refused, r => r.StartsWith("No class", StringComparison.Ordinal));
        Assert.Contains("straight line", refused);
        Assert.NotNull(track.Index);
    }

    [Theory]
    [InlineData(1UL)]
    [InlineData(2UL)]
    [InlineData(3UL)]
    public void A_random_road_of_any_class_keeps_its_class(ulong seed) =>
        Assert.All(
            new[] { RoadClass.A, RoadClass.C, RoadClass.E },
            c =>
            {
                var road = new RandomRoad { Spectrum = RoadSpectrum.Of(c), Track = new(1.5), Length = new(300.0), Seed = seed };
                Assert.NotNull(RoadRoughness.Of(road.Draw().Left).Fit);
            });
}
