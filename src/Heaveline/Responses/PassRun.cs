using System.Buffers;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Heaveline.Models;
using Heaveline.Numerics;

namespace Heaveline.Responses;

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
        var length = 2 * timing.Samples * timing.StepsPerSample;
        // The table is of no use after the run, and large: it is borrowed. Every sample is written: it need not be cleared first.
        var table = ArrayPool<TQuad>.Shared.Rent(length);
        var samples = GC.AllocateUninitializedArray<double>(timing.Samples * Channel.Count);
        try
        {
            road.Fill(table.AsSpan(0, length), speed, timing.Start, timing.Step);
            PassStepper<TQuad, ScalarLane>.Run(
                constants, table.AsSpan(0, length), timing.Samples, timing.StepsPerSample, new ScalarLane(timing.Step), MemoryMarshal.Cast<double, ScalarLane>(samples.AsSpan()));
        }
        finally
        {
            ArrayPool<TQuad>.Shared.Return(table);
        }

        return samples;
    }
}
