using System.Numerics;
using Heaveline.Numerics;

namespace Heaveline.Roads;

/// <summary>
/// Fourier transform of equally spaced heights less their least-squares line, under a Hann window. The line and the window are there because a
/// road's long waves, which do not fit into the record, would otherwise spill 1/n² over its whole spectrum, as large as the spectrum itself.
/// </summary>
internal sealed class Periodogram
{
    private readonly Complex[] transform;
    private readonly double scale;

    private Periodogram(Complex[] transform, int count, double spacing, double windowPower)
    {
        this.transform = transform;
        Resolution = 1.0 / (count * spacing);
        Last = (count - 1) / 2;
        scale = 2.0 * spacing / windowPower;
    }

    /// <summary>Distance between bins, cycles/m.</summary>
    internal double Resolution { get; }

    /// <summary>Highest bin below the Nyquist frequency.</summary>
    internal int Last { get; }

    internal static Periodogram Of(ReadOnlySpan<double> heights, double spacing, CancellationToken stop = default)
    {
        var count = heights.Length;
        var middle = 0.5 * (count - 1);
        var mean = Average(heights);
        var (moment, square) = (0.0, 0.0);
        for (var i = 0; i < count; i++)
        {
            moment += (i - middle) * (heights[i] - mean);
            square += (i - middle) * (i - middle);
        }

        var windowed = new double[count];
        var power = 0.0;
        for (var i = 0; i < count; i++)
        {
            var window = 0.5 * (1.0 - Math.Cos(2.0 * Math.PI * (i + 0.5) / count));
            power += window * window;
            windowed[i] = window * (heights[i] - mean - (moment / square * (i - middle)));
        }

        return new Periodogram(RealFourier.Of(windowed, stop), count, spacing, power);
    }

    private static double Average(ReadOnlySpan<double> heights)
    {
        var sum = 0.0;
        foreach (var height in heights)
        {
            sum += height;
        }

        return sum / heights.Length;
    }

    /// <summary>One-sided density at bin k, m³, k from 1 to <see cref="Last"/>.</summary>
    internal double At(int k) => scale * ((transform[k].Real * transform[k].Real) + (transform[k].Imaginary * transform[k].Imaginary));

    /// <summary>One-sided cross density with another periodogram of the same count and spacing, m³.</summary>
    internal Complex CrossAt(Periodogram other, int k) => scale * transform[k] * Complex.Conjugate(other.transform[k]);

    /// <summary>
    /// Squared correlation of the transform at bins j apart: the Hann window has bins −1/4, 1/2, −1/4, so neighbours share 2/3 and the next 1/6 of
    /// their amplitude.
    /// </summary>
    internal static double Correlation(int apart) => Math.Abs(apart) switch { 0 => 1.0, 1 => 4.0 / 9.0, 2 => 1.0 / 36.0, _ => 0.0 };
}
