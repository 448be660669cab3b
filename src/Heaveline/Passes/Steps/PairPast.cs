using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>Accelerations of two things at one step: an axle's wheels, or the fluid of both sides.</summary>
internal struct PairPast<T>
    where T : unmanaged, ILane<T>
{
    public T L;
    public T R;
}
