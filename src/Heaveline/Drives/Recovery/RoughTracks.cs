using System.Numerics;
using Heaveline.Numerics;
using Heaveline.Roads;

namespace Heaveline.Drives.Recovery;

/// <summary>
/// A closed lap of random road in two tracks as alike as an isotropic surface makes them, of which the mean has the displacement density
/// G·(n/0.1)⁻²: the mean is what heave and pitch feel. By one transform, a hundred times as fast as a sum of waves.
/// </summary>
internal sealed class RoughTracks
{
    /// <summary>Distance between two heights, m.</summary>
    public const double Spacing = 0.05;

    // 1.6 km.
    private const int Count = 1 << 15;

    private readonly Complex[] heights;

    private RoughTracks(Complex[] heights) => this.heights = heights;

    /// <summary>Draws a lap.</summary>
    /// <param name="density">G at 0.1 cycles/m, m³.</param>
    /// <param name="track">Distance between the tracks, m; 0: one track.</param>
    /// <param name="seed">Where its chance comes from.</param>
    /// <param name="stop">Stops it.</param>
    public static RoughTracks Of(double density, double track, ulong seed, CancellationToken stop)
    {
        var step = 1.0 / (Count * Spacing);
        var band = SpatialBand.Iso8608;
        var together = new TrackCoherence { Track = new(track) };
        var spectrum = new Complex[Count];
        for (var k = 1; k < Count / 2; k++)
        {
            var n = k * step;
            if (n < band.Low || n > band.High)
            {
                continue;
            }

            // A line's variance is the density times the step: half of it in each of its two sides.
            var size = Math.Sqrt(0.25 * density * 0.01 / (n * n) * step);
            var (a, b) = SplitMix.Normals(seed, 4UL * (ulong)k);
            var (c, d) = SplitMix.Normals(seed, (4UL * (ulong)k) + 2UL);
            // Half the sum of the tracks has the density asked for, half their difference (1 − γ)/(1 + γ) of it.
            var alike = track > 0.0 ? Math.Max(together.At(n), 0.0) : 1.0;
            var mean = new Complex(size * a, size * b);
            var apart = Math.Sqrt((1.0 - alike) / (1.0 + alike)) * new Complex(size * c, size * d);
            var (left, right) = (mean + apart, mean - apart);
            spectrum[k] = left + (Complex.ImaginaryOne * right);
            spectrum[Count - k] = Complex.Conjugate(left) + (Complex.ImaginaryOne * Complex.Conjugate(right));
        }

        PowerOfTwo.Reorder(spectrum);
        PowerOfTwo.Backward(spectrum, stop);
        return new RoughTracks(spectrum);
    }

    /// <summary>Heights of the left and the right track at a place, counted in spacings round the lap, m.</summary>
    public (double Left, double Right) At(int place)
    {
        var height = heights[((place % Count) + Count) % Count];
        return (height.Real, height.Imaginary);
    }
}
