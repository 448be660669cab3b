using System.Buffers;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes.Steps;

namespace Heaveline.Passes;

/// <summary>Raw samples of one fixed-step run, <see cref="Channel.Count"/> doubles each.</summary>
internal static class PassRun
{
    /// <summary>One car: its axles side by side in one register where the processor has such, else one by one; both give the same bits.</summary>
    /// <param name="model">The car.</param>
    /// <param name="road">The road under its wheels.</param>
    /// <param name="speed">Speed, m/s.</param>
    /// <param name="timing">The clock.</param>
    /// <param name="cancellation">Stops the run.</param>
    public static double[] Of(
        RideModel model, RoadUnderWheels road, double speed, PassTiming timing, CancellationToken cancellation = default)
    {
        using var stepper = Vector128.IsHardwareAccelerated
            ? Stepper.Of(model.Numbers, timing.StepsPerSample, timing.Step)
            : Stepper.Of<ScalarLane>([model.Numbers], timing.StepsPerSample, timing.Step);
        return Of(stepper, road, speed, timing, cancellation);
    }

    /// <summary>The same with a stepper of the car.</summary>
    public static double[] Of(
        BlockStepper<ScalarLane> stepper, RoadUnderWheels road, double speed, PassTiming timing, CancellationToken cancellation = default)
    {
        var (first, last) = road.Moving(speed, timing.Start, timing.Step, timing.Samples * timing.StepsPerSample);
        var jumps = road.Jumps(speed, timing.Start, timing.Step);
        var after = new Quad<ScalarLane>(new(road.Rise(0)), new(road.Rise(1)), new(road.Rise(2)), new(road.Rise(3)));
        var readers = road.Readers();
        // Every sample is written: it need not be cleared first. The table is of no use after the run: it is borrowed.
        var samples = GC.AllocateUninitializedArray<double>(timing.Samples * Channel.Count);
        var lanes = MemoryMarshal.Cast<double, ScalarLane>(samples.AsSpan());
        var table = ArrayPool<Quad<ScalarLane>>.Shared.Rent(RoadBlock.TableLength(timing));
        try
        {
            foreach (var block in RoadBlock.Of(timing, first, last))
            {
                var moving = table.AsSpan(0, 2 * block.Length);
                road.Read(moving, readers, speed, timing.Start, block.First, timing.Step);
                stepper.Run(
                    new(block.First, moving, after, jumps),
                    block.Outputs,
                    lanes.Slice(block.From * Channel.Count, block.Outputs * Channel.Count),
                    cancellation);
            }
        }
        finally
        {
            ArrayPool<Quad<ScalarLane>>.Shared.Return(table);
        }

        return samples;
    }
}
