using CsCheck;
using Heaveline.Numerics;

namespace Heaveline.Tests.Numerics;

public class PowerBitsTests
{
    private static Gen<(double, double)[]> Drawn { get; } = Gen.Double[1e-15, 12.0].Select(Gen.Double[1.0, 4.0]).Array[8];

    [Fact]
    public void A_power_has_the_same_bits_in_both_wide_lanes_and_in_both_narrow_ones() => Drawn.Sample(
        drawn =>
        {
            double[] bases = [.. drawn.Select(d => d.Item1)];
            double[] exponents = [.. drawn.Select(d => d.Item2)];
            var alone = Powers<ScalarLane>(bases, exponents);
            Assert.Equal(alone, Powers<Lane128>(bases, exponents));
            var wide = Powers<Lane512>(bases, exponents);
            Assert.Equal(wide, Powers<Lane256>(bases, exponents));
            // Rounding of the logarithm grows with the exponent: e·|ln b| below 140, each a unit in the last place.
            Assert.All(wide.Zip(alone, (a, b) => Math.Abs((a / b) - 1.0)), miss => Assert.InRange(miss, 0.0, 1e-13));
        },
        iter: 500);

    // A car beside may have pressed its gas to nothing, or have left every bound.
    [Theory]
    [InlineData(0.0, 1.4)]
    [InlineData(-2.0, 1.4)]
    [InlineData(double.NaN, 1.4)]
    [InlineData(double.PositiveInfinity, 1.4)]
    [InlineData(1e-300, 3.0)]
    [InlineData(1e300, 3.0)]
    public void No_power_hangs_on_what_stands_in_the_place_beside_it(double beside, double exponent)
    {
        double[] bases = [2.3, beside, 1e-15, beside, 0.017, 11.0, beside, 1.0];
        double[] exponents = [1.38, exponent, 3.7, exponent, 2.2, 1.38, exponent, 4.0];
        var undisturbed = Powers<Lane512>([.. bases.Select(b => b.Equals(beside) ? 1.0 : b)], exponents);
        var wide = Powers<Lane512>(bases, exponents);
        Assert.Equal(wide, Powers<Lane256>(bases, exponents));
        for (var i = 0; i < bases.Length; i++)
        {
            Assert.Equal(bases[i].Equals(beside) ? Math.Pow(beside, exponent) : undisturbed[i], wide[i]);
        }
    }

    private static double[] Powers<T>(double[] bases, double[] exponents)
        where T : unmanaged, ILane<T>
    {
        var powers = new double[bases.Length];
        for (var i = 0; i < powers.Length; i += T.Count)
        {
            T.Power(T.From(bases.AsSpan(i, T.Count)), T.From(exponents.AsSpan(i, T.Count))).To(powers.AsSpan(i, T.Count));
        }

        return powers;
    }
}
