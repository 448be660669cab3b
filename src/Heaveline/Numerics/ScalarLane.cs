using System.Runtime.CompilerServices;

namespace Heaveline.Numerics;

/// <summary>One double: the scalar twin of the wide lanes.</summary>
internal readonly struct ScalarLane(double v) : ILane<ScalarLane>
{
    private readonly double _v = v;

    public static int Count => 1;

    public double Value => _v;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ScalarLane Of(double value) => new(value);

    public static ScalarLane From(ReadOnlySpan<double> values) => new(values[0]);

    public void To(Span<double> values) => values[0] = _v;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ScalarLane Fma(ScalarLane a, ScalarLane b, ScalarLane c) => new(Math.FusedMultiplyAdd(a._v, b._v, c._v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ScalarLane Max(ScalarLane a, ScalarLane b) => new(a._v > b._v ? a._v : b._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ScalarLane Min(ScalarLane a, ScalarLane b) => new(a._v < b._v ? a._v : b._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ScalarLane Sqrt(ScalarLane a) => new(Math.Sqrt(a._v));

    public static ScalarLane Power(ScalarLane a, ScalarLane b) => new(Math.Pow(a._v, b._v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AnyAbove(ScalarLane a, ScalarLane b) => a._v > b._v;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ScalarLane WhereAtMost(ScalarLane a, ScalarLane limit, ScalarLane then, ScalarLane otherwise) =>
        a._v <= limit._v ? then : otherwise;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ScalarLane operator +(ScalarLane a, ScalarLane b) => new(a._v + b._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ScalarLane operator -(ScalarLane a, ScalarLane b) => new(a._v - b._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ScalarLane operator *(ScalarLane a, ScalarLane b) => new(a._v * b._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ScalarLane operator /(ScalarLane a, ScalarLane b) => new(a._v / b._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ScalarLane operator -(ScalarLane a) => new(-a._v);
}
