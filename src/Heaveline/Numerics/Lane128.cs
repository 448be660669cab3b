using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Heaveline.Numerics;

/// <summary>2 doubles in one 128-bit register: 2 runs side by side.</summary>
internal readonly struct Lane128(Vector128<double> v) : ILane<Lane128>
{
    private readonly Vector128<double> _v = v;

    public static int Count => 2;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane128 Of(double value) => new(Vector128.Create(value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane128 Of(double first, double second) => new(Vector128.Create(first, second));

    public static Lane128 From(ReadOnlySpan<double> values) => new(Vector128.Create(values));

    public void To(Span<double> values) => _v.CopyTo(values);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane128 Fma(Lane128 a, Lane128 b, Lane128 c) => new(Vector128.FusedMultiplyAdd(a._v, b._v, c._v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane128 Max(Lane128 a, Lane128 b) => new(Vector128.MaxNative(a._v, b._v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane128 Min(Lane128 a, Lane128 b) => new(Vector128.MinNative(a._v, b._v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane128 Sqrt(Lane128 a) => new(Vector128.Sqrt(a._v));

    // One by one: for two numbers as fast as the library's vector logarithm, which the runtime translates anew in every process.
    public static Lane128 Power(Lane128 a, Lane128 b) =>
        new(Vector128.Create(Math.Pow(a._v.GetElement(0), b._v.GetElement(0)), Math.Pow(a._v.GetElement(1), b._v.GetElement(1))));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AnyAbove(Lane128 a, Lane128 b) => Vector128.GreaterThanAny(a._v, b._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane128 WhereAtMost(Lane128 a, Lane128 limit, Lane128 then, Lane128 otherwise) =>
        new(Vector128.ConditionalSelect(Vector128.LessThanOrEqual(a._v, limit._v), then._v, otherwise._v));

    /// <summary>Both places exchanged.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane128 Swap(Lane128 a) => new(Vector128.Shuffle(a._v, Vector128.Create(1L, 0L)));

    /// <summary>The first less the second, in both places.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane128 FirstLess(Lane128 a) => new((a._v - Vector128.Shuffle(a._v, Vector128.Create(1L, 0L))) * Vector128.Create(1.0, -1.0));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane128 operator +(Lane128 a, Lane128 b) => new(a._v + b._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane128 operator -(Lane128 a, Lane128 b) => new(a._v - b._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane128 operator *(Lane128 a, Lane128 b) => new(a._v * b._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane128 operator /(Lane128 a, Lane128 b) => new(a._v / b._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane128 operator -(Lane128 a) => new(-a._v);
}
