using CsCheck;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Tests.Roads;

public class RoadSpectrumTests
{
    [Fact]
    public void The_variance_of_a_band_is_the_integral_of_the_density() =>
        Gen.Select(Gen.Double[0.5, 5.0], Gen.Double[0.001, 1.0], Gen.Double[0.01, 5.0]).Sample((w, low, width) =>
        {
            var spectrum = new RoadSpectrum { Density = new(1e-4), Waviness = w, Band = new(low, low + width) };
            const int Steps = 4000;
            var (from, step) = (Math.Log(low), Math.Log((low + width) / low) / Steps);
            var sum = 0.0;
            for (var i = 0; i < Steps; i++)
            {
                var n = Math.Exp(from + ((i + 0.5) * step));
                sum += n * spectrum.HeightsAt(n) * step;
            }

            Assert.Equal(1.0, sum / spectrum.HeightVariance, 1e-5);
            Assert.Equal(
                spectrum.HeightVariance,
                spectrum.VarianceBetween(0.0, low + (width / 3.0)) + spectrum.VarianceBetween(low + (width / 3.0), 1000.0),
                1e-12 * spectrum.HeightVariance);
        });

    [Fact]
    public void The_power_integral_runs_smoothly_through_one()
    {
        foreach (var p in (double[])[1.0 - 1e-9, 1.0, 1.0 + 1e-9, 1.0 + 1e-4])
        {
            Assert.Equal(Math.Log(50.0), RoadSpectrum.PowerIntegral(p, 0.1, 5.0), 2.0 * Math.Abs(p - 1.0) * Math.Log(50.0) * Math.Log(50.0));
        }

        Assert.Equal((1.0 / 0.1) - (1.0 / 5.0), RoadSpectrum.PowerIntegral(2.0, 0.1, 5.0), 1e-13);
    }

    [Fact]
    public void There_is_nothing_outside_the_band()
    {
        var spectrum = RoadSpectrum.Of(RoadClass.B);
        Assert.Equal((0.0, 0.0), (spectrum.HeightsAt(0.0109), spectrum.HeightsAt(2.84)));
        Assert.Equal(0.0, spectrum.VarianceBetween(3.0, 10.0));
    }

    [Fact]
    public void Impossible_spectra_are_refused()
    {
        Assert.Throws<RefusedValueException>(() => new RoadSpectrum { Density = new(0.0) });
        Assert.Throws<RefusedValueException>(() => RoadSpectrum.Of(RoadClass.A) with { Waviness = 0.0 });
        Assert.Throws<RefusedValueException>(() => new SpatialBand(2.0, 1.0));
        Assert.Throws<RefusedValueException>(() => RoadClass.Of(new(-1.0)));
        Assert.Throws<RefusedValueException>(() => RoadSpectrum.Of(RoadClass.A).DegreesOfFreedom(new(0.0)));
    }

    [Fact]
    public void Gamma_falls_from_one_to_nothing() =>
        Gen.Select(Gen.Double[0.5, 5.0], Gen.Double[0.1, 3.0], Gen.Double[-65.0, 3.0]).Sample((w, track, power) =>
        {
            var coherence = new TrackCoherence { Track = new(track), Waviness = w };
            var n = Math.Pow(10.0, power);
            Assert.InRange(coherence.At(n), 0.0, 1.0);
            Assert.True(coherence.At(1.01 * n) <= coherence.At(n) + 1e-13);
            Assert.Equal(1.0, coherence.At(0.0));
        });
}
