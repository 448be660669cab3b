using Heaveline.Roads;

namespace Heaveline.References.RoughnessIndex;

/// <summary>The golden car against the tables of World Bank Technical Paper 46; sources in source.md.</summary>
public class GoldenCarTests
{
    // Rows of S for 250 mm as printed.
    private static readonly double[,] Published =
    {
        { 0.9966071, 0.01091514, -0.002083274, 0.0003190145 },
        { -0.5563044, 0.9438768, -0.8324718, 0.05064701 },
        { 0.02153176, 0.002126763, 0.7508714, 0.008221888 },
        { 3.335013, 0.3376467, -39.12762, 0.4347564 },
    };

    /// <summary>S agrees with the print to 5e-7 of itself: single precision with seven digits printed.</summary>
    [Fact]
    public void The_transition_over_250_mm_is_the_published_one()
    {
        var (s, _) = GoldenCar.Step(0.25);
        for (var i = 0; i < 4; i++)
        {
            for (var j = 0; j < 4; j++)
            {
                Assert.Equal(1.0, s[i, j] / Published[i, j], 5e-7);
            }
        }
    }

    /// <summary>p as printed: the first entry is 1.8e-5 low in print.</summary>
    [Fact]
    public void The_response_over_250_mm_is_the_published_one_but_for_its_first_entry()
    {
        var (_, p) = GoldenCar.Step(0.25);
        Assert.Equal(-1.8e-5, (0.005476107 / p[0]) - 1.0, 5e-7);
        Assert.Equal(1.0, p[1] / 1.388776, 5e-7);
        Assert.Equal(1.0, p[2] / 0.2275968, 5e-7);
        Assert.Equal(1.0, p[3] / 35.79262, 5e-7);
    }

    /// <summary>p by a Taylor series in rational numbers (60 terms), ten digits: half of the last one.</summary>
    [Theory]
    [InlineData(0.25, 0.005476205587, 1.388776592, 0.2275968781, 35.79262203)]
    [InlineData(0.10, 0.0003796768447, 0.2490886341, 0.0412347727, 17.65532449)]
    [InlineData(0.05, 4.855950526e-05, 0.06427259384, 0.01067578117, 9.331372991)]
    public void The_response_over_any_spacing_keeps_all_its_digits(double spacing, double p1, double p2, double p3, double p4)
    {
        var (_, p) = GoldenCar.Step(spacing);
        double[] expected = [p1, p2, p3, p4];
        for (var i = 0; i < 4; i++)
        {
            Assert.Equal(1.0, p[i] / expected[i], 5e-10);
        }
    }

    /// <summary>
    /// Roads of another waviness w: IRI = 2.21 √C exp(−0.356(w − 2) + 0.13(w − 2)²) with C in 1e-6 m³ at 1 rad/m, Kropáč and Múčka 2004, without the
    /// moving average. 0.5 %; the index itself, with the average, lies up to 3.5 % lower.
    /// </summary>
    [Theory]
    [InlineData(1.5)]
    [InlineData(1.75)]
    [InlineData(2.0)]
    [InlineData(2.25)]
    [InlineData(2.5)]
    public void The_index_of_other_waviness_follows_the_published_rule(double waviness)
    {
        var spectrum = RoadSpectrum.Of(RoadClass.A) with { Waviness = waviness, Band = new(0.0005, 20.0) };
        var c = spectrum.HeightsAt(1.0 / (2.0 * Math.PI)) / (2.0 * Math.PI);
        var off = waviness - 2.0;
        var published = 2.21e-3 * Math.Sqrt(1e6 * c) * Math.Exp((-0.356 * off) + (0.13 * off * off));
        const int steps = 20_000;
        var width = Math.Log(20.0 / 0.0005) / steps;
        var sum = Enumerable.Range(0, steps).Sum(i =>
        {
            var n = 0.0005 * Math.Exp((i + 0.5) * width);
            return GoldenCar.Gain(n) * GoldenCar.Gain(n) * spectrum.SlopesAt(n) * n * width;
        });
        Assert.Equal(1.0, Math.Sqrt(2.0 / Math.PI * sum) / published, 5e-3);
        Assert.InRange(Iri.Expected(spectrum) / published, 0.965, 1.0);
    }

    /// <summary>Gain for sines, four digits; maxima and minimum between them.</summary>
    [Theory]
    [InlineData(1.0, 0.2731)]
    [InlineData(2.0, 1.5335)]
    [InlineData(5.0, 1.1697)]
    [InlineData(10.0, 1.2597)]
    [InlineData(20.0, 1.2340)]
    [InlineData(30.0, 0.4548)]
    [InlineData(15.78, 1.5376)]
    [InlineData(2.29, 1.6765)]
    [InlineData(6.20, 1.1486)]
    public void The_gain_for_a_sine_is_that_of_the_quarter_car(double wavelength, double gain) =>
        Assert.Equal(gain, GoldenCar.Gain(1.0 / wavelength), 6e-5);
}
