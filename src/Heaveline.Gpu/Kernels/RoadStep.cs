using Heaveline.Numerics;

namespace Heaveline.Gpu.Kernels;

/// <summary>The road under four wheels at one step: heights and their rates.</summary>
internal struct RoadStep<T>
    where T : unmanaged, ILane<T>
{
    public T HeightFrontLeft;
    public T HeightFrontRight;
    public T HeightRearLeft;
    public T HeightRearRight;
    public T RiseFrontLeft;
    public T RiseFrontRight;
    public T RiseRearLeft;
    public T RiseRearRight;
}
