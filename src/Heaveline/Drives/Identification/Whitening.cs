using System.Numerics;

namespace Heaveline.Drives.Identification;

/// <summary>The inverse of Cholesky's factor of a 2×2 covariance, [a, 0; −p, q].</summary>
internal readonly struct Whitening(double a, Complex p, double q)
{
    /// <summary>L⁻¹·v.</summary>
    public (Complex First, Complex Second) Of(Complex first, Complex second) => (a * first, (q * second) - (p * first));

    /// <summary>L⁻¹·D·L⁻ᴴ of a Hermitian matrix [d00, d10*; d10, d11]: its diagonal and what stands below.</summary>
    public (double First, double Second, Complex Below) Of(double d00, double d11, Complex d10)
    {
        var (pr, pi) = (p.Real, p.Imaginary);
        return (
            a * a * d00,
            (((pr * pr) + (pi * pi)) * d00) + (q * q * d11) - (2.0 * q * ((pr * d10.Real) + (pi * d10.Imaginary))),
            a * ((q * d10) - (d00 * p)));
    }
}
