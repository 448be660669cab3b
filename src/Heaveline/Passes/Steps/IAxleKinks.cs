using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>The kinks of an axle's plain elements, wherever they stand: behind its block, or in registers.</summary>
internal interface IAxleKinks<T>
    where T : unmanaged, ILane<T>
{
    /// <summary>Whether both wheels sit on one solid axle.</summary>
    bool Solid { get; }

    /// <summary>Adds their forces at travels s and rates v to two sums of either side, which in the end are added.</summary>
    void Add(T sL, T sR, T vL, T vR, ref T fL, ref T fR, ref T gL, ref T gR);
}
