using System.Numerics;
using MathNet.Numerics.LinearAlgebra.Double;

namespace Heaveline.Measures.Comfort;

/// <summary>
/// The finite correction that turns matched sections into the weighting: y_k = Σ c_m x_(k−m), m = −12 … 12, fitted to H/H_matched (complex: magnitude
/// and phase) by least squares over 0 … 0.4 of the sampling rate.
/// </summary>
/// <remarks>
/// A first-order factor s − p and its match (1 − e^((p−s)T))/T differ by Φ = x/(1 − e^(−x)), x = (s − p)T, which has no singularity within |x| below
/// 2π. H/H_matched is a product of such factors, so a few taps on both sides of the present follow it closely. Taps that look ahead are no trouble: a
/// record is evaluated as a whole.
/// </remarks>
internal static class Equaliser
{
    /// <summary>Taps to each side.</summary>
    public const int Reach = 12;

    /// <summary>The end of the fitted band over the sampling rate (–). The rest to ½ is left for the fit to bend in.</summary>
    public const double Band = 0.4;

    private const int Points = 200;

    /// <summary>The taps c₋₁₂ … c₁₂.</summary>
    public static double[] Fit(Weighting weighting, IReadOnlyList<DigitalSection> sections, double samplingRate)
    {
        var taps = (2 * Reach) + 1;
        var matrix = new DenseMatrix(2 * Points, taps);
        var wanted = DenseVector.Create(2 * Points, row => row < Points ? 1.0 : 0.0);
        for (var i = 0; i < Points; i++)
        {
            var share = Band * (i + 1) / Points;
            var back = Complex.FromPolarCoordinates(1.0, -2.0 * Math.PI * share);
            var ratio = Product(sections, back) / weighting.At(share * samplingRate);
            for (var m = -Reach; m <= Reach; m++)
            {
                var entry = ratio * Complex.FromPolarCoordinates(1.0, -2.0 * Math.PI * share * m);
                matrix[i, m + Reach] = entry.Real;
                matrix[Points + i, m + Reach] = entry.Imaginary;
            }
        }

        return matrix.QR().Solve(wanted).ToArray();
    }

    /// <summary>Value of sections and taps together at z⁻¹.</summary>
    public static Complex At(IReadOnlyList<DigitalSection> sections, double[] taps, Complex back)
    {
        var sum = Complex.Zero;
        for (var m = -Reach; m <= Reach; m++)
        {
            sum += taps[m + Reach] * Complex.FromPolarCoordinates(1.0, m * back.Phase);
        }

        return sum * Product(sections, back);
    }

    private static Complex Product(IReadOnlyList<DigitalSection> sections, Complex back)
    {
        var value = Complex.One;
        foreach (var section in sections)
        {
            value *= section.At(back);
        }

        return value;
    }
}
