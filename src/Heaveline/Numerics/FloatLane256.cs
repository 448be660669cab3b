using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Heaveline.Numerics;

/// <summary>
/// 8 numbers of single precision in one 256-bit register: 8 runs side by side, for who searches among many and states the error; a number shown
/// is computed in double precision.
/// </summary>
internal struct FloatLane256(Vector256<float> v) : ILane<FloatLane256>
{
    private Vector256<float> _v = v;

    public static int Count => 8;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLane256 Of(double value) => new(Vector256.Create((float)value));

    public static FloatLane256 From(ReadOnlySpan<double> values)
    {
        Span<float> narrow = stackalloc float[Count];
        for (var i = 0; i < narrow.Length; i++)
        {
            narrow[i] = (float)values[i];
        }

        return new(Vector256.Create<float>(narrow));
    }

    public readonly void To(Span<double> values)
    {
        for (var i = 0; i < Count; i++)
        {
            values[i] = _v[i];
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLane256 Fma(FloatLane256 a, FloatLane256 b, FloatLane256 c) => new(Vector256.FusedMultiplyAdd(a._v, b._v, c._v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void AddProduct(ref FloatLane256 sum, FloatLane256 a, FloatLane256 b) => sum._v = Vector256.FusedMultiplyAdd(a._v, b._v, sum._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void AddAbove(ref FloatLane256 sum, FloatLane256 bend, FloatLane256 x, FloatLane256 at) =>
        sum._v = Vector256.FusedMultiplyAdd(bend._v, Vector256.MaxNative(x._v, at._v), sum._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void AddBelow(ref FloatLane256 sum, FloatLane256 bend, FloatLane256 x, FloatLane256 at) =>
        sum._v = Vector256.FusedMultiplyAdd(bend._v, Vector256.MinNative(x._v, at._v), sum._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLane256 Max(FloatLane256 a, FloatLane256 b) => new(Vector256.MaxNative(a._v, b._v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLane256 Min(FloatLane256 a, FloatLane256 b) => new(Vector256.MinNative(a._v, b._v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLane256 Sqrt(FloatLane256 a) => new(Vector256.Sqrt(a._v));

    // By way of double precision: the library's own logarithm of single numbers takes several times as long (measured 2026-11-27).
    public static FloatLane256 Power(FloatLane256 a, FloatLane256 b)
    {
        var (low, high) = Vector256.Widen(a._v);
        var (lowPower, highPower) = Vector256.Widen(b._v);
        return new(Vector256.Narrow(Vector256.Exp(lowPower * Vector256.Log(low)), Vector256.Exp(highPower * Vector256.Log(high))));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AnyAbove(FloatLane256 a, FloatLane256 b) => Vector256.GreaterThanAny(a._v, b._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLane256 WhereAtMost(FloatLane256 a, FloatLane256 limit, FloatLane256 then, FloatLane256 otherwise) =>
        new(Vector256.ConditionalSelect(Vector256.LessThanOrEqual(a._v, limit._v), then._v, otherwise._v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLane256 operator +(FloatLane256 a, FloatLane256 b) => new(a._v + b._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLane256 operator -(FloatLane256 a, FloatLane256 b) => new(a._v - b._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLane256 operator *(FloatLane256 a, FloatLane256 b) => new(a._v * b._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLane256 operator /(FloatLane256 a, FloatLane256 b) => new(a._v / b._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLane256 operator -(FloatLane256 a) => new(-a._v);
}
