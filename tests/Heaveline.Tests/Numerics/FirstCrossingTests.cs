using CsCheck;
using Heaveline.Numerics;

namespace Heaveline.Tests.Numerics;

public class FirstCrossingTests
{
    [Fact]
    public void A_short_dip_between_two_good_ends_is_found()
    {
        // (t − 0.4)(t − 0.4001)·1000: below zero only between the two roots.
        double[] p = [160.04, -800.1, 1000.0];
        Assert.Equal(0.4, FirstCrossing.Below(p, 1.0), 1e-12);
        Assert.True(double.IsInfinity(FirstCrossing.Below(p, 0.39)));
    }

    [Fact]
    public void A_touch_from_above_is_no_crossing() => Assert.True(double.IsInfinity(FirstCrossing.Below([0.25 + 1e-12, -1.0, 1.0], 1.0)));

    [Fact]
    public void A_value_below_zero_crosses_at_once() => Assert.Equal(0.0, FirstCrossing.Below([-1e-18, 5.0], 1.0));

    [Fact]
    public void A_coefficient_that_is_no_number_is_refused() => Assert.Throws<ArgumentException>(() => FirstCrossing.Below([1.0, double.NaN], 1.0));

    /// <summary>Polynomials with chosen roots: the first one with a change of sign from above must come out.</summary>
    [Fact]
    public void The_first_of_many_roots_is_found() => Gen.Double[0.01, 0.99].Array[1, 6].Sample(roots =>
    {
        Array.Sort(roots);
        double[] p = [1.0];
        foreach (var root in roots)
        {
            // Times (root − t).
            var next = new double[p.Length + 1];
            for (var k = 0; k < p.Length; k++)
            {
                next[k] += root * p[k];
                next[k + 1] -= p[k];
            }

            p = next;
        }

        var isClear = roots.Length == 1 || roots[1] - roots[0] > 1e-3;
        return !isClear || Math.Abs(FirstCrossing.Below(p, 1.0) - roots[0]) < 1e-7;
    });
}
