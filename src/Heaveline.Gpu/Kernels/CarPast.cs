using Heaveline.Numerics;
using Heaveline.Passes.Steps;

namespace Heaveline.Gpu;

/// <summary>Accelerations of one car at one step.</summary>
internal struct CarPast<T>
    where T : unmanaged, ILane<T>
{
    public PairPast<T> Front;
    public PairPast<T> Rear;
    public BodyPast<T> Body;
}
