using System.Runtime.CompilerServices;
using Heaveline.Numerics;

namespace Heaveline.Elements.Forces;

/// <summary>A motion ratio r₀ + r₁·S + r₂·S² in wheel travel S from the reference state.</summary>
internal struct RatioLaw<T>
    where T : unmanaged, ILane<T>
{
    public T R0;
    public T R1;
    public T R2;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly T At(T travel) => T.Fma(travel, T.Fma(travel, R2, R1), R0);

    /// <summary>Travel of the element for a wheel travel: the ratio's integral.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly T Along(T travel) =>
        travel * T.Fma(travel, T.Fma(travel, T.Of(1.0 / 3.0) * R2, T.Of(1.0 / 2.0) * R1), R0);
}
