using Heaveline.Quantities;
using System.Numerics;
using System.Runtime.InteropServices;
using Heaveline.Models;
using Heaveline.Modes;

namespace Heaveline.Passes;

/// <summary>Finds the first sample at which a run leaves what the model describes.</summary>
internal static class PassRange
{
    /// <summary>Largest pitch and roll of the small-angle equations, rad.</summary>
    public const double LargestAngle = 0.35;

    /// <summary>Outcome and number of good samples, with a sentence that names place, value and limit.</summary>
    /// <param name="model">The car.</param>
    /// <param name="samples">The record.</param>
    /// <param name="timing">Its clock.</param>
    /// <param name="channels">Length of one sample.</param>
    public static (PassOutcome Outcome, int Good, string Sentence) Of(
        RideModel model, ReadOnlySpan<double> samples, PassTiming timing, int channels = Channel.Count)
    {
        var n = model.Numbers;
        var count = samples.Length / channels;
        if (Within(model, samples, channels))
        {
            return (PassOutcome.Completed, count, "");
        }

        SampleReading[] travels = [.. Enumerable.Range(0, 4).Select(i => RideSignal.Travel(model, i).Whole)];

        for (var k = 0; k < count; k++)
        {
            var s = samples.Slice(k * channels, channels);
            var time = timing.Start + (k * timing.SampleStep);
            foreach (var value in s)
            {
                if (!double.IsFinite(value))
                {
                    return (PassOutcome.Diverged, k, $"The run grew without bound at {time:F2} s. Take a smaller step.");
                }
            }

            if (Math.Abs(s[Channel.Pitch]) > LargestAngle || Math.Abs(s[Channel.Roll]) > LargestAngle)
            {
                var which = Math.Abs(s[Channel.Pitch]) > LargestAngle ? "pitch" : "roll";
                return (
                    PassOutcome.AngleOutOfRange,
                    k,
                    $"The {which} angle passed {In.Degrees.Of(LargestAngle):F0}° at {time:F2} s: the model holds for small angles only. "
                    + "Lower the speed or the obstacle; heights of metres come of a profile in mm that is read as m.");
            }

            for (var i = 0; i < 4; i++)
            {
                var travel = travels[i].Of(s);
                if (travel > n.Elements.BumpLimit[i] || travel < n.Elements.ReboundLimit[i])
                {
                    var limit = travel > 0.0 ? n.Elements.BumpLimit[i] : n.Elements.ReboundLimit[i];
                    return (
                        PassOutcome.TravelOutOfRange,
                        k,
                        $"The {CornerNames.Of(i, model.Rolls)} wheel's travel of {In.Millimetres.Of(travel):F0} mm passed its hard limit of "
                        + $"{In.Millimetres.Of(limit):F0} mm at {time:F2} s. Lower the speed or the obstacle, or describe the stop further.");
                }
            }

            if (n.Elements.Accumulators.Count > 0 && EmptyLine(n, s, travels))
            {
                return (PassOutcome.LineEmptied, k, $"The line pressure fell to zero at {time:F2} s. Raise the base pressure.");
            }
        }

        return (PassOutcome.Completed, count, "");
    }

    // Almost every pass: all finite, no angle and no travel near its limit. Few steps a sample, and none for a limit that a car does not have.
    private static bool Within(RideModel model, ReadOnlySpan<double> samples, int channels)
    {
        var n = model.Numbers;
        var nothing = Vector<double>.Zero;
        foreach (var several in MemoryMarshal.Cast<double, Vector<double>>(samples))
        {
            nothing += several * Vector<double>.Zero;
        }

        // Zero times anything finite is zero; what does not fill a vector is looked at one by one.
        var finite = Vector.Sum(nothing) == 0.0;
        for (var i = samples.Length - (samples.Length % Vector<double>.Count); i < samples.Length; i++)
        {
            finite &= double.IsFinite(samples[i]);
        }

        if (!finite || n.Elements.Accumulators.Count > 0)
        {
            return false;
        }

        var within = true;
        for (var at = 0; at < samples.Length; at += channels)
        {
            within &= Math.Abs(samples[at + Channel.Pitch]) <= LargestAngle && Math.Abs(samples[at + Channel.Roll]) <= LargestAngle;
        }

        for (var i = 0; i < 4 && within; i++)
        {
            var (least, most) = (n.Elements.ReboundLimit[i], n.Elements.BumpLimit[i]);
            if (double.IsFinite(least) || double.IsFinite(most))
            {
                var reading = RideSignal.Travel(model, i).Whole;
                for (var at = 0; at < samples.Length; at += channels)
                {
                    var travel = reading.Of(samples.Slice(at, Channel.Motion));
                    within &= travel <= most && travel >= least;
                }
            }
        }

        return within;
    }

    private static bool EmptyLine(RideNumbers n, ReadOnlySpan<double> s, SampleReading[] travels)
    {
        ReadOnlySpan<double> travel = [travels[0].Of(s), travels[1].Of(s), travels[2].Of(s), travels[3].Of(s)];
        ReadOnlySpan<double> flow = [n.TrimFlow[0] + s[Channel.Flow], n.TrimFlow[1] + s[Channel.Flow + 1]];
        foreach (var accumulator in n.Elements.Accumulators)
        {
            if (!(accumulator.StandingAt(accumulator.Sight.Of(travel, flow)) > 0.0))
            {
                return true;
            }
        }

        return false;
    }
}
