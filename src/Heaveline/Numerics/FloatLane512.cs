using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Heaveline.Numerics;

/// <summary>
/// 16 numbers of single precision in one 512-bit register: 16 runs side by side, for who searches among many and states the error; a number shown
/// is computed in double precision.
/// </summary>
internal struct FloatLane512(Vector512<float> v) : ILane<FloatLane512>
{
    private Vector512<float> _v = v;

    public static int Count => 16;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLane512 Of(double value) => new(Vector512.Create((float)value));

    public static FloatLane512 From(ReadOnlySpan<double> values)
    {
        Span<float> narrow = stackalloc float[Count];
        for (var i = 0; i < narrow.Length; i++)
        {
            narrow[i] = (float)values[i];
        }

        return new(Vector512.Create<float>(narrow));
    }

    public readonly void To(Span<double> values)
    {
        for (var i = 0; i < Count; i++)
        {
            values[i] = _v[i];
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLane512 Fma(FloatLane512 a, FloatLane512 b, FloatLane512 c) => new(Vector512.FusedMultiplyAdd(a._v, b._v, c._v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void AddProduct(ref FloatLane512 sum, FloatLane512 a, FloatLane512 b) => sum._v = Vector512.FusedMultiplyAdd(a._v, b._v, sum._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void AddAbove(ref FloatLane512 sum, FloatLane512 bend, FloatLane512 x, FloatLane512 at) =>
        sum._v = Vector512.FusedMultiplyAdd(bend._v, Vector512.MaxNative(x._v, at._v), sum._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void AddBelow(ref FloatLane512 sum, FloatLane512 bend, FloatLane512 x, FloatLane512 at) =>
        sum._v = Vector512.FusedMultiplyAdd(bend._v, Vector512.MinNative(x._v, at._v), sum._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLane512 Max(FloatLane512 a, FloatLane512 b) => new(Vector512.MaxNative(a._v, b._v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLane512 Min(FloatLane512 a, FloatLane512 b) => new(Vector512.MinNative(a._v, b._v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLane512 Sqrt(FloatLane512 a) => new(Vector512.Sqrt(a._v));

    // By way of double precision: the library's own logarithm of single numbers takes several times as long (measured 2026-11-27).
    public static FloatLane512 Power(FloatLane512 a, FloatLane512 b)
    {
        var (low, high) = Vector512.Widen(a._v);
        var (lowPower, highPower) = Vector512.Widen(b._v);
        return new(Vector512.Narrow(Vector512.Exp(lowPower * Vector512.Log(low)), Vector512.Exp(highPower * Vector512.Log(high))));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AnyAbove(FloatLane512 a, FloatLane512 b) => Vector512.GreaterThanAny(a._v, b._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLane512 WhereAtMost(FloatLane512 a, FloatLane512 limit, FloatLane512 then, FloatLane512 otherwise) =>
        new(Vector512.ConditionalSelect(Vector512.LessThanOrEqual(a._v, limit._v), then._v, otherwise._v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLane512 operator +(FloatLane512 a, FloatLane512 b) => new(a._v + b._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLane512 operator -(FloatLane512 a, FloatLane512 b) => new(a._v - b._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLane512 operator *(FloatLane512 a, FloatLane512 b) => new(a._v * b._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLane512 operator /(FloatLane512 a, FloatLane512 b) => new(a._v / b._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLane512 operator -(FloatLane512 a) => new(-a._v);
}
