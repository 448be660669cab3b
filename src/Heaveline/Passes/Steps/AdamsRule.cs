using System.Runtime.CompilerServices;
using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>
/// Adams–Bashforth of fourth order on the velocities, with the position update that integrates the same cubic through the last four accelerations
/// twice (Hairer, Nørsett, Wanner, Solving Ordinary Differential Equations I, III.1 and III.10):
/// v += h(55a₀ − 59a₁ + 37a₂ − 9a₃)/24, x += h·v + h²(323a₀ − 264a₁ + 159a₂ − 38a₃)/360.
/// </summary>
internal struct AdamsRule<T>
    where T : unmanaged, ILane<T>
{
    public T H;
    public T V0;
    public T V1;
    public T V2;
    public T V3;
    public T X0;
    public T X1;
    public T X2;
    public T X3;

    /// <param name="h">Step, s, one per lane.</param>
    public static AdamsRule<T> Of(T h) => new()
    {
        H = h,
        V0 = h * T.Of(55.0 / 24.0),
        V1 = h * T.Of(-59.0 / 24.0),
        V2 = h * T.Of(37.0 / 24.0),
        V3 = h * T.Of(-9.0 / 24.0),
        X0 = h * h * T.Of(323.0 / 360.0),
        X1 = h * h * T.Of(-264.0 / 360.0),
        X2 = h * h * T.Of(159.0 / 360.0),
        X3 = h * h * T.Of(-38.0 / 360.0),
    };

    /// <summary>The place a step on, from place, rate and the last four accelerations.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly T Place(T x, T v, T a0, T a1, T a2, T a3)
    {
        var past = X3 * a3;
        T.AddProduct(ref past, X2, a2);
        T.AddProduct(ref past, X1, a1);
        T.AddProduct(ref x, H, v);
        x += past;
        T.AddProduct(ref x, X0, a0);
        return x;
    }

    /// <summary>The rate a step on; or what has only a rate of its own, from its last four.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly T Rate(T v, T a0, T a1, T a2, T a3)
    {
        var past = V3 * a3;
        T.AddProduct(ref past, V2, a2);
        T.AddProduct(ref v, V1, a1);
        v += past;
        T.AddProduct(ref v, V0, a0);
        return v;
    }
}
