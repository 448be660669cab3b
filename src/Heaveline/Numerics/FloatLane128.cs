using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Heaveline.Numerics;

/// <summary>
/// 4 numbers of single precision in one 128-bit register: 4 runs side by side, for who searches among many and states the error; a number shown
/// is computed in double precision.
/// </summary>
internal readonly struct FloatLane128(Vector128<float> v) : ILane<FloatLane128>
{
    private readonly Vector128<float> _v = v;

    public static int Count => 4;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLane128 Of(double value) => new(Vector128.Create((float)value));

    public static FloatLane128 From(ReadOnlySpan<double> values)
    {
        Span<float> narrow = stackalloc float[Count];
        for (var i = 0; i < narrow.Length; i++)
        {
            narrow[i] = (float)values[i];
        }

        return new(Vector128.Create<float>(narrow));
    }

    public void To(Span<double> values)
    {
        for (var i = 0; i < Count; i++)
        {
            values[i] = _v[i];
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLane128 Fma(FloatLane128 a, FloatLane128 b, FloatLane128 c) => new(Vector128.FusedMultiplyAdd(a._v, b._v, c._v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLane128 Max(FloatLane128 a, FloatLane128 b) => new(Vector128.MaxNative(a._v, b._v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLane128 Min(FloatLane128 a, FloatLane128 b) => new(Vector128.MinNative(a._v, b._v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLane128 Sqrt(FloatLane128 a) => new(Vector128.Sqrt(a._v));

    // By way of double precision: the library's own logarithm of single numbers takes several times as long (measured 2026-11-27).
    public static FloatLane128 Power(FloatLane128 a, FloatLane128 b)
    {
        var (low, high) = Vector128.Widen(a._v);
        var (lowPower, highPower) = Vector128.Widen(b._v);
        return new(Vector128.Narrow(Vector128.Exp(lowPower * Vector128.Log(low)), Vector128.Exp(highPower * Vector128.Log(high))));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AnyAbove(FloatLane128 a, FloatLane128 b) => Vector128.GreaterThanAny(a._v, b._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLane128 WhereAtMost(FloatLane128 a, FloatLane128 limit, FloatLane128 then, FloatLane128 otherwise) =>
        new(Vector128.ConditionalSelect(Vector128.LessThanOrEqual(a._v, limit._v), then._v, otherwise._v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLane128 operator +(FloatLane128 a, FloatLane128 b) => new(a._v + b._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLane128 operator -(FloatLane128 a, FloatLane128 b) => new(a._v - b._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLane128 operator *(FloatLane128 a, FloatLane128 b) => new(a._v * b._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLane128 operator /(FloatLane128 a, FloatLane128 b) => new(a._v / b._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FloatLane128 operator -(FloatLane128 a) => new(-a._v);
}
