using System.Globalization;
using Heaveline.Quantities;

namespace Heaveline.Measures.Comfort;

/// <summary>An acceleration sampled at a constant rate: m/s² along an axis, or rad/s² about one.</summary>
public sealed class SampledAcceleration
{
    /// <summary>
    /// How far a time stamp may stand from its place in a regular row, over the step (–). Stamps rounded in print do; a gap or a burst does not.
    /// </summary>
    /// <remarks>
    /// A jitter of 5 % of 1 ms is a phase error of 0.025 rad at 80 Hz; uncorrelated from sample to sample it adds
    /// 0.03 % to an r.m.s. Our choice, no source.
    /// </remarks>
    public const double JitterAllowed = 0.05;

    private readonly double[] _values;

    private SampledAcceleration(double[] values, double samplingRate)
    {
        _values = values;
        SamplingRate = samplingRate;
    }

    /// <summary>Samples per second, Hz.</summary>
    public double SamplingRate { get; }

    /// <summary>The samples, shape (n), m/s² or rad/s².</summary>
    public ReadOnlySpan<double> Values => _values;

    /// <summary>Length of the record, n over the sampling rate, s.</summary>
    public double Duration => _values.Length / SamplingRate;

    /// <summary>A record from samples and their rate.</summary>
    /// <param name="values">Shape (n), n at least 2, finite, m/s² or rad/s². Copied.</param>
    /// <param name="samplingRate">Samples per second, Hz, above 0.</param>
    public static SampledAcceleration Of(ReadOnlySpan<double> values, double samplingRate)
    {
        _ = Checked.Within(samplingRate, double.Epsilon, double.MaxValue, "Give the samples per second.", nameof(SamplingRate));
        if (values.Length < 2)
        {
            throw new RefusedValueException(
                "number of samples", FormattableString.Invariant($"{values.Length}"), "at least 2", "Give a longer record.");
        }

        for (var i = 0; i < values.Length; i++)
        {
            if (!double.IsFinite(values[i]))
            {
                throw new RefusedValueException(
                    FormattableString.Invariant($"sample {i}"),
                    FormattableString.Invariant($"{values[i]}"),
                    "a finite number",
                    "Fill or cut out the gap before evaluating.");
            }
        }

        return new(values.ToArray(), samplingRate);
    }

    /// <summary>A record from time stamps and samples. Irregular times are refused: how to resample is the caller's decision.</summary>
    /// <param name="times">t, shape (n), s, evenly spaced within <see cref="JitterAllowed"/> of the step.</param>
    /// <param name="values">a, shape (n), m/s² or rad/s².</param>
    public static SampledAcceleration From(ReadOnlySpan<double> times, ReadOnlySpan<double> values)
    {
        if (times.Length != values.Length || times.Length < 2)
        {
            throw new RefusedValueException(
                "number of times",
                string.Create(CultureInfo.InvariantCulture, $"{times.Length}"),
                FormattableString.Invariant($"{values.Length}, as many as samples, and at least 2"),
                "Give one time for each sample.");
        }

        var step = (times[^1] - times[0]) / (times.Length - 1);
        for (var i = 0; i < times.Length; i++)
        {
            var off = Math.Abs(times[i] - times[0] - (i * step));
            if (!(step > 0.0 && off <= JitterAllowed * step))
            {
                throw new RefusedValueException(
                    FormattableString.Invariant($"time of sample {i}"),
                    FormattableString.Invariant($"{times[i]:G9} s, {off:G3} s from its place in a regular row"),
                    FormattableString.Invariant($"within {JitterAllowed * step:G3} s, {In.Percent.Of(JitterAllowed):G3} % of the step"),
                    "Resample the record to a constant rate first.");
            }
        }

        return Of(values, 1.0 / step);
    }
}
