using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Passes.Exact;
using Heaveline.Passes.Steps;

namespace Heaveline.Tests.Passes;

/// <summary>The stepped run over the same numbers and road as an exact run, one car, one double a lane.</summary>
internal static class SteppedPass
{
    /// <summary>
    /// Samples as <see cref="Channel"/> lays them out; <paramref name="start"/> is a whole number of steps, so that t = 0 is hit exactly.
    /// </summary>
    internal static double[] Of(RideNumbers numbers, ExactRoad road, double speed, double start, double step, int perOutput, int outputs)
    {
        var lead = Math.Round(-start / step);
        Assert.Equal(-start, lead * step, 1e-9);
        var delay = (numbers.X[0] - numbers.X[2]) / speed;
        var readers = road.Corners.Select(profile => profile.Reader()).ToArray();
        var packed = new Quad<ScalarLane>[2 * outputs * perOutput];
        for (var n = 0; n < outputs * perOutput; n++)
        {
            var t = (n - lead) * step;
            var height = new ScalarLane[4];
            var rate = new ScalarLane[4];
            for (var i = 0; i < 4; i++)
            {
                readers[i].At(speed * (i < 2 ? t : t - delay), out var h, out var slope);
                (height[i], rate[i]) = (ScalarLane.Of(h - road.Corners[i].StartHeight), ScalarLane.Of(speed * slope));
            }

            packed[2 * n] = new Quad<ScalarLane>(height[0], height[1], height[2], height[3]);
            packed[(2 * n) + 1] = new Quad<ScalarLane>(rate[0], rate[1], rate[2], rate[3]);
        }

        var samples = new ScalarLane[outputs * Channel.Count];
        using var stepper = Stepper.Of(numbers, perOutput, step);
        stepper.Run(new(0, packed, default), outputs, samples);
        return Array.ConvertAll(samples, lane => lane.Value);
    }

    /// <summary>
    /// Largest difference of two sets of samples in one channel, over the largest value of the second; where that is below 1e-10
    /// (zero by symmetry) the difference itself.
    /// </summary>
    internal static double Miss(double[] samples, double[] truth, int channel, int channels = 1)
    {
        var (miss, peak) = (0.0, 0.0);
        for (var at = 0; at < truth.Length; at += Channel.Count)
        {
            for (var c = channel; c < channel + channels; c++)
            {
                miss = Math.Max(miss, Math.Abs(samples[at + c] - truth[at + c]));
                peak = Math.Max(peak, Math.Abs(truth[at + c]));
            }
        }

        return peak < 1e-10 ? miss : miss / peak;
    }
}
