using System.Runtime.CompilerServices;
using Heaveline.Numerics;

namespace Heaveline.Elements.Forces;

/// <summary>
/// Where an element stands along a solid axle: it sees both wheel ends by these shares, and by virtual work its force goes to both by the same.
/// </summary>
internal struct PlaceLaw<T>
    where T : unmanaged, ILane<T>
{
    public T Own;
    public T Other;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly T Along(T own, T other) => T.Fma(Own, own, Other * other);
}
