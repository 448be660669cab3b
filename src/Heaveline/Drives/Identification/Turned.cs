using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Heaveline.Drives.Identification;

/// <summary>Rows of complex numbers, value first and derivatives after it, four side by side.</summary>
internal static class Turned
{
    /// <summary>a + b·(cosine + i·sine).</summary>
    public static void Add(
        ReadOnlySpan<double> aReal, ReadOnlySpan<double> aImaginary, ReadOnlySpan<double> bReal, ReadOnlySpan<double> bImaginary, double cosine,
        double sine, Span<double> real, Span<double> imaginary, int width)
    {
        var (c, s) = (Vector256.Create(cosine), Vector256.Create(sine));
        for (var j = 0; j < width; j += 4)
        {
            var (br, bi) = (Load(bReal, j), Load(bImaginary, j));
            (Load(aReal, j) + (br * c) - (bi * s)).CopyTo(real[j..]);
            (Load(aImaginary, j) + (br * s) + (bi * c)).CopyTo(imaginary[j..]);
        }
    }

    /// <summary>
    /// From H₀ and H₁ with their derivatives, times a density: the derivatives of |H₀|², of |H₁|² and of H₁H₀* (real, imaginary), the value's own
    /// being twice itself.
    /// </summary>
    /// <param name="h">Real and imaginary part of H₀, then of H₁, shape (4, stride).</param>
    /// <param name="density">By what all is multiplied.</param>
    /// <param name="to">Shape (4, width).</param>
    /// <param name="stride">Distance between rows of h.</param>
    /// <param name="width">How many of a row.</param>
    public static void Products(ReadOnlySpan<double> h, double density, Span<double> to, int stride, int width)
    {
        var (h0r, h0i) = (Vector256.Create(density * h[0]), Vector256.Create(density * h[stride]));
        var (h1r, h1i) = (Vector256.Create(density * h[2 * stride]), Vector256.Create(density * h[3 * stride]));
        var two = Vector256.Create(2.0);
        for (var j = 0; j < width; j += 4)
        {
            var (d0r, d0i, d1r, d1i) = (Load(h, j), Load(h, stride + j), Load(h, (2 * stride) + j), Load(h, (3 * stride) + j));
            (two * ((d0r * h0r) + (d0i * h0i))).CopyTo(to[j..]);
            (two * ((d1r * h1r) + (d1i * h1i))).CopyTo(to[(width + j)..]);
            ((d1r * h0r) + (d1i * h0i) + (h1r * d0r) + (h1i * d0i)).CopyTo(to[((2 * width) + j)..]);
            ((d1i * h0r) - (d1r * h0i) + (h1i * d0r) - (h1r * d0i)).CopyTo(to[((3 * width) + j)..]);
        }
    }

    private static Vector256<double> Load(ReadOnlySpan<double> from, int at) =>
        Vector256.LoadUnsafe(ref MemoryMarshal.GetReference(from), (nuint)at);
}
