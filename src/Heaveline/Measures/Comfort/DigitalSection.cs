using System.Numerics;

namespace Heaveline.Measures.Comfort;

/// <summary>A second-order recursion, gain (1 + b₁z⁻¹ + b₂z⁻²)/(1 + a₁z⁻¹ + a₂z⁻²).</summary>
/// <param name="Gain">Gain (–).</param>
/// <param name="B1">b₁.</param>
/// <param name="B2">b₂.</param>
/// <param name="A1">a₁.</param>
/// <param name="A2">a₂.</param>
internal readonly record struct DigitalSection(double Gain, double B1, double B2, double A1, double A2)
{
    /// <summary>Value at z⁻¹.</summary>
    public Complex At(Complex back) => Gain * (1.0 + (back * (B1 + (back * B2)))) / (1.0 + (back * (A1 + (back * A2))));

    /// <summary>Runs over the samples in place, from rest (transposed direct form II).</summary>
    public void Run(Span<double> samples)
    {
        double first = 0.0, second = 0.0;
        for (var i = 0; i < samples.Length; i++)
        {
            var u = Gain * samples[i];
            var y = u + first;
            first = (B1 * u) - (A1 * y) + second;
            second = (B2 * u) - (A2 * y);
            samples[i] = y;
        }
    }
}
