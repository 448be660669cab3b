using System.Buffers;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Heaveline.Models;
using Heaveline.Numerics;

namespace Heaveline.Passes;

/// <summary>Raw samples of one fixed-step run, <see cref="Channel.Count"/> doubles each.</summary>
internal static class PassRun
{
    /// <summary>One car: its corners in one register where the processor has such, else one by one; both agree to rounding.</summary>
    public static double[] Of(RideModel model, RoadUnderWheels road, double speed, PassTiming timing) =>
        Vector256.IsHardwareAccelerated
            ? Of<CornerQuad>(model, road, speed, timing)
            : Of<Quad<ScalarLane>>(model, road, speed, timing);

    public static double[] Of<TQuad>(RideModel model, RoadUnderWheels road, double speed, PassTiming timing)
        where TQuad : struct, IQuad<TQuad, ScalarLane>
    {
        var constants = RidePacking.Pack<TQuad, ScalarLane>([model.Numbers]);
        var steps = timing.Samples * timing.StepsPerSample;
        var (first, last) = road.Moving(speed, timing.Start, timing.Step, steps);
        // The table is of no use after the run, and large: it is borrowed. Every sample is written: it need not be cleared first.
        var table = ArrayPool<TQuad>.Shared.Rent(2 * (last - first));
        var samples = GC.AllocateUninitializedArray<double>(timing.Samples * Channel.Count);
        try
        {
            var moving = table.AsSpan(0, 2 * (last - first));
            road.Read(moving, speed, timing.Start, first, timing.Step);
            var after = TQuad.Of(new(road.Rise(0)), new(road.Rise(1)), new(road.Rise(2)), new(road.Rise(3)));
            PassStepper<TQuad, ScalarLane>.Run(
                constants,
                new(first, moving, after, road.Jumps<TQuad>(speed, timing.Start, timing.Step)),
                timing.Samples,
                timing.StepsPerSample,
                new ScalarLane(timing.Step),
                MemoryMarshal.Cast<double, ScalarLane>(samples.AsSpan()));
        }
        finally
        {
            ArrayPool<TQuad>.Shared.Return(table);
        }

        return samples;
    }
}
