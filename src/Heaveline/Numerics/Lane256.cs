using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Heaveline.Numerics;

/// <summary>4 doubles in one 256-bit register: 4 runs side by side.</summary>
internal struct Lane256(Vector256<double> v) : ILane<Lane256>
{
    private Vector256<double> _v = v;

    public static int Count => 4;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane256 Of(double value) => new(Vector256.Create(value));

    public static Lane256 From(ReadOnlySpan<double> values) => new(Vector256.Create(values));

    public readonly void To(Span<double> values) => _v.CopyTo(values);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane256 Fma(Lane256 a, Lane256 b, Lane256 c) => new(Vector256.FusedMultiplyAdd(a._v, b._v, c._v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void AddProduct(ref Lane256 sum, Lane256 a, Lane256 b) => sum._v = Vector256.FusedMultiplyAdd(a._v, b._v, sum._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void AddAbove(ref Lane256 sum, Lane256 bend, Lane256 x, Lane256 at) =>
        sum._v = Vector256.FusedMultiplyAdd(bend._v, Vector256.MaxNative(x._v, at._v), sum._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void AddBelow(ref Lane256 sum, Lane256 bend, Lane256 x, Lane256 at) =>
        sum._v = Vector256.FusedMultiplyAdd(bend._v, Vector256.MinNative(x._v, at._v), sum._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane256 Max(Lane256 a, Lane256 b) => new(Vector256.MaxNative(a._v, b._v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane256 Min(Lane256 a, Lane256 b) => new(Vector256.MinNative(a._v, b._v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane256 Sqrt(Lane256 a) => new(Vector256.Sqrt(a._v));

    public static Lane256 Power(Lane256 a, Lane256 b) => new(WidePower.Of(a._v, b._v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AnyAbove(Lane256 a, Lane256 b) => Vector256.GreaterThanAny(a._v, b._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane256 WhereAtMost(Lane256 a, Lane256 limit, Lane256 then, Lane256 otherwise) =>
        new(Vector256.ConditionalSelect(Vector256.LessThanOrEqual(a._v, limit._v), then._v, otherwise._v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane256 operator +(Lane256 a, Lane256 b) => new(a._v + b._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane256 operator -(Lane256 a, Lane256 b) => new(a._v - b._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane256 operator *(Lane256 a, Lane256 b) => new(a._v * b._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane256 operator /(Lane256 a, Lane256 b) => new(a._v / b._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane256 operator -(Lane256 a) => new(-a._v);
}
