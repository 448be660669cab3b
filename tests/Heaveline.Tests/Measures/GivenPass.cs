using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Roads;

namespace Heaveline.Tests.Measures;

/// <summary>A pass whose traces are given, not computed, so that its measures can be worked out by hand. What is not given is zero.</summary>
internal static class GivenPass
{
    /// <summary>Recorded from 0.1 s before the front wheels reach x = 0.</summary>
    /// <param name="model">The car.</param>
    /// <param name="road">The road, for its windows.</param>
    /// <param name="speed">Speed, m/s.</param>
    /// <param name="last">Time of the last sample, s.</param>
    /// <param name="rate">Samples a second.</param>
    /// <param name="traces">Number by <see cref="Channel"/>, and the value over time.</param>
    public static Pass Of(RideModel model, Road road, double speed, double last, double rate, params (int Channel, Func<double, double> At)[] traces)
    {
        var lead = (int)Math.Round(0.1 * rate);
        var timing = new PassTiming(-lead / rate, 1.0 / rate, lead + (int)Math.Round(last * rate) + 1, 4);
        var samples = new double[timing.Samples * Channel.Count];
        for (var k = 0; k < timing.Samples; k++)
        {
            foreach (var (channel, at) in traces)
            {
                samples[(k * Channel.Count) + channel] = at((k - lead) / rate);
            }
        }

        return new Pass(
            new(model, road, speed), timing, samples, new PassStatistics { Method = "given", Step = timing.Step, Steps = timing.Samples });
    }
}
