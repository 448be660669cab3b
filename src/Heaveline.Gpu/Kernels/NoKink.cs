using Heaveline.Numerics;

namespace Heaveline.Gpu.Kernels;

/// <summary>The end of a chain.</summary>
internal struct NoKink<T> : IKinkChain<NoKink<T>, T>
    where T : unmanaged, ILane<T>
{
    public static NoKink<T> Read(ref NumberReader<T> numbers, DevicePlaces<T> places) => default;

    public readonly void InTurn(T left, T right, ref T sumLeft, ref T sumRight, ref T otherLeft, ref T otherRight)
    {
    }

    public readonly void Above(T left, T right, ref T sumLeft, ref T sumRight)
    {
    }

    public readonly void Below(T left, T right, ref T sumLeft, ref T sumRight)
    {
    }
}
