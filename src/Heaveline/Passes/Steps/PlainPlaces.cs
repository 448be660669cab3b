using System.Runtime.CompilerServices;
using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>Places of lanes that are plain numbers one after the other.</summary>
internal readonly unsafe struct PlainPlaces<T> : IPlaces<T, ScalarLane>
    where T : unmanaged, ILane<T>
{
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Put(T* to, int place, ScalarLane value) => LaneLayout<T>.Put(to, place, value.Value);
}
