using System.Buffers;
using Heaveline.Models;
using Heaveline.Numerics;

namespace Heaveline.Responses;

/// <summary>Runs a group of passes at one width and takes the lanes apart again.</summary>
internal static class PassLanes<TLane>
    where TLane : struct, ILane<TLane>
{
    /// <summary>Recorded samples of each pass on its own clock, one sample after the other, some channels each.</summary>
    public static double[][] Samples(PassGroup group, PassTiming timing, int channels)
    {
        if (group.Requests.Length > TLane.Count)
        {
            throw new ArgumentException($"{group.Requests.Length} passes do not fit in {TLane.Count} lanes.", nameof(group));
        }

        var constants = RidePacking.Pack<Quad<TLane>, TLane>([.. group.Requests.Select(r => r.Model.Numbers)]);
        var road = new LaneRoads<TLane>(group);
        var steps = timing.Samples * timing.StepsPerSample;
        var (first, last) = road.Moving(timing.Start, timing.Step, steps);
        // Both are large and of no use after the run: borrowed, since clearing and collecting them would cost more than the run (measured 2026-11-25).
        var table = ArrayPool<Quad<TLane>>.Shared.Rent(2 * (last - first));
        var samples = ArrayPool<TLane>.Shared.Rent(timing.Samples * channels);
        try
        {
            var moving = table.AsSpan(0, 2 * (last - first));
            road.Read(moving, timing.Start, first, timing.Step);
            PassStepper<Quad<TLane>, TLane>.Run(
                constants, new(first, moving, road.After), timing.Samples, timing.StepsPerSample, TLane.Of(timing.Step), samples.AsSpan(0, timing.Samples * channels), channels);
            return Apart(samples, group.Clocks, timing, channels);
        }
        finally
        {
            ArrayPool<Quad<TLane>>.Shared.Return(table);
            ArrayPool<TLane>.Shared.Return(samples);
        }
    }

    private static double[][] Apart(TLane[] samples, PassTiming[] clocks, PassTiming timing, int channels)
    {
        double[][] each = [.. clocks.Select(c => GC.AllocateUninitializedArray<double>(c.Samples * channels))];
        Span<double> lanes = stackalloc double[TLane.Count];
        for (var k = 0; k < each.Length; k++)
        {
            // Every lane ends at its own time: what the others still record is not its own.
            var own = each[k];
            var shift = channels * (clocks[k].First - timing.First);
            for (var i = 0; i < own.Length; i++)
            {
                samples[shift + i].To(lanes);
                own[i] = lanes[k];
            }
        }

        return each;
    }
}
