using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Tests.Roads;

public class IriOfRandomRoadTests
{
    private static readonly RandomRoad ClassA = new() { Spectrum = RoadSpectrum.Of(RoadClass.A), Track = new(1.5), Length = new(1000.0), Seed = 1UL };

    /// <summary>Mean of 16 roads of 500 m within 4 standard errors of what the spectrum says, those taken from the roads' own scatter.</summary>
    [Fact]
    public void Roads_of_class_A_have_on_average_the_index_of_their_spectrum()
    {
        var road = ClassA with { Spectrum = ClassA.Spectrum with { Band = new(0.011, 2.0) }, Spacing = new(0.125), Length = new(500.0) };
        var values = Enumerable.Range(0, 16)
            .Select(seed => Iri.Of((road with { Seed = (ulong)seed }).Draw().Left, new(0.125)).MetresPerKilometre).ToArray();
        var mean = values.Average();
        var error = Math.Sqrt(values.Average(v => (v - mean) * (v - mean)) / 15.0);
        Assert.InRange(error, 0.0, 0.05);

        // The band's ends keep a little less than white slopes give with the moving average, 2.173.
        var expected = 1000.0 * Iri.Expected(road.Spectrum);
        Assert.InRange(expected, 2.10, 2.173);
        Assert.Equal(expected, mean, 4.0 * error);
    }

    [Fact]
    public void The_index_grows_with_the_heights()
    {
        var left = ClassA.Draw().Left;
        Assert.Equal(3.0 * Iri.Of(left, new(0.1)).Slope, Iri.Of(left.Scaled(3.0), new(0.1)).Slope, 1e-12);
        Assert.Equal(2.0 * Iri.Expected(ClassA.Spectrum), Iri.Expected(RoadSpectrum.Of(RoadClass.B)), 1e-12);
    }

    [Fact]
    public void The_parts_average_to_the_whole()
    {
        var iri = Iri.Of((ClassA with { Length = new(430.0) }).Draw().Right, new(0.05));
        Assert.Equal(5, iri.Segments.Count);
        Assert.Equal([0.0, 100.0, 200.0, 300.0, 400.0], iri.Segments.Select(s => Math.Round(s.Start, 9)));
        Assert.Equal(29.8, iri.Segments[^1].Length, 1e-9);
        Assert.Equal(iri.Slope, iri.Segments.Sum(s => s.Slope * s.Length) / iri.Segments.Sum(s => s.Length), 1e-12);
    }

    /// <summary>Sampling closer than 250 mm hardly matters; 0.1 and 0.07 m do not divide 250 mm and interpolate.</summary>
    [Theory]
    [InlineData(0.02, 0.005)]
    [InlineData(0.07, 0.01)]
    [InlineData(0.1, 0.02)]
    [InlineData(0.125, 0.02)]
    [InlineData(0.25, 0.08)]
    public void The_spacing_hardly_matters(double spacing, double share)
    {
        var left = ClassA.Draw().Left;
        Assert.Equal(1.0, Iri.Of(left, new(spacing)).Slope / Iri.Of(left, new(0.05)).Slope, share);
    }

    [Fact]
    public void A_short_or_coarse_profile_is_refused()
    {
        var left = ClassA.Draw().Left;
        var coarse = Assert.Throws<RefusedValueException>(() => Iri.Of(left, new(0.3)));
        Assert.Contains("0.25", coarse.Limit, StringComparison.Ordinal);
        var brief = Assert.Throws<RefusedValueException>(() => Iri.Of(new double[600], new(0.05)));
        Assert.Contains("31 m", brief.Limit, StringComparison.Ordinal);
        Assert.NotEmpty(Iri.Of(new double[621], new(0.05)).Segments);
        Assert.Throws<RefusedValueException>(() => Iri.Of([.. new double[700], double.NaN], new(0.05)));
    }
}
