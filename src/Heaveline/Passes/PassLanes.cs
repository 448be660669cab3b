using System.Buffers;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes.Steps;

namespace Heaveline.Passes;

/// <summary>Runs a group of passes at one width and takes the lanes apart again.</summary>
internal static class PassLanes<TLane>
    where TLane : unmanaged, ILane<TLane>
{
    /// <summary>Recorded samples of each pass on its own clock, one sample after the other, all channels each.</summary>
    /// <param name="group">The passes.</param>
    /// <param name="timing">The clock that covers all of theirs.</param>
    /// <param name="cancellation">Stops the run.</param>
    public static double[][] Samples(PassGroup group, PassTiming timing, CancellationToken cancellation)
    {
        if (group.Requests.Length > TLane.Count)
        {
            throw new ArgumentException($"{group.Requests.Length} passes do not fit in {TLane.Count} lanes.", nameof(group));
        }

        using var road = new RoadTable<TLane>(group, timing);
        RideNumbers[] cars = [.. group.Requests.Select(r => r.Model.Numbers)];
        using var stepper = Stepper.Of<TLane>(cars, timing.StepsPerSample, timing.Step);
        // Large and of no use after the run: borrowed, since clearing and collecting them would cost more than the run (measured 2026-11-25).
        var samples = ArrayPool<TLane>.Shared.Rent(timing.Samples * Channel.Count);
        try
        {
            foreach (var block in road.Blocks)
            {
                var chunk = samples.AsSpan(block.From * Channel.Count, block.Outputs * Channel.Count);
                stepper.Run(road.Read(block), block.Outputs, chunk, cancellation);
            }

            return Apart(samples, group.Clocks, timing);
        }
        finally
        {
            ArrayPool<TLane>.Shared.Return(samples);
        }
    }

    private static unsafe double[][] Apart(ReadOnlySpan<TLane> samples, PassTiming[] clocks, PassTiming timing)
    {
        var each = new double[clocks.Length][];
        fixed (TLane* recorded = samples)
        {
            for (var k = 0; k < each.Length; k++)
            {
                // Every lane ends at its own time: what the others still record is not its own.
                var own = each[k] = GC.AllocateUninitializedArray<double>(clocks[k].Samples * Channel.Count);
                var from = Channel.Count * (clocks[k].First - timing.First);
                for (var i = 0; i < own.Length; i++)
                {
                    own[i] = LaneLayout<TLane>.At(recorded + from + i, k);
                }
            }
        }

        return each;
    }
}
