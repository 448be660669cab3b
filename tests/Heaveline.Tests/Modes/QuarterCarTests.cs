using System.Numerics;
using CsCheck;
using Heaveline.Modes;

namespace Heaveline.Tests.Modes;

public class QuarterCarTests
{
    [Fact]
    public void Undamped_frequencies_solve_the_quadratic_of_the_two_masses()
    {
        // m_s·m_u·w⁴ − (m_s·(k + k_t) + m_u·k)·w² + k·k_t = 0.
        Gen.Select(Gen.Double[100.0, 600.0], Gen.Double[0.05, 0.2], Gen.Double[8e3, 60e3], Gen.Double[100e3, 300e3])
            .Sample((sprung, share, rate, tyre) =>
            {
                var unsprung = share * sprung;
                var quarter = QuarterCar.Of(sprung, unsprung, rate, 0.0, tyre);
                var (a, b, c) = (sprung * unsprung, (sprung * (rate + tyre)) + (unsprung * rate), rate * tyre);
                var root = Math.Sqrt((b * b) - (4.0 * a * c));
                Assert.Equal(Math.Sqrt(2.0 * c / (b + root)), 2.0 * Math.PI * quarter.BodyFrequency, 1e-6);
                Assert.Equal(Math.Sqrt((b + root) / (2.0 * a)), 2.0 * Math.PI * quarter.HopFrequency, 1e-5);
                Assert.Equal(0.0, quarter.BodyDampingRatio, 1e-9);
            }, iter: 200);
    }

    [Fact]
    public void Damped_roots_keep_the_product_and_sum_of_the_four_roots()
    {
        Gen.Select(Gen.Double[200.0, 500.0], Gen.Double[0.0, 20000.0], Gen.Double[0.0, 500.0]).Sample((sprung, damping, tyreDamping) =>
        {
            var (unsprung, rate, tyre) = (0.1 * sprung, 22000.0, 180000.0);
            var q = QuarterCar.Of(sprung, unsprung, rate, damping, tyre, tyreDamping);
            var (w1, w2) = (2.0 * Math.PI * q.BodyFrequency, 2.0 * Math.PI * q.HopFrequency);
            Assert.Equal(rate * tyre / (sprung * unsprung), w1 * w1 * w2 * w2, 1e-6 * rate * tyre / (sprung * unsprung));
            Assert.Equal(
                (damping / sprung) + ((damping + tyreDamping) / unsprung),
                2.0 * ((q.BodyDampingRatio * w1) + (q.HopDampingRatio * w2)),
                1e-6 * (1.0 + (damping / unsprung)));
            Assert.True(w1 <= w2);
        }, iter: 300);
    }

    [Fact]
    public void Past_critical_damping_the_body_has_no_period()
    {
        var quarter = QuarterCar.Of(300.0, 1e-3, 20000.0, 2.0 * 1.2 * Math.Sqrt(20000.0 * 300.0), 1e9);
        Assert.Null(quarter.BodyPeriod);
        Assert.Equal(1.2, quarter.BodyDampingRatio, 1e-3);
        Assert.Equal(Complex.Zero.Imaginary, quarter.Body.Imaginary);
    }
}
