using Heaveline.Models;
using Heaveline.Roads;

namespace Heaveline.Passes;

/// <summary>The clock of a pass: t = 0 when the front wheel centres stand at x = 0. Samples lie on a grid through t = 0.</summary>
internal sealed record PassTiming(double Start, double SampleStep, int Samples, int StepsPerSample)
{
    public double Step => SampleStep / StepsPerSample;

    /// <summary>Number of the first sample on the grid through t = 0, negative.</summary>
    public int First => (int)Math.Round(Start / SampleStep);

    /// <summary>
    /// The clocks of the runs that a run is compared with to state its error: twice the step, and on a road with a sharp step half of it too. The
    /// error hangs there on where between two steps the jump lies, and one run alone may be as near to the truth, or as far from it, by luck.
    /// </summary>
    public IReadOnlyList<PassTiming> Compared(bool roadJumps)
    {
        var coarse = this with { StepsPerSample = StepsPerSample / 2 };
        return roadJumps ? [coarse, this with { StepsPerSample = 2 * StepsPerSample }] : [coarse];
    }

    /// <summary>A clock that covers two: the earlier start, the later end, the shorter step.</summary>
    public static PassTiming Cover(PassTiming a, PassTiming b)
    {
        var first = Math.Min(a.First, b.First);
        var last = Math.Max(a.First + a.Samples, b.First + b.Samples);
        return new PassTiming(first * a.SampleStep, a.SampleStep, last - first, Math.Max(a.StepsPerSample, b.StepsPerSample));
    }

    public static PassTiming Of(RideModel model, Road road, double speed, PassOptions options) =>
        Of(model, road, speed, options, StepChoice.Largest(model, options.LargestStep));

    /// <summary>The same with the car's longest step known already.</summary>
    public static PassTiming Of(RideModel model, Road road, double speed, PassOptions options, double longest)
    {
        var sample = 1.0 / options.SamplesPerSecond;
        var contact = Math.Max(model.Car.Front.Tyre.ContactLength.Si, model.Car.Rear.Tyre.ContactLength.Si);
        // The road must be level under every wheel at the start: half a contact length ahead of its beginning at the latest.
        var ahead = Math.Max(options.LeadTime, ((0.5 * contact) - Math.Min(0.0, road.Start)) / speed);
        var lead = (int)Math.Ceiling(ahead / sample);
        var end = options.Duration
            ?? ((Math.Max(road.End, road.EventEnd ?? 0.0) + model.Car.Wheelbase.Si + (0.5 * contact)) / speed) + options.SettlingTime;
        var samples = lead + (int)Math.Ceiling(end / sample) + 1;
        // An even number of steps, so that a run with twice the step meets the same samples.
        var steps = 2 * (int)Math.Ceiling(sample / (2.0 * longest));
        return new PassTiming(-lead * sample, sample, samples, steps);
    }
}
