using Heaveline.Measures.Comfort;
using Heaveline.Numerics;
using Heaveline.Quantities;

namespace Heaveline.Tests.Measures;

/// <summary>
/// The spectrum's level against closed forms: Parseval's theorem, a sine's mean square, the density of white noise (Bendat and Piersol, Random Data).
/// </summary>
public class AccelerationSpectrumTests
{
    private const double Rate = 200.0;

    [Fact]
    public void All_bins_together_hold_the_mean_square_of_the_windowed_pieces()
    {
        // One piece: the sum over all bins is exactly Σ(w·x)²/Σw² (Parseval), and for noise about its variance.
        var noise = Noise(801, 1);
        var spectrum = AccelerationSpectrum.Of(SampledAcceleration.Of(noise.AsSpan(0, 800), Rate), 4.0);
        Assert.Equal((1, 800), (spectrum.Pieces, spectrum.PieceLength));
        var mean = noise.Take(800).Average();
        var (over, under) = (0.0, 0.0);
        for (var i = 0; i < 800; i++)
        {
            var w = Math.Pow(Math.Sin(Math.PI * (i + 0.5) / 800), 2);
            over += w * w * (noise[i] - mean) * (noise[i] - mean);
            under += w * w;
        }

        Assert.Equal(over / under, spectrum.MeanSquare(0.0, double.PositiveInfinity), 1e-12);
        Assert.Equal(over / under, spectrum.MeanSquare(0.0, 17.1) + spectrum.MeanSquare(17.1, 0.5 * Rate), 1e-12);
    }

    [Theory]
    [InlineData(10.0)]
    [InlineData(10.1)]
    [InlineData(40.13)]
    public void A_sine_has_half_its_amplitude_squared_around_its_frequency(double frequency)
    {
        double[] sine = [.. Enumerable.Range(0, 20_000).Select(i => 3.0 * Math.Sin((2.0 * Math.PI * frequency * i / Rate) + 0.4))];
        var spectrum = AccelerationSpectrum.Of(SampledAcceleration.Of(sine, Rate));
        Assert.Equal(1.0, spectrum.MeanSquare(frequency - 1.5, frequency + 1.5) / 4.5, 2e-3);
        Assert.Equal(Weightings.Wk.Factor(frequency) * 3.0 / Math.Sqrt(2.0), spectrum.WeightedRms(Weightings.Wk), 5e-3);
        Assert.Equal(frequency, spectrum.FrequencyOf(spectrum.Density.ToArray().Index().MaxBy(bin => bin.Item).Index), spectrum.Resolution);
    }

    [Fact]
    public void White_noise_is_level_at_twice_its_variance_over_the_rate()
    {
        // G = 2σ²/f_s; the mean over all bins of 99 pieces scatters by about 0.5 %.
        var spectrum = AccelerationSpectrum.Of(SampledAcceleration.Of(Noise(40_000, 7), Rate));
        Assert.Equal(99, spectrum.Pieces);
        var inner = spectrum.Density[2..^1].ToArray();
        Assert.Equal(1.0, inner.Average() / (2.0 / Rate), 0.02);
    }

    [Fact]
    public void White_noise_scatters_as_much_as_its_degrees_of_freedom_say()
    {
        // Var(G)/E(G)² = 2/ν over the bins, and 95 of 100 bins hold the truth in their interval. 397 bins: both are known to a tenth or so.
        var spectrum = AccelerationSpectrum.Of(SampledAcceleration.Of(Noise(40_000, 11), Rate));
        var inner = spectrum.Density[2..^1].ToArray();
        var mean = inner.Average();
        Assert.Equal(2.0 * 99 / (1.0 + (2.0 * (98.0 / 99.0) / 36.0)), spectrum.DegreesOfFreedom, 1e-9);
        Assert.InRange(inner.Average(g => (g - mean) * (g - mean)) / (mean * mean) * spectrum.DegreesOfFreedom / 2.0, 0.75, 1.3);
        var (low, high) = spectrum.IntervalFactors(0.95);
        var holds = inner.Count(g => low * g <= 2.0 / Rate && 2.0 / Rate <= high * g) / (double)inner.Length;
        Assert.InRange(holds, 0.90, 0.99);
    }

    [Fact]
    public void A_piece_longer_than_the_record_is_refused() =>
        Assert.Throws<RefusedValueException>(() => AccelerationSpectrum.Of(SampledAcceleration.Of(Noise(100, 1), Rate), 4.0));

    private static double[] Noise(int count, ulong seed) => [.. Enumerable.Range(0, count).Select(i => SplitMix.Normals(seed, (ulong)i).First)];
}
