using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>
/// What an axle has beyond straight laws at its own wheels, and the travel that these elements see; a side each. Kinks of elements that are not at
/// the wheels, or whose ratio varies, follow in memory: for each side springs, dampers, bump stops, rebound stops.
/// </summary>
internal struct FurtherBlock<T>
    where T : unmanaged, ILane<T>
{
    public FurtherSide<T> L;
    public FurtherSide<T> R;
}
