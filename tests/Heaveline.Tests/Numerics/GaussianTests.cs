using CsCheck;
using Heaveline.Numerics;

namespace Heaveline.Tests.Numerics;

public class GaussianTests
{
    [Fact]
    public void The_mean_of_a_corner_equals_its_integral()
    {
        Gen.Select(Gen.Double[-2.0, 2.0], Gen.Double[0.01, 3.0], Gen.Double[-2.0, 2.0]).Sample((mean, deviation, at) =>
        {
            var (value, slope) = Gaussian.Max(mean, deviation, at);
            var (byParts, rate) = GaussSum.Of(x => (Math.Max(x, at), x > at ? 1.0 : 0.0), mean, deviation, [at], -1e9, 1e9);
            Assert.Equal(byParts, value, 1e-11);
            Assert.Equal(rate, slope, 1e-11);
        }, iter: 200);
        Assert.Equal((1.0, 0.5), Gaussian.Max(1.0, 0.0, 1.0));
    }

    [Fact]
    public void The_mean_of_a_corner_within_a_range_equals_its_integral()
    {
        Gen.Select(Gen.Double[-2.0, 2.0], Gen.Double[0.3, 3.0], Gen.Double[-3.0, 3.0], Gen.Double[-4.0, 1.0], Gen.Double[0.1, 5.0])
            .Sample((mean, deviation, at, low, width) =>
            {
                // Sums end 8.5 deviations away: a range far out in a tail would not be theirs.
                low = Math.Clamp(low, mean - (20.0 * deviation), mean + (3.0 * deviation));
                var high = Math.Max(low, mean - (3.0 * deviation)) + width;
                var (value, slope) = Gaussian.Max(mean, deviation, at, low, high);
                var (sum, share) = GaussSum.Of(x => (Math.Max(x, at), x > at ? 1.0 : 0.0), mean, deviation, [at], low, high);
                var (middle, _) = GaussSum.Of(x => (x, 1.0), mean, deviation, [], low, high);
                Assert.Equal(sum, value, 1e-10);
                Assert.Equal(share, slope, 1e-10);
                Assert.Equal(middle, Gaussian.Middle(mean, deviation, low, high), 1e-10);
            }, iter: 500);
    }

    [Fact]
    public void Smooth_numbers_have_their_closed_moments()
    {
        // E[e^x] = e^{μ + σ²/2}, which is its own slope; E[x²] = μ² + σ².
        var (first, second, slope) = Gaussian.OfSmooth(x => (Math.Exp(x), x * x), 0.4, 0.7);
        Assert.Equal(Math.Exp(0.4 + (0.5 * 0.49)), first, 1e-12);
        Assert.Equal(0.16 + 0.49, second, 1e-12);
        Assert.Equal(first, slope, 1e-12);
    }

    [Fact]
    public void Friction_that_is_rounded_off_equals_its_integral_and_both_limits()
    {
        Gen.Select(Gen.Double[-4.0, 3.0], Gen.Double[1e-4, 0.1]).Sample((decade, scale) =>
        {
            var deviation = scale * Math.Pow(10.0, decade);
            double[] near = [.. Enumerable.Range(-20, 41).SelectMany(k => new[] { scale * Math.Pow(2.0, k), -scale * Math.Pow(2.0, k) })];
            var (slope, _) = GaussSum.Of(v => (scale * scale / Math.Pow((v * v) + (scale * scale), 1.5), 0.0), 0.0, deviation, near, -1e9, 1e9);
            Assert.Equal(1.0, Gaussian.SmoothSign(deviation, scale) / slope, 1e-6);
        }, iter: 100);
        Assert.Equal(Math.Sqrt(2.0 / Math.PI) / 0.3, Gaussian.SmoothSign(0.3, 1e-6), 1e-6);
        Assert.Equal(1.0 / 0.005, Gaussian.SmoothSign(0.0, 0.005), 1e-9);
    }

    [Fact]
    public void A_cube_has_its_closed_moments()
    {
        // E[x³] = μ³ + 3μσ², E[3x²] = 3(μ² + σ²).
        var (value, slope) = GaussSum.Of(x => (x * x * x, 3.0 * x * x), 0.7, 0.4, [], -1e9, 1e9);
        Assert.Equal((0.7 * 0.7 * 0.7) + (3.0 * 0.7 * 0.16), value, 1e-12);
        Assert.Equal(3.0 * (0.49 + 0.16), slope, 1e-12);
    }
}
