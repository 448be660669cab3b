using Heaveline.Elements;
using Heaveline.Numerics;

namespace Heaveline.Passes;

/// <summary>Watches passes side by side while they run, each for the first sample at which it leaves what the model describes.</summary>
/// <remarks>A motion that is once not finite stays so: the last sample of a stretch tells whether all of it is.</remarks>
internal sealed class RangeWatch<TLane>
    where TLane : unmanaged, ILane<TLane>
{
    private readonly PassGroup group;
    private readonly PassTiming timing;
    private readonly int channels;
    private readonly SampleReading[]?[] travels;
    private readonly (LaneReading<TLane> Travel, TLane Least, TLane Most)[] limits;
    private readonly bool hasLines;
    private readonly double[] one;
    private int at;

    /// <param name="group">The passes.</param>
    /// <param name="timing">The clock that covers all of theirs.</param>
    /// <param name="channels">How much of a sample is recorded.</param>
    public RangeWatch(PassGroup group, PassTiming timing, int channels)
    {
        (this.group, this.timing, this.channels) = (group, timing, channels);
        one = new double[channels];
        Outcomes = new PassOutcome[group.Requests.Length];
        Array.Fill(Outcomes, PassOutcome.Completed);
        hasLines = Array.Exists(group.Requests, r => r.Model.Numbers.Elements.Accumulators.Count > 0);
        travels = new SampleReading[]?[Outcomes.Length];
        limits = [.. Enumerable.Range(0, 4).Where(i => Array.Exists(group.Requests, r => IsLimited(r.Model.Numbers.Elements, i))).Select(i => (
            new LaneReading<TLane>([.. Outcomes.Select((_, lane) => Travels(lane)[i])]),
            Across(laws => laws.ReboundLimit[i]),
            Across(laws => laws.BumpLimit[i])))];

        TLane Across(Func<ElementList, double> limit)
        {
            Span<double> values = stackalloc double[TLane.Count];
            for (var lane = 0; lane < values.Length; lane++)
            {
                values[lane] = limit(group.Requests[Math.Min(lane, group.Requests.Length - 1)].Model.Numbers.Elements);
            }

            return TLane.From(values);
        }
    }

    /// <summary>How each pass has come through so far.</summary>
    public PassOutcome[] Outcomes { get; }

    /// <summary>Looks at the next samples.</summary>
    /// <returns>Whether any pass is still within the model's range.</returns>
    public bool Look(ReadOnlySpan<TLane> samples, int outputs)
    {
        if (hasLines || !Within(samples, outputs))
        {
            for (var lane = 0; lane < Outcomes.Length; lane++)
            {
                Look(samples, outputs, lane);
            }
        }

        at += outputs;
        return Array.Exists(Outcomes, outcome => outcome == PassOutcome.Completed);
    }

    private void Look(ReadOnlySpan<TLane> samples, int outputs, int lane)
    {
        Span<double> lanes = stackalloc double[TLane.Count];
        var (own, model) = (group.Clocks[lane], group.Requests[lane].Model);
        var begin = own.First - timing.First;
        var (from, to) = (Math.Max(at, begin), Math.Min(at + outputs, begin + own.Samples));
        for (var k = from; k < to && Outcomes[lane] == PassOutcome.Completed; k++)
        {
            var sample = samples.Slice((k - at) * channels, channels);
            for (var i = 0; i < channels; i++)
            {
                sample[i].To(lanes);
                one[i] = lanes[lane];
            }

            var (outcome, _) = PassRange.Leaves(model, Travels(lane), one, own.Start + ((k - begin) * own.SampleStep));
            Outcomes[lane] = outcome ?? PassOutcome.Completed;
        }
    }

    // Most cars have no limit that asks for them.
    private SampleReading[] Travels(int lane) => travels[lane] ??= PassRange.Travels(group.Requests[lane].Model);

    // Almost always: no lane near a limit, whatever those past their own end do.
    private bool Within(ReadOnlySpan<TLane> samples, int outputs)
    {
        var (angle, zero) = (TLane.Of(PassRange.LargestAngle), TLane.Of(0.0));
        var nothing = zero;
        foreach (ref readonly var value in samples.Slice((outputs - 1) * channels, channels))
        {
            nothing += value * zero;
        }

        var farthest = zero;
        for (var k = 0; k < samples.Length; k += channels)
        {
            var (pitch, roll) = (samples[k + Channel.Pitch], samples[k + Channel.Roll]);
            farthest = TLane.Max(farthest, TLane.Max(TLane.Max(pitch, -pitch), TLane.Max(roll, -roll)));
        }

        var within = !TLane.AnyAbove(farthest, angle) && AllZero(nothing);
        foreach (ref readonly var limit in limits.AsSpan())
        {
            var (least, most) = (zero, zero);
            for (var k = 0; k < samples.Length && within; k += channels)
            {
                var travel = limit.Travel.Of(samples.Slice(k, channels));
                (least, most) = k == 0 ? (travel, travel) : (TLane.Min(least, travel), TLane.Max(most, travel));
            }

            within &= !TLane.AnyAbove(most, limit.Most) && !TLane.AnyAbove(limit.Least, least);
        }

        return within;
    }

    private static bool AllZero(TLane values)
    {
        Span<double> lanes = stackalloc double[TLane.Count];
        values.To(lanes);
        // Not a number is no zero.
        return !lanes.ContainsAnyExcept(0.0);
    }

    private static bool IsLimited(ElementList laws, int i) => double.IsFinite(laws.ReboundLimit[i]) || double.IsFinite(laws.BumpLimit[i]);
}
