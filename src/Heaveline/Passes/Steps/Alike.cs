using System.Runtime.CompilerServices;
using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>One number for both wheels of an axle.</summary>
internal readonly struct Alike<T>(T both) : ISides<Alike<T>, T>
    where T : unmanaged, ILane<T>
{
    private readonly T both = both;

    public static int Count => 1;

    public static Alike<T> Of(T left, T right) => new(left);

    public T L
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => both;
    }

    public T R
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => both;
    }
}
