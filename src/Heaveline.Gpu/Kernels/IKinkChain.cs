using Heaveline.Numerics;

namespace Heaveline.Gpu.Kernels;

/// <summary>
/// Some kinks one inside the other, so many that the type says how many: a device's compiler writes them out one by one and keeps them in registers.
/// </summary>
internal interface IKinkChain<TSelf, T>
    where TSelf : unmanaged, IKinkChain<TSelf, T>
    where T : unmanaged, ILane<T>
{
    /// <summary>Reads them in the order in which they follow an axle's block.</summary>
    /// <param name="numbers">The run's numbers.</param>
    /// <param name="places">Places that all runs share.</param>
    static abstract TSelf Read(ref NumberReader<T> numbers, DevicePlaces<T> places);

    /// <summary>Adds bend·max(x, at), in turn to two sums.</summary>
    void InTurn(T left, T right, ref T sumLeft, ref T sumRight, ref T otherLeft, ref T otherRight);

    /// <summary>Adds bend·max(x, at).</summary>
    void Above(T left, T right, ref T sumLeft, ref T sumRight);

    /// <summary>Adds bend·min(x, at).</summary>
    void Below(T left, T right, ref T sumLeft, ref T sumRight);
}
