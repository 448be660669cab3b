using System.Runtime.CompilerServices;
using Heaveline.Numerics;

namespace Heaveline.Elements.Forces;

/// <summary>A stop of curved force C·pᵉ, p the way past its clearance.</summary>
internal struct StopLaw<T>
    where T : unmanaged, ILane<T>
{
    public T Clearance;
    public T Factor;
    public T Exponent;

    /// <summary>
    /// A place just past the clearance stands for "not touched": its force is below 1e-9 N for every exponent of 1 or more.
    /// </summary>
    public const double Least = 1e-15;

    /// <summary>Whether any of the cars side by side touches it; powers are dear, and most of the time none does.</summary>
    /// <param name="travel">Travel in the stop's own direction.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly bool Touched(T travel) => T.AnyAbove(travel - Clearance, T.Of(Least));

    /// <summary>Its force, 0 where it is not touched.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly T Push(T travel)
    {
        var least = T.Of(Least);
        var past = travel - Clearance;
        return T.WhereAtMost(past, least, T.Of(0.0), Factor * T.Power(T.Max(past, least), Exponent));
    }
}
