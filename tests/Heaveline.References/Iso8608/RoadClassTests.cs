using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.References.Iso8608;

/// <summary>Road classes and the spectra of their means; sources in source.md.</summary>
public class RoadClassTests
{
    /// <summary>Lower limit (0: none), geometric mean, upper limit (0: none) of G_d(n0), 1e-6 m³ [ISO 8608:2016 table C.2].</summary>
    [Theory]
    [InlineData('A', 0, 16, 32)]
    [InlineData('B', 32, 64, 128)]
    [InlineData('C', 128, 256, 512)]
    [InlineData('D', 512, 1024, 2048)]
    [InlineData('E', 2048, 4096, 8192)]
    [InlineData('F', 8192, 16384, 32768)]
    [InlineData('G', 32768, 65536, 131072)]
    [InlineData('H', 131072, 262144, 0)]
    public void The_classes_have_the_limits_and_means_of_the_standard(char letter, double lower, double mean, double upper)
    {
        var roadClass = Assert.Single(RoadClass.All, c => c.Letter == letter);
        Assert.Equal(1e-6 * lower, roadClass.Lower.Si, 1e-18);
        Assert.Equal(1e-6 * mean, roadClass.Mean.Si, 1e-15);
        Assert.Equal(upper == 0 ? double.PositiveInfinity : 1e-6 * upper, roadClass.Upper.Si, 1e-15);
        Assert.Same(roadClass, RoadClass.Of(roadClass.Mean));
        Assert.Same(roadClass, RoadClass.Of(new(Math.Max(roadClass.Lower.Si, 1e-9))));
        if (letter != 'A')
        {
            Assert.NotSame(roadClass, RoadClass.Of(new(roadClass.Lower.Si * 0.9999)));
        }
    }

    /// <summary>Slope density G_v(n0) of lower limit, mean and upper limit, 1e-6 m, and height density at 1 rad/m, 1e-6 m³ (as cycles).</summary>
    [Theory]
    [InlineData('B', 12.6, 0.05, 25.3, 50.5, 4.02, 0.005)]
    [InlineData('C', 50.5, 0.05, 101.1, 202.1, 16.1, 0.05)]
    [InlineData('D', 202.1, 0.05, 404.3, 808.5, 64.3, 0.05)]
    [InlineData('G', 12936, 0.5, 25873, 51745, 4118, 0.5)]
    public void The_slope_densities_are_those_of_the_standard(
        char letter, double lower, double digit, double mean, double upper, double atOneRadian, double radianDigit)
    {
        var roadClass = Assert.Single(RoadClass.All, c => c.Letter == letter);
        double SlopeDensity(Amount<RoadDensity> density) => 1e6 * new RoadSpectrum { Density = density }.SlopesAt(0.1);
        Assert.Equal(lower, SlopeDensity(roadClass.Lower), digit);
        Assert.Equal(mean, SlopeDensity(roadClass.Mean), digit);
        Assert.Equal(upper, SlopeDensity(roadClass.Upper), digit);

        // Per rad/m: the density over 2π, at n = 1/2π.
        Assert.Equal(atOneRadian, 1e6 * RoadSpectrum.Of(roadClass).HeightsAt(1.0 / (2.0 * Math.PI)) / (2.0 * Math.PI), radianDigit);
    }

    /// <summary>Root mean square of heights, mm, 0.011 to 2.83 cycles/m.</summary>
    [Theory]
    [InlineData('A', 3.81, 0.005)]
    [InlineData('B', 7.61, 0.005)]
    [InlineData('C', 15.23, 0.005)]
    [InlineData('D', 30.5, 0.05)]
    [InlineData('E', 60.9, 0.05)]
    [InlineData('F', 121.8, 0.05)]
    [InlineData('G', 243.6, 0.1)]
    [InlineData('H', 487, 0.5)]
    public void The_means_have_the_heights_of_their_band(char letter, double millimetres, double digit)
    {
        var roadClass = Assert.Single(RoadClass.All, c => c.Letter == letter);
        Assert.Equal(millimetres, 1000.0 * Math.Sqrt(RoadSpectrum.Of(roadClass).HeightVariance), digit);
    }

    /// <summary>Class C at 20 m/s: one-sided density of road velocity 2.02129e-3 m²/s²/Hz, the same at every frequency.</summary>
    [Fact]
    public void At_a_speed_the_velocity_of_the_mean_of_class_C_is_white()
    {
        var spectrum = RoadSpectrum.Of(RoadClass.C);
        foreach (var f in (double[])[0.3, 1.0, 10.0, 50.0])
        {
            Assert.Equal(2.02129e-3, spectrum.VelocitiesAt(f, 20.0), 5e-9);
            Assert.Equal(spectrum.HeightsAt(f, 20.0) * Math.Pow(2.0 * Math.PI * f, 4.0), spectrum.AccelerationsAt(f, 20.0), 1e-12);
        }
    }
}
