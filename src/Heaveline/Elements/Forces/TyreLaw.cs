using System.Runtime.CompilerServices;
using Heaveline.Numerics;

namespace Heaveline.Elements.Forces;

/// <summary>A tyre that can leave the road.</summary>
internal struct TyreLaw<T>
    where T : unmanaged, ILane<T>
{
    public T Rate;
    public T Damping;

    /// <summary>−N, the change of load at which it leaves the road.</summary>
    public T Unload;

    /// <summary>Change of load from the static load N: never below −N, and −N while the tyre is clear of the road.</summary>
    /// <param name="pressed">Height of the road less that of the wheel, both from trim.</param>
    /// <param name="pressing">Its rate.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly T Change(T pressed, T pressing)
    {
        var elastic = Rate * pressed;
        return T.WhereAtMost(elastic, Unload, Unload, T.Max(Unload, T.Fma(Damping, pressing, elastic)));
    }
}
