using System.Runtime.CompilerServices;
using Heaveline.Numerics;

namespace Heaveline.Elements.Forces;

/// <summary>A shut-in gas: how its pressure rises with what is pressed into its volume.</summary>
internal struct GasLaw<T>
    where T : unmanaged, ILane<T>
{
    /// <summary>1/V, 1/m³; of a spring A/V, 1/m.</summary>
    public T PerVolume;

    public T Exponent;

    /// <summary>Pressure over that of the whole volume, (V/(V − x))ⁿ.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly T Rise(T x)
    {
        var one = T.Of(1.0);
        return T.Power(one / (one - (PerVolume * x)), Exponent);
    }
}
