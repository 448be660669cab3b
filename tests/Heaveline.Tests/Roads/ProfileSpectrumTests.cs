using Heaveline.Quantities;
using Heaveline.Roads;
using MathNet.Numerics.Distributions;

namespace Heaveline.Tests.Roads;

/// <summary>Spectra of synthesised roads against what they were made from, within the interval that chance allows.</summary>
public class ProfileSpectrumTests
{
    private static readonly RandomRoad Kilometre =
        new() { Spectrum = RoadSpectrum.Of(RoadClass.C), Track = new(1.5), Length = new(1000.0), Seed = 5UL };

    private static RandomRoad Wide => Kilometre with { Spectrum = Kilometre.Spectrum with { Band = new(0.002, 3.5) } };

    // Coarse and without short waves, for tests of many roads.
    private static RandomRoad Coarse => Kilometre with { Spectrum = Kilometre.Spectrum with { Band = new(0.002, 1.0) }, Spacing = new(0.25) };

    [Fact]
    public void The_bands_tile_and_end_where_the_fitted_range_ends()
    {
        var bands = SmoothingBands.Within(0.01, 2.9).ToArray();
        Assert.Equal(Math.Pow(2.0, -6.5), bands[0].Low, 1e-15);
        Assert.Equal(Math.Pow(2.0, 1.5), bands[^1].High, 1e-14);
        Assert.Equal(2 + 8 + 40, bands.Length);
        Assert.All(bands.Zip(bands.Skip(1)), pair => Assert.Equal(pair.First.High, pair.Second.Low));
        Assert.Contains(bands, b => Math.Abs(Math.Sqrt(b.Low * b.High) - 0.03125) < 1e-12);
        Assert.Contains(bands, b => Math.Abs(Math.Sqrt(b.Low * b.High) - 0.25) < 1e-12);
    }

    /// <summary>50 bands: each within the 99.99 % interval, and all together as chi-square.</summary>
    [Fact]
    public void The_spectrum_of_a_synthesised_road_is_the_target_within_its_interval()
    {
        var spectrum = ProfileSpectrum.Of(Wide.Draw().Left, new(0.05));
        var total = 0.0;
        var freedom = 0.0;
        foreach (var band in spectrum.Bands.Where(b => b.Band.High < 2.9))
        {
            var target = Wide.Spectrum.VarianceBetween(band.Band.Low, band.Band.High) / (band.Band.High - band.Band.Low);
            var (low, high) = band.Interval(0.9999);
            Assert.InRange(target, low, high);
            total += band.DegreesOfFreedom * band.Density / target;
            freedom += band.DegreesOfFreedom;
        }

        Assert.InRange(total, ChiSquared.InvCDF(freedom, 1e-5), ChiSquared.InvCDF(freedom, 1.0 - 1e-5));
    }

    /// <summary>The 80 % intervals of 60 roads hold the target as often as they say: about 1800 bands, limits ±4 %, four standard errors.</summary>
    [Fact]
    public void The_intervals_hold_the_target_as_often_as_they_say()
    {
        var (held, all) = (0, 0);
        for (var seed = 100UL; seed < 160UL; seed++)
        {
            foreach (var band in ProfileSpectrum.Of((Coarse with { Seed = seed, Length = new(600.0) }).Draw().Right, new(0.25)).Bands
                .Where(b => b.Band.High < 0.9))
            {
                var target = Wide.Spectrum.VarianceBetween(band.Band.Low, band.Band.High) / (band.Band.High - band.Band.Low);
                var (low, high) = band.Interval(0.8);
                all++;
                held += target >= low && target <= high ? 1 : 0;
            }
        }

        Assert.InRange((double)held / all, 0.76, 0.84);
    }

    /// <summary>
    /// γ of the pair, band by band: within five standard errors, √((1 + γ² )/ν)-like, of the estimate of the cross density over the target.
    /// </summary>
    [Fact]
    public void The_tracks_of_a_synthesised_road_are_as_alike_as_isotropy_says()
    {
        var (left, right) = Wide.Draw();
        var (leftRaw, rightRaw) = (Periodogram.Of(EqualSamples.Of(left, new(0.05)), 0.05), Periodogram.Of(EqualSamples.Of(right, new(0.05)), 0.05));
        var coherence = new TrackCoherence { Track = Wide.Track };
        foreach (var band in ProfileSpectrum.Of(left, new(0.05)).Bands.Where(b => b.Band.High < 2.9))
        {
            var weights = new BandWeights(band.Band, leftRaw.Resolution);

            // Each bin over its own target, so that the mean is γ itself.
            double Ratio(int k, Func<int, double> density) => density(k) / Wide.Spectrum.HeightsAt(k * leftRaw.Resolution);
            var real = weights.Mean(k => Ratio(k, i => leftRaw.CrossAt(rightRaw, i).Real));
            var imaginary = weights.Mean(k => Ratio(k, i => leftRaw.CrossAt(rightRaw, i).Imaginary));
            var gamma = coherence.At(band.Centre);
            var widest = Math.Abs(coherence.At(band.Band.Low) - coherence.At(band.Band.High));
            Assert.Equal(gamma, real, (5.0 * Math.Sqrt((1.0 + (gamma * gamma)) / band.DegreesOfFreedom)) + (0.25 * widest));
            Assert.Equal(0.0, imaginary, 5.0 * Math.Sqrt((1.0 - (gamma * gamma)) / band.DegreesOfFreedom));
        }
    }

    [Theory]
    [InlineData(1.6, 'B')]
    [InlineData(2.0, 'C')]
    [InlineData(2.7, 'D')]
    public void The_line_finds_density_waviness_and_class(double waviness, char letter)
    {
        var mean = RoadClass.All.Single(c => c.Letter == letter);
        var made = new RoadSpectrum { Density = mean.Mean, Waviness = waviness, Band = new(0.002, 3.5) };
        var fit = SpectrumFit.Of(ProfileSpectrum.Of((Kilometre with { Spectrum = made, Seed = 11UL }).Draw().Left, new(0.05)));
        Assert.Same(mean, fit.Class);
        Assert.InRange(fit.ProbabilityOf(mean), 0.99, 1.0);
        Assert.Equal(1.0, RoadClass.All.Sum(fit.ProbabilityOf), 1e-12);
        var (low, high) = fit.DensityInterval(0.999);
        Assert.InRange(mean.Mean.Si, low.Si, high.Si);
        var (flat, steep) = fit.WavinessInterval(0.999);
        Assert.InRange(waviness, flat, steep);
        Assert.InRange(fit.WavinessDeviation, 0.005, 0.05);
        Assert.InRange(fit.Scatter, 0.6, 1.5);
        Assert.Equal(50, fit.Bands);
    }

    /// <summary>The 50 % intervals of density and waviness of 60 roads of 200 m: held by 30, give or take four standard deviations of 3.9.</summary>
    [Fact]
    public void The_lines_intervals_hold_the_truth_as_often_as_they_say()
    {
        var (density, waviness) = (0, 0);
        for (var seed = 200UL; seed < 260UL; seed++)
        {
            var fit = SpectrumFit.Of(
                ProfileSpectrum.Of((Coarse with { Seed = seed, Length = new(200.0) }).Draw().Left, new(0.25)), new SpatialBand(0.011, 0.9));
            density += fit.DensityInterval(0.5) is var (low, high) && low.Si <= 256e-6 && high.Si >= 256e-6 ? 1 : 0;
            waviness += fit.WavinessInterval(0.5) is var (flat, steep) && flat <= 2.0 && steep >= 2.0 ? 1 : 0;
        }

        Assert.InRange(density, 15, 45);
        Assert.InRange(waviness, 15, 45);
    }

    [Fact]
    public void A_grade_and_a_height_change_nothing()
    {
        var heights = EqualSamples.Of(Kilometre.Draw().Left, new(0.05));
        var tilted = heights.Select((h, i) => h + 3.0 + (0.04 * 0.05 * i)).ToArray();
        var (plain, moved) = (ProfileSpectrum.Of(heights, new(0.05)), ProfileSpectrum.Of(tilted, new(0.05)));

        // Above 2.83 cycles/m the road has no waves, only rounding.
        Assert.All(
            plain.Bands.Zip(moved.Bands).Where(pair => pair.First.Band.High < 2.8),
            pair => Assert.Equal(1.0, pair.First.Density / pair.Second.Density, 1e-6));
    }

    [Fact]
    public void Profiles_that_cannot_say_are_refused()
    {
        var heights = EqualSamples.Of((Kilometre with { Length = new(45.0) }).Draw().Left, new(0.05));
        var refusal = Assert.Throws<RefusedValueException>(() => SpectrumFit.Of(ProfileSpectrum.Of(heights, new(0.05))));
        Assert.Contains("45.3 m", refusal.Limit, StringComparison.Ordinal);
        Assert.Throws<RefusedValueException>(() => ProfileSpectrum.Of(heights[..20], new(0.05)));
        Assert.Throws<RefusedValueException>(() => ProfileSpectrum.Of([.. heights[..40], double.NaN], new(0.05)));
        Assert.Throws<RefusedValueException>(() => SpectrumFit.Of(ProfileSpectrum.Of(new double[4000], new(0.05))));
        Assert.Throws<RefusedValueException>(() => SpectrumFit.Of(
            ProfileSpectrum.Of(EqualSamples.Of(Kilometre.Draw().Left, new(0.05)), new(0.05)), new SpatialBand(0.5, 2.0)));
    }
}
