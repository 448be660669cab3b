using System.Numerics;

namespace Heaveline.Measures.Comfort;

/// <summary>A monic polynomial of a section: 1, s + ω, s², or s² + ωs/Q + ω² with Q above ½ (a complex pair).</summary>
/// <param name="Omega">ω, rad/s.</param>
/// <param name="Q">Q (–); not a number: no second-order corner.</param>
/// <param name="Order">Degree, 0 to 2.</param>
internal readonly record struct Corner(double Omega, double Q, int Order = 2)
{
    /// <summary>The polynomial 1.</summary>
    public static Corner None => new(0.0, double.NaN, 0);

    /// <summary>The polynomial s².</summary>
    public static Corner AtZero => new(0.0, 1.0);

    /// <summary>The polynomial s + ω.</summary>
    public static Corner Single(double omega) => new(omega, double.NaN, 1);

    /// <summary>Value at s.</summary>
    public Complex At(Complex s) => Order switch
    {
        0 => Complex.One,
        1 => s + Omega,
        _ => (s * s) + (Omega / Q * s) + (Omega * Omega),
    };

    /// <summary>
    /// The matched polynomial in z⁻¹, constant 1: every root r becomes e^(rT). Returned as (b₁, b₂) of 1 + b₁z⁻¹ + b₂z⁻².
    /// Times T^−Order it tends to this polynomial as T goes to 0.
    /// </summary>
    /// <param name="step">T, s.</param>
    public (double First, double Second) Matched(double step)
    {
        switch (Order)
        {
            case 0:
                return (0.0, 0.0);
            case 1:
                return (-Math.Exp(-Omega * step), 0.0);
            default:
                var radius = Math.Exp(-Omega * step / (2.0 * Q));
                var angle = Omega * step * Math.Sqrt(1.0 - (1.0 / (4.0 * Q * Q)));
                return (-2.0 * radius * Math.Cos(angle), radius * radius);
        }
    }
}
