using System.Numerics;

namespace Heaveline.Drives.Identification;

/// <summary>
/// A free hump as cubic B-splines of even spacing: a spline of spacing δ about the place x has the transform δ·(sin u/u)⁴·e^(−iκx), u = κδ/2
/// [Unser, Splines: a perfect fit for signal and image processing, IEEE Signal Process. Mag. 16(6), 1999].
/// </summary>
internal sealed class HumpSplines
{
    // The hump may be this much longer than said, at either end and as a share of its length.
    private const double Margin = 0.15;

    // Spacing as a share of the length, and at most, m.
    private const double Share = 0.1;
    private const double Widest = 0.3;

    // Splines in the shortest wave that any pass feels: finer ones would draw what nothing in the drive tells.
    private const double InShortestWave = 4.0;
    private const int Fewest = 4;

    /// <summary>Splines of a hump.</summary>
    /// <param name="length">How long it is said to be, m.</param>
    /// <param name="shortestWave">The shortest wave that the slowest pass over it feels, m.</param>
    public HumpSplines(double length, double shortestWave)
    {
        Length = length;
        var whole = (1.0 + (2.0 * Margin)) * length;
        var wanted = Math.Max(Math.Min(Widest, Share * length), shortestWave / InShortestWave);
        var pieces = Math.Max(Fewest, (int)Math.Ceiling(whole / wanted));
        Spacing = whole / pieces;
        Count = pieces - 1;
        First = (-Margin * length) + Spacing;
    }

    /// <summary>How long the hump is said to be, m.</summary>
    public double Length { get; }

    /// <summary>Distance between two splines, m: the shortest wave they draw is twice as long.</summary>
    public double Spacing { get; }

    /// <summary>How many.</summary>
    public int Count { get; }

    /// <summary>The middle of the first, m from where the hump is thought to begin.</summary>
    public double First { get; }

    /// <summary>Where the splines begin and end, m.</summary>
    public (double From, double To) Extent => (First - (2.0 * Spacing), First + ((Count + 1) * Spacing));

    /// <summary>Transforms of all splines driven over at a speed, each over time, and their derivatives by ln of the speed.</summary>
    /// <param name="frequency">Hz.</param>
    /// <param name="speed">m/s.</param>
    /// <param name="value">Receives the transforms, m·s.</param>
    /// <param name="bySpeed">Receives the derivatives.</param>
    public void Transform(double frequency, double speed, Span<Complex> value, Span<Complex> bySpeed)
    {
        var wave = 2.0 * Math.PI * frequency / speed;
        var u = 0.5 * wave * Spacing;
        var (sine, cosine) = Math.SinCos(u);
        var sinc = u < 1e-6 ? 1.0 : sine / u;
        var size = Spacing / speed * sinc * sinc * sinc * sinc;
        // κ·d ln(sin u/u)⁴/dκ, turned about by dκ/d ln V = −κ.
        var slope = u < 1e-4 ? 4.0 * u * u / 3.0 : 4.0 * (1.0 - (u * cosine / sine));
        for (var j = 0; j < Count; j++)
        {
            var x = First + (j * Spacing);
            var (s, c) = Math.SinCos(wave * x);
            value[j] = new Complex(size * c, -size * s);
            bySpeed[j] = value[j] * new Complex(slope - 1.0, wave * x);
        }
    }

    /// <summary>Weights of these splines that draw nearly what others draw: the very same where both are the same.</summary>
    /// <param name="other">The others.</param>
    /// <param name="weights">Their weights.</param>
    /// <param name="result">Receives these splines' weights.</param>
    public void From(HumpSplines other, ReadOnlySpan<double> weights, Span<double> result)
    {
        for (var j = 0; j < Count; j++)
        {
            if (other.Count == Count && other.Spacing == Spacing && other.First == First)
            {
                result[j] = weights[j];
                continue;
            }

            result[j] = 0.0;
            for (var i = 0; i < other.Count; i++)
            {
                result[j] += weights[i] * other.At(i, First + (j * Spacing));
            }
        }
    }

    /// <summary>How high a spline of height 1 stands at a place.</summary>
    /// <param name="j">Which.</param>
    /// <param name="x">m.</param>
    public double At(int j, double x)
    {
        var t = Math.Abs((x - First) / Spacing - j);
        return t < 1.0 ? (2.0 / 3.0) - (t * t) + (0.5 * t * t * t) : t < 2.0 ? (2.0 - t) * (2.0 - t) * (2.0 - t) / 6.0 : 0.0;
    }
}
