using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Heaveline.Numerics;

/// <summary>One car with its four corners in one 256-bit register: the shortest way through a single pass.</summary>
internal readonly struct CornerQuad(Vector256<double> v) : IQuad<CornerQuad, ScalarLane>
{
    private readonly Vector256<double> _v = v;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static CornerQuad Of(ScalarLane frontLeft, ScalarLane frontRight, ScalarLane rearLeft, ScalarLane rearRight) =>
        new(Vector256.Create(frontLeft.Value, frontRight.Value, rearLeft.Value, rearRight.Value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static CornerQuad All(ScalarLane value) => new(Vector256.Create(value.Value));

    public ScalarLane At(int corner) => new(_v.GetElement(corner));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static CornerQuad Fma(CornerQuad a, CornerQuad b, CornerQuad c) => new(Vector256.FusedMultiplyAdd(a._v, b._v, c._v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static CornerQuad Max(CornerQuad a, CornerQuad b) => new(Vector256.MaxNative(a._v, b._v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static CornerQuad Min(CornerQuad a, CornerQuad b) => new(Vector256.MinNative(a._v, b._v));

    public static CornerQuad Sqrt(CornerQuad a) => new(Vector256.Sqrt(a._v));

    public static CornerQuad Power(CornerQuad a, CornerQuad b) => new(Vector256.Exp(b._v * Vector256.Log(a._v)));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AnyAbove(CornerQuad a, CornerQuad b) => Vector256.GreaterThanAny(a._v, b._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static CornerQuad WhereAtMost(CornerQuad a, CornerQuad limit, CornerQuad then, CornerQuad otherwise) =>
        new(Vector256.ConditionalSelect(Vector256.LessThanOrEqual(a._v, limit._v), then._v, otherwise._v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static CornerQuad SwapSides(CornerQuad a) => new(Vector256.Shuffle(a._v, Vector256.Create(1L, 0L, 3L, 2L)));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static CornerQuad SwapEnds(CornerQuad a) => new(Vector256.Shuffle(a._v, Vector256.Create(2L, 3L, 0L, 1L)));

    // The same order of additions as Quad, so that both give the same bits: (FL + FR) + (RL + RR).
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ScalarLane Sum(CornerQuad a)
    {
        var sides = a._v + Vector256.Shuffle(a._v, Vector256.Create(1L, 0L, 3L, 2L));
        return new((sides.GetLower() + sides.GetUpper()).ToScalar());
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static CornerQuad operator +(CornerQuad a, CornerQuad b) => new(a._v + b._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static CornerQuad operator -(CornerQuad a, CornerQuad b) => new(a._v - b._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static CornerQuad operator *(CornerQuad a, CornerQuad b) => new(a._v * b._v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static CornerQuad operator /(CornerQuad a, CornerQuad b) => new(a._v / b._v);
}
