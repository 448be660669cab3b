using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>A kink of an axle's two wheels.</summary>
internal struct KinkPair<T, TSides>
    where T : unmanaged, ILane<T>
    where TSides : unmanaged, ISides<TSides, T>
{
    public TSides At;
    public TSides Bend;
}
