using System.Runtime.Intrinsics;
using Heaveline.Models;
using Heaveline.Numerics;

namespace Heaveline.Responses;

/// <summary>Raw samples of one fixed-step run, <see cref="Channel.Count"/> doubles each.</summary>
internal static class PassRun
{
    /// <summary>One car: its corners in one register where the processor has such, else one by one; both give the same bits.</summary>
    public static double[] Of(RideModel model, RoadUnderWheels road, double speed, PassTiming timing) =>
        Vector256.IsHardwareAccelerated
            ? Of<CornerQuad>(model, road, speed, timing)
            : Of<Quad<ScalarLane>>(model, road, speed, timing);

    public static double[] Of<TQuad>(RideModel model, RoadUnderWheels road, double speed, PassTiming timing)
        where TQuad : struct, IQuad<TQuad, ScalarLane>
    {
        var constants = RidePacking.Pack<TQuad, ScalarLane>([model.Numbers]);
        var table = road.Table<TQuad>(speed, timing.Start, timing.Step, timing.Samples * timing.StepsPerSample);
        var samples = new double[timing.Samples * Channel.Count];
        PassStepper<TQuad, ScalarLane>.Run(
            constants, table, timing.Samples, timing.StepsPerSample, new ScalarLane(timing.Step), System.Runtime.InteropServices.MemoryMarshal.Cast<double, ScalarLane>(samples.AsSpan()));
        return samples;
    }
}
