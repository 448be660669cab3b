using System.Runtime.CompilerServices;
using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>The road under the two wheels of an axle where all cars side by side meet the same: one number for all of them.</summary>
/// <param name="at">The first of its two heights; the rates stand four places on.</param>
internal readonly unsafe struct RoadBelow<T>(double* at) : IRoadUnder<T>
    where T : unmanaged, ILane<T>
{
    private readonly double* at = at;

    public T HeightL
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => T.Of(at[0]);
    }

    public T HeightR
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => T.Of(at[1]);
    }

    public T RiseL
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => T.Of(at[4]);
    }

    public T RiseR
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => T.Of(at[5]);
    }
}
