using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>The road under the two wheels of an axle, as it stands in eight numbers: four heights, then four rates.</summary>
internal struct RoadUnder<T>
    where T : unmanaged, ILane<T>
{
    public T HeightL;
    public T HeightR;

    // The other axle's.
    public T OtherL;
    public T OtherR;

    public T RiseL;
    public T RiseR;
}
