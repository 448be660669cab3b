using System.Runtime.CompilerServices;
using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>A number for each wheel of an axle.</summary>
internal readonly struct Apart<T>(T left, T right) : ISides<Apart<T>, T>
    where T : unmanaged, ILane<T>
{
    private readonly T left = left;
    private readonly T right = right;

    public static int Count => 2;

    public static Apart<T> Of(T left, T right) => new(left, right);

    public T L
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => left;
    }

    public T R
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => right;
    }
}
