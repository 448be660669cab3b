using Heaveline.Quantities;

namespace Heaveline.Numerics;

/// <summary>
/// ψ′(x), the second derivative of ln Γ, for x above 0: the variance of the logarithm of a chi-square number of ν degrees of freedom is ψ′(ν/2).
/// Recurrence up to x = 12, then the asymptotic series [NIST Digital Library of Mathematical Functions, 5.15.5 and 5.15.8].
/// </summary>
public static class Trigamma
{
    /// <summary>ψ′(x), to about 1e-14 of itself.</summary>
    /// <param name="x">Above 0, finite.</param>
    public static double Of(double x)
    {
        _ = Checked.Within(x, double.Epsilon, double.MaxValue, "Give a number above 0.", "Argument");
        var sum = 0.0;
        for (; x < 12.0; x++)
        {
            sum += 1.0 / (x * x);
        }

        // 1/x + 1/(2x²) + Σ B(2k)/x^(2k+1), B = 1/6, −1/30, 1/42, −1/30, 5/66, −691/2730.
        var q = 1.0 / (x * x);
        var series = q
            * ((1.0 / 6.0) + (q * ((-1.0 / 30.0) + (q * ((1.0 / 42.0) + (q * ((-1.0 / 30.0) + (q * ((5.0 / 66.0) - (q * 691.0 / 2730.0))))))))));
        return sum + ((1.0 + (0.5 / x) + series) / x);
    }
}
