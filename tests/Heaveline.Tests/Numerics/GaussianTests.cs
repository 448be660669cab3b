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
            var (byParts, rate) = Gaussian.Of(x => (Math.Max(x, at), x > at ? 1.0 : 0.0), mean, deviation, [at], -1e9, 1e9);
            Assert.Equal(byParts, value, 1e-11);
            Assert.Equal(rate, slope, 1e-11);
        }, iter: 200);
        Assert.Equal((1.0, 0.5), Gaussian.Max(1.0, 0.0, 1.0));
    }

    [Fact]
    public void Friction_that_is_rounded_off_equals_its_integral_and_both_limits()
    {
        Gen.Select(Gen.Double[-4.0, 3.0], Gen.Double[1e-4, 0.1]).Sample((decade, scale) =>
        {
            var deviation = scale * Math.Pow(10.0, decade);
            double[] near = [.. Enumerable.Range(-20, 41).SelectMany(k => new[] { scale * Math.Pow(2.0, k), -scale * Math.Pow(2.0, k) })];
            var (slope, _) = Gaussian.Of(v => (scale * scale / Math.Pow((v * v) + (scale * scale), 1.5), 0.0), 0.0, deviation, near, -1e9, 1e9);
            Assert.Equal(1.0, Gaussian.SmoothSign(deviation, scale) / slope, 1e-6);
        }, iter: 100);
        Assert.Equal(Math.Sqrt(2.0 / Math.PI) / 0.3, Gaussian.SmoothSign(0.3, 1e-6), 1e-6);
        Assert.Equal(1.0 / 0.005, Gaussian.SmoothSign(0.0, 0.005), 1e-9);
    }

    [Fact]
    public void A_cube_has_its_closed_moments()
    {
        // E[x³] = μ³ + 3μσ², E[3x²] = 3(μ² + σ²).
        var (value, slope) = Gaussian.Of(x => (x * x * x, 3.0 * x * x), 0.7, 0.4, [], -1e9, 1e9);
        Assert.Equal((0.7 * 0.7 * 0.7) + (3.0 * 0.7 * 0.16), value, 1e-12);
        Assert.Equal(3.0 * (0.49 + 0.16), slope, 1e-12);
    }
}
