using Heaveline.Quantities;

namespace Heaveline.Passes;

/// <summary>The clock of a pass: t = 0 when the front wheel centres stand at x = 0. Samples lie on a grid through t = 0.</summary>
internal sealed record PassTiming(double Start, double SampleStep, int Samples, int StepsPerSample)
{
    public double Step => SampleStep / StepsPerSample;

    /// <summary>Number of steps.</summary>
    public long Steps => (long)Samples * StepsPerSample;

    /// <summary>Number of the first sample on the grid through t = 0, negative.</summary>
    public int First => (int)Math.Round(Start / SampleStep);

    /// <summary>
    /// Whether the run is compared with one of half the step to state its error: twice the step would not be stable. Elsewhere twice the step tells
    /// as much for a quarter of the work.
    /// </summary>
    public bool AgainstHalf { get; init; }

    /// <summary>
    /// The clocks of the runs that a run is compared with to state its error: twice the step or half of it, and on a road with a sharp step one more.
    /// The error hangs there on where between two steps the jump lies, and one run alone may be as near to the truth, or as far from it, by luck.
    /// </summary>
    public IReadOnlyList<PassTiming> Compared(bool roadJumps)
    {
        PassTiming first = this with { StepsPerSample = AgainstHalf ? 2 * StepsPerSample : StepsPerSample / 2 };
        return roadJumps ? [first, this with { StepsPerSample = AgainstHalf ? 4 * StepsPerSample : 2 * StepsPerSample }] : [first];
    }

    /// <summary>A clock that covers two: the earlier start, the later end, the shorter step.</summary>
    public static PassTiming Cover(PassTiming a, PassTiming b)
    {
        var first = Math.Min(a.First, b.First);
        var last = Math.Max(a.First + a.Samples, b.First + b.Samples);
        return new PassTiming(first * a.SampleStep, a.SampleStep, last - first, Math.Max(a.StepsPerSample, b.StepsPerSample))
        {
            AgainstHalf = a.AgainstHalf || b.AgainstHalf,
        };
    }

    /// <summary>The clock of a pass in fixed steps.</summary>
    /// <exception cref="RefusedValueException">It would take too many steps, or record too much (<see cref="PassLimit"/>).</exception>
    public static PassTiming Of(PassRequest request, PassRecord record, FixedStep steps) =>
        Of(request, record, StepChoice.Of(request.Model, steps.LargestStep), steps.StatesError);

    /// <summary>The clock of a pass whose longest step is known already.</summary>
    /// <exception cref="RefusedValueException">It would take too many steps, or record too much (<see cref="PassLimit"/>).</exception>
    public static PassTiming Of(PassRequest request, PassRecord record, StepLimit longest, bool statesError = true)
    {
        var (model, road, speed) = request;
        var sample = record.SampleStep;
        var contact = Math.Max(model.Car.Front.Tyre.ContactLength.Si, model.Car.Rear.Tyre.ContactLength.Si);
        // The road must be level under every wheel at the start: half a contact length ahead of its beginning at the latest.
        var ahead = Math.Max(record.LeadTime, ((0.5 * contact) - Math.Min(0.0, road.Start)) / speed);
        var lead = Math.Ceiling(ahead / sample);
        var end = record.Duration
            ?? ((Math.Max(road.End, road.EventEnd ?? 0.0) + model.Car.Wheelbase.Si + (0.5 * contact)) / speed) + record.SettlingTime;
        var samples = lead + Math.Ceiling(end / sample) + 1.0;
        // An even number of steps where the error is stated, so that a run with twice the step meets the same samples.
        var steps = statesError ? 2.0 * Math.Ceiling(sample / (2.0 * longest.Step)) : Math.Ceiling(sample / longest.Step);
        PassLimit.Check(request, record, samples, steps, longest.Step);
        return new PassTiming(-(int)lead * sample, sample, (int)samples, (int)steps)
        {
            AgainstHalf = 2.0 * sample / steps > longest.Stable,
        };
    }
}
