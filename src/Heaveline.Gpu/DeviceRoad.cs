using Heaveline.Gpu.Kernels;
using System.Runtime.InteropServices;
using Heaveline.Numerics;
using Heaveline.Passes;

namespace Heaveline.Gpu;

/// <summary>What runs of one road and speed have in common: their clock, and the road under their wheels, step by step.</summary>
/// <param name="Request">One of the runs.</param>
/// <param name="Clock">The clock of all.</param>
/// <param name="Road">The road under their wheels.</param>
internal sealed record DeviceRoad(PassRequest Request, PassTiming Clock, RoadUnderWheels Road)
{
    /// <summary>Steps of a run.</summary>
    public int Steps => Clock.Samples * Clock.StepsPerSample;

    /// <summary>Whether another run meets the same heights at the same times.</summary>
    public bool IsLike(double speed, PassTiming clock, RoadUnderWheels road) =>
        speed == Request.Speed && clock == Clock && road.Behind(2) == Road.Behind(2)
        && Enumerable.Range(0, 4).All(i => ReferenceEquals(road[i], Road[i]));

    /// <summary>Writes the road step by step.</summary>
    public void Write<T>(Span<RoadStep<T>> road)
        where T : unmanaged, ILane<T>
    {
        var table = Road.Table(Request.Speed, Clock.Start, Clock.Step, Steps);
        var to = MemoryMarshal.Cast<RoadStep<T>, T>(road);
        var flat = MemoryMarshal.Cast<Quad<ScalarLane>, double>(table);
        for (var i = 0; i < flat.Length; i++)
        {
            to[i] = T.Of(flat[i]);
        }
    }
}
