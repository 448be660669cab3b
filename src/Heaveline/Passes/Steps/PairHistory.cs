using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>Accelerations of two things at this step and the last three, as they stand in a ring: the newest first.</summary>
internal struct PairHistory<T>
    where T : unmanaged, ILane<T>
{
    public PairPast<T> Now;
    public PairPast<T> One;
    public PairPast<T> Two;
    public PairPast<T> Three;
}
