using System.Runtime.CompilerServices;
using Heaveline.Numerics;

namespace Heaveline.Elements.Forces;

/// <summary>One kink of a law that is straight between its kinks: where it stands, and by how much the slope changes there.</summary>
internal unsafe struct Kink<T>
    where T : unmanaged, ILane<T>
{
    public T At;
    public T Bend;

    /// <summary>force + Σ bendⱼ·max(x, atⱼ).</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Above(Kink<T>* from, int count, T x, T force)
    {
        for (var end = from + count; from < end; from++)
        {
            force = T.Fma(from->Bend, T.Max(x, from->At), force);
        }

        return force;
    }

    /// <summary>force + Σ bendⱼ·min(x, atⱼ).</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Below(Kink<T>* from, int count, T x, T force)
    {
        for (var end = from + count; from < end; from++)
        {
            force = T.Fma(from->Bend, T.Min(x, from->At), force);
        }

        return force;
    }
}
