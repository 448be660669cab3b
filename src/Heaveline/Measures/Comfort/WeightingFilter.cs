using System.Numerics;
using Heaveline.Quantities;

namespace Heaveline.Measures.Comfort;

/// <summary>
/// A weighting as a digital filter for one sampling rate: second-order sections with matched poles and zeros, and a 25-tap correction
/// of magnitude and phase (<see cref="Equaliser"/>). It starts from rest (zero before the record), adds no delay, and takes the last
/// sample as held for 12 samples after the end.
/// </summary>
/// <remarks>
/// Why not the bilinear transform: at 1 kHz it is 3.4 % low at 80 Hz. Why not the exact answer to straight lines between samples (first-order hold):
/// a sampled sine of frequency f then loses sinc²(f/f_s), 2.1 % at 80 Hz and 1 kHz, 43 % at 0.4 f_s. This filter keeps within 0.05 % up to 0.4 f_s at
/// any rate. A constant offset (gravity in a logged acceleration) is a step at the start for a filter from rest: take it off first.
/// </remarks>
public sealed class WeightingFilter
{
    /// <summary>
    /// The largest <see cref="WorstError"/> that is let through, 1 % (our choice): a tenth of the −11 % … +12 % that ISO 8041-1 (Tables 4 and 5, read
    /// in a public transcription) allows a whole instrument, transducer included, in its narrow band.
    /// </summary>
    public const double LargestError = 0.01;

    /// <summary>The highest usable frequency over the sampling rate (–).</summary>
    public const double UsableBand = Equaliser.Band;

    private const int Probes = 600;
    private const double FastestRate = 1e6;
    private readonly DigitalSection[] _sections;
    private readonly double[] _taps;

    private WeightingFilter(Weighting weighting, double samplingRate)
    {
        Weighting = weighting;
        SamplingRate = samplingRate;
        _sections = [.. weighting.Sections().Select(section => section.Matched(1.0 / samplingRate))];
        _taps = Equaliser.Fit(weighting, _sections, samplingRate);
        WorstError = Worst();
    }

    /// <summary>The weighting.</summary>
    public Weighting Weighting { get; }

    /// <summary>Samples per second, Hz.</summary>
    public double SamplingRate { get; }

    /// <summary>
    /// The end of the band in which <see cref="WorstError"/> holds, Hz: the end of the weighting's table or 0.4 of the sampling rate, the lower one.
    /// </summary>
    public double UpTo => Math.Min(Weighting.CheckedTo, UsableBand * SamplingRate);

    /// <summary>The worst error against the weighting from the start of its table (0.1 Hz; Wf 0.02 Hz) to <see cref="UpTo"/>.</summary>
    public FilterError WorstError { get; }

    /// <summary>The filter of a weighting for a sampling rate.</summary>
    /// <param name="weighting">The weighting.</param>
    /// <param name="samplingRate">Samples per second, Hz.</param>
    /// <param name="mustReach">
    /// The highest frequency that has to be evaluated, Hz. Left out: the end of the narrow tolerance band of ISO 8041-1, 63.1 Hz (Wf
    /// 0.398 Hz). A lower one is the caller's statement that the motion holds nothing of weight above it; the result is then not an
    /// evaluation over the whole range of the standard.
    /// </param>
    /// <exception cref="RefusedValueException">
    /// The rate is below mustReach/0.4, or too high to be computed with; the lowest rate that serves is named.
    /// </exception>
    public static WeightingFilter Of(Weighting weighting, double samplingRate, double? mustReach = null)
    {
        var reach = Checked.Within(
            mustReach ?? weighting.MustReach,
            weighting.CheckedFrom,
            weighting.CheckedTo,
            "Stay inside the table of the weighting.",
            "HighestFrequencyToEvaluate");
        var lowest = LowestRate(reach);
        // Whoever asks for the very end of the band gets it, whichever way its product and quotient were rounded.
        if (!(samplingRate >= lowest * (1.0 - 1e-12) && samplingRate <= FastestRate))
        {
            throw new RefusedValueException(
                "sampling rate",
                FormattableString.Invariant($"{samplingRate:G6} Hz"),
                FormattableString.Invariant($"between {lowest:G6} and {FastestRate:G6} Hz for {weighting.Name} up to {reach:G4} Hz"),
                "Log faster, or state a lower frequency as the highest that matters.");
        }

        var filter = new WeightingFilter(weighting, samplingRate);
        return filter.WorstError.Relative <= LargestError
            ? filter
            : throw new RefusedValueException(
                "error of the weighting filter",
                FormattableString.Invariant($"{In.Percent.Of(filter.WorstError.Relative):G3} % at {filter.WorstError.Frequency:G4} Hz"),
                FormattableString.Invariant($"at most {In.Percent.Of(LargestError):G3} %"),
                FormattableString.Invariant($"Resample the record nearer to {lowest:G6} Hz."));
    }

    /// <summary>The lowest sampling rate that shows a frequency, Hz: the frequency/0.4.</summary>
    /// <param name="frequency">The frequency, Hz.</param>
    public static double LowestRate(double frequency) => frequency / UsableBand;

    /// <summary>The filter's transfer function at a frequency, with no delay (–).</summary>
    /// <param name="frequency">Hz, below half the sampling rate.</param>
    public Complex At(double frequency) =>
        Equaliser.At(_sections, _taps, Complex.FromPolarCoordinates(1.0, -2.0 * Math.PI * frequency / SamplingRate));

    /// <summary>Weights a record.</summary>
    /// <param name="acceleration">The acceleration at the filter's sampling rate.</param>
    public WeightedAcceleration Weigh(SampledAcceleration acceleration)
    {
        if (Math.Abs(acceleration.SamplingRate - SamplingRate) > 1e-9 * SamplingRate)
        {
            throw new RefusedValueException(
                "sampling rate of the record",
                FormattableString.Invariant($"{acceleration.SamplingRate:G9} Hz"),
                FormattableString.Invariant($"{SamplingRate:G9} Hz, the filter's"),
                "Make the filter for the record's own rate.");
        }

        var weighted = new double[acceleration.Values.Length];
        Run(acceleration.Values, weighted);
        return new WeightedAcceleration(Weighting, SampledAcceleration.Of(weighted, SamplingRate));
    }

    /// <summary>Filters samples.</summary>
    /// <param name="samples">a, shape (n), m/s² or rad/s².</param>
    /// <param name="weighted">Receives a_w, shape (n), same unit. May be the input.</param>
    public void Run(ReadOnlySpan<double> samples, Span<double> weighted)
    {
        var work = new double[samples.Length + (2 * Equaliser.Reach)];
        samples.CopyTo(work.AsSpan(Equaliser.Reach));
        work.AsSpan(Equaliser.Reach + samples.Length).Fill(samples.Length > 0 ? samples[^1] : 0.0);
        foreach (var section in _sections)
        {
            section.Run(work.AsSpan(Equaliser.Reach));
        }

        for (var k = 0; k < samples.Length; k++)
        {
            // y_k = Σ c_m x_(k−m): x_(k+12) … x_(k−12) stand at work[k+24] … work[k].
            var sum = 0.0;
            for (var tap = 0; tap < _taps.Length; tap++)
            {
                sum = Math.FusedMultiplyAdd(_taps[tap], work[k + _taps.Length - 1 - tap], sum);
            }

            weighted[k] = sum;
        }
    }

    private FilterError Worst()
    {
        var worst = default(FilterError);
        var ratio = UpTo / Weighting.CheckedFrom;
        for (var i = 0; i <= Probes; i++)
        {
            var frequency = Weighting.CheckedFrom * Math.Pow(ratio, i / (double)Probes);
            var exact = Weighting.At(frequency);
            var error = (At(frequency) - exact).Magnitude / exact.Magnitude;
            if (!(error <= worst.Relative))
            {
                worst = new(error, frequency);
            }
        }

        return worst;
    }
}
