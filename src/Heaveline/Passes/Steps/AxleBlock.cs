using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>
/// One axle of the cars side by side: state, numbers; the kinks of its dampers, springs and bump stops, rebound stops follow in memory.
/// </summary>
internal struct AxleBlock<T, TSides>
    where T : unmanaged, ILane<T>
    where TSides : unmanaged, ISides<TSides, T>
{
    public AxleState<T> State;
    public AxleNumbers<T, TSides> Numbers;
}
