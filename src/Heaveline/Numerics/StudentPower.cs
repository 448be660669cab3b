using MathNet.Numerics;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Integration;

namespace Heaveline.Numerics;

/// <summary>How often a t test finds what is there.</summary>
internal static class StudentPower
{
    // Past so many standard deviations of the estimated deviation lies less than 1e-13 of the probability, even for one degree of freedom.
    private const double Reach = 9.0;
    private const int Panels = 8;
    private static readonly GaussLegendreRule Rule = new(0.0, 1.0, 32);

    /// <summary>
    /// The probability that a number of standard errors (z + δ)/s exceeds a limit, z normal, ν·s² chi-squared of ν degrees of freedom: the upper tail
    /// of the noncentral t, ∫ Φ(δ − limit·s)·f(s) ds, f the density of s
    /// [Johnson, Kotz and Balakrishnan, Continuous Univariate Distributions 2, ch. 31].
    /// </summary>
    /// <param name="effect">δ: the true effect in true standard errors.</param>
    /// <param name="freedom">ν, at least 1.</param>
    /// <param name="limit">Student's t from which an effect is called found.</param>
    public static double Above(double effect, int freedom, double limit)
    {
        var half = 0.5 * freedom;
        var constant = Math.Log(2.0) + (half * Math.Log(half)) - SpecialFunctions.GammaLn(half);
        double Density(double s) => s > 0.0
            ? Math.Exp(constant + ((freedom - 1) * Math.Log(s)) - (half * s * s))
            : freedom == 1 ? Math.Exp(constant) : 0.0;
        var deviation = Math.Sqrt(0.5 / freedom);
        var (from, to) = (Math.Max(0.0, 1.0 - (Reach * deviation)), 1.0 + (Reach * deviation));
        var width = (to - from) / Panels;
        var sum = 0.0;
        for (var panel = 0; panel < Panels; panel++)
        {
            for (var k = 0; k < Rule.Order; k++)
            {
                var s = from + (width * (panel + Rule.GetAbscissa(k)));
                sum += width * Rule.GetWeight(k) * Density(s) * Normal.CDF(0.0, 1.0, effect - (limit * s));
            }
        }

        return Math.Min(sum, 1.0);
    }
}
