using System.Numerics;
using Heaveline.Measures.Comfort;
using Heaveline.Quantities;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.IntegralTransforms;

namespace Heaveline.Tests.Measures;

/// <summary>
/// One-sided spectral density of an acceleration by Welch's method: pieces that overlap by half, each less its own mean, under a Hann window, their
/// periodograms averaged [Welch 1967, IEEE Trans. Audio Electroacoust. 15(2) 70-73]. "Unit" below is m/s² along an axis, rad/s² about one.
/// </summary>
/// <remarks>
/// Bins 0 and 1 are low: taking the mean off each piece takes part of them too. A steady tone is spread over
/// three bins; its mean square is their sum.
/// </remarks>
internal sealed class AccelerationSpectrum
{
    private const int FewestSamples = 16;

    private readonly double[] density;

    private AccelerationSpectrum(double[] density, double resolution, int pieces, int pieceLength)
    {
        this.density = density;
        Resolution = resolution;
        Pieces = pieces;
        PieceLength = pieceLength;
    }

    /// <summary>One-sided density at 0, Δf, 2Δf … up to half the sampling rate, shape (PieceLength/2 + 1), unit²/Hz.</summary>
    public ReadOnlySpan<double> Density => density;

    /// <summary>Δf, distance between bins, Hz: one over the length of a piece.</summary>
    public double Resolution { get; }

    /// <summary>How many pieces were averaged.</summary>
    public int Pieces { get; }

    /// <summary>Samples in a piece, even.</summary>
    public int PieceLength { get; }

    /// <summary>
    /// ν of each bin but the first and the last, which have half: for a Gaussian motion the estimate scatters about the true mean as χ²(ν)/ν does.
    /// ν = 2K/(1 + 2(1 − 1/K)/36): Hann-windowed pieces half a piece apart share (1/6)² of their power [Welch 1967, eq. for overlapped pieces].
    /// </summary>
    public double DegreesOfFreedom => 2.0 * Pieces / (1.0 + (2.0 * (1.0 - (1.0 / Pieces)) / 36.0));

    /// <summary>The spectrum of a record. Samples after the last whole piece are left out.</summary>
    /// <param name="acceleration">The record.</param>
    /// <param name="pieceSeconds">
    /// Length of a piece, s, at least 16 samples and at most the record; rounded to an even number of samples. Default 4 s: 0.25 Hz apart.
    /// </param>
    public static AccelerationSpectrum Of(SampledAcceleration acceleration, double pieceSeconds = 4.0)
    {
        var rate = acceleration.SamplingRate;
        var seconds = Checked.Within(
            pieceSeconds,
            FewestSamples / rate,
            acceleration.Duration,
            "Give pieces of at least 16 samples, no longer than the record.",
            "LengthOfAPiece");
        var half = Math.Min((int)Math.Round(0.5 * seconds * rate), acceleration.Values.Length / 2);
        var length = 2 * half;
        double[] window = [.. Enumerable.Range(0, length).Select(i => 0.5 * (1.0 - Math.Cos(2.0 * Math.PI * (i + 0.5) / length)))];
        var sums = new double[half + 1];
        var pieces = 0;
        for (var start = 0; start + length <= acceleration.Values.Length; start += half)
        {
            Add(acceleration.Values.Slice(start, length), window, sums);
            pieces++;
        }

        // ∫ over a bin of the one-sided density is the bin's mean square: twice the two-sided one, but at 0 and at half the rate, which have no twin.
        var scale = 2.0 / (rate * window.Sum(w => w * w) * pieces);
        double[] density = [.. sums.Select((sum, k) => sum * (k == 0 || k == half ? 0.5 * scale : scale))];
        return new(density, rate / length, pieces, length);
    }

    /// <summary>Frequency of a bin, Hz.</summary>
    public double FrequencyOf(int bin) => bin * Resolution;

    /// <summary>Mean square from one frequency to another, unit²: every bin counted by the share of its width that lies between them.</summary>
    /// <param name="from">Hz, 0 or above.</param>
    /// <param name="to">Hz, above <paramref name="from"/>.</param>
    public double MeanSquare(double from, double to)
    {
        _ = Checked.Within(from, 0.0, double.MaxValue, "Give the lower frequency.", "LowerFrequency");
        _ = Checked.Within(to, from, double.PositiveInfinity, "Give a higher frequency than the lower one.", "HigherFrequency");
        var sum = 0.0;
        for (var k = 0; k < density.Length; k++)
        {
            // A line stands for half a bin either side of it; the first and the last keep their whole weight inside 0 to half the rate.
            var (low, high) = (Math.Max((k - 0.5) * Resolution, 0.0), Math.Min((k + 0.5) * Resolution, FrequencyOf(density.Length - 1)));
            sum += density[k] * Resolution * Math.Clamp((Math.Min(high, to) - Math.Max(low, from)) / (high - low), 0.0, 1.0);
        }

        return sum;
    }

    /// <summary>Root mean square after a weighting, unit: √(∫|H|² G df), the exact transfer function and no filter.</summary>
    /// <param name="weighting">The weighting.</param>
    public double WeightedRms(Weighting weighting)
    {
        var sum = 0.0;
        for (var k = 0; k < density.Length; k++)
        {
            var factor = weighting.Factor(FrequencyOf(k));
            sum += factor * factor * density[k] * Resolution;
        }

        return Math.Sqrt(sum);
    }

    /// <summary>
    /// What to multiply a bin's density by for the ends of the interval that holds the true one, ν/χ² [Bendat and Piersol, Random Data, ch. 8].
    /// </summary>
    /// <param name="confidence">Probability, above 0 and below 1, for instance 0.95.</param>
    public (double Low, double High) IntervalFactors(double confidence)
    {
        var tail = 0.5 * (1.0 - Checked.Within(confidence, double.Epsilon, Math.BitDecrement(1.0), "Give a probability such as 0.95."));
        return (DegreesOfFreedom / ChiSquared.InvCDF(DegreesOfFreedom, 1.0 - tail), DegreesOfFreedom / ChiSquared.InvCDF(DegreesOfFreedom, tail));
    }

    private static void Add(ReadOnlySpan<double> piece, double[] window, double[] sums)
    {
        var mean = 0.0;
        foreach (var value in piece)
        {
            mean += value / piece.Length;
        }

        var transform = new Complex[piece.Length];
        for (var i = 0; i < transform.Length; i++)
        {
            transform[i] = window[i] * (piece[i] - mean);
        }

        Fourier.Forward(transform, FourierOptions.NoScaling);
        for (var k = 0; k < sums.Length; k++)
        {
            sums[k] += (transform[k].Real * transform[k].Real) + (transform[k].Imaginary * transform[k].Imaginary);
        }
    }
}
