using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Heaveline.Numerics;

/// <summary>8 doubles in one 512-bit register: 8 runs side by side.</summary>
internal struct Lane512(Vector512<double> v) : ILane<Lane512>
{
    private Vector512<double> _v = v;

    public static int Count => 8;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane512 Of(double value) => new(Vector512.Create(value));

    public static Lane512 From(ReadOnlySpan<double> values) => new(Vector512.Create(values));

    public readonly void To(Span<double> values) => _v.CopyTo(values);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane512 Fma(Lane512 a, Lane512 b, Lane512 c) => new(Vector512.FusedMultiplyAdd(a._v, b._v, c._v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void AddProduct(ref Lane512 sum, Lane512 a, Lane512 b) => sum._v = Vector512.FusedMultiplyAdd(a._v, b._v, sum._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void AddAbove(ref Lane512 sum, Lane512 bend, Lane512 x, Lane512 at) =>
        sum._v = Vector512.FusedMultiplyAdd(bend._v, Vector512.MaxNative(x._v, at._v), sum._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void AddBelow(ref Lane512 sum, Lane512 bend, Lane512 x, Lane512 at) =>
        sum._v = Vector512.FusedMultiplyAdd(bend._v, Vector512.MinNative(x._v, at._v), sum._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane512 Max(Lane512 a, Lane512 b) => new(Vector512.MaxNative(a._v, b._v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane512 Min(Lane512 a, Lane512 b) => new(Vector512.MinNative(a._v, b._v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane512 Sqrt(Lane512 a) => new(Vector512.Sqrt(a._v));

    public static Lane512 Power(Lane512 a, Lane512 b) => new(WidePower.Of(a._v, b._v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AnyAbove(Lane512 a, Lane512 b) => Vector512.GreaterThanAny(a._v, b._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane512 WhereAtMost(Lane512 a, Lane512 limit, Lane512 then, Lane512 otherwise) =>
        new(Vector512.ConditionalSelect(Vector512.LessThanOrEqual(a._v, limit._v), then._v, otherwise._v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane512 operator +(Lane512 a, Lane512 b) => new(a._v + b._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane512 operator -(Lane512 a, Lane512 b) => new(a._v - b._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane512 operator *(Lane512 a, Lane512 b) => new(a._v * b._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane512 operator /(Lane512 a, Lane512 b) => new(a._v / b._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane512 operator -(Lane512 a) => new(-a._v);
}
