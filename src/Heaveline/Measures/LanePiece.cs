using System.Runtime.CompilerServices;
using Heaveline.Numerics;

namespace Heaveline.Measures;

/// <summary>The cubic of a <see cref="CurvePiece"/> over lanes: one trace, or several side by side with the same bits.</summary>
internal readonly struct LanePiece<TLane>(TLane c0, TLane c1, TLane c2, TLane c3)
    where TLane : unmanaged, ILane<TLane>
{
    /// <summary>
    /// Times the second difference at a sample: no turn beside it lies further beyond it. It is 3/8, by <see cref="RangeFold{TLane}"/>, and a little
    /// for rounding.
    /// </summary>
    public const double Beyond = 0.4;

    // A division costs as much as all the rest of a piece.
    private const double Third = 1.0 / 3.0;
    private const double Fifth = 1.0 / 5.0;
    private const double Sixth = 1.0 / 6.0;
    private const double Seventh = 1.0 / 7.0;

    public readonly TLane C0 = c0;
    public readonly TLane C1 = c1;
    public readonly TLane C2 = c2;
    public readonly TLane C3 = c3;

    /// <summary>Through two values with the second differences there.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static LanePiece<TLane> Of(TLane value, TLane next, TLane second, TLane secondNext)
    {
        var zero = TLane.Of(0.0);
        // The larger is so changed that the mean of both is their harmonic mean, or nothing where they bend opposite ways.
        var harmonic = TLane.WhereAtMost(
            second * secondNext, zero, zero, TLane.Of(4.0) * second * secondNext / (second + secondNext));
        var (size, sizeNext) = (TLane.Max(second, -second), TLane.Max(secondNext, -secondNext));
        var p = TLane.WhereAtMost(size, sizeNext, second, harmonic - secondNext);
        var q = TLane.WhereAtMost(size, sizeNext, harmonic - second, secondNext);
        return new(
            value,
            next - value - (TLane.Of(Sixth) * ((TLane.Of(2.0) * p) + q)),
            TLane.Of(0.5) * p,
            TLane.Of(Sixth) * (q - p));
    }

    /// <summary>The value at s.</summary>
    public TLane At(TLane s) => C0 + (s * (C1 + (s * (C2 + (s * C3)))));

    /// <summary>Where the slope changes its sign, 0 to 1, and 1 where it does, 0 where it does not: <see cref="CurvePiece.Turn"/> in lanes.</summary>
    public (TLane Place, TLane Is) Turn()
    {
        var (nothing, one) = (TLane.Of(0.0), TLane.Of(1.0));
        var after = C1 + (TLane.Of(2.0) * C2) + (TLane.Of(3.0) * C3);
        var falls = TLane.WhereAtMost(C1, nothing, nothing, TLane.WhereAtMost(after, nothing, one, nothing));
        var rises = TLane.WhereAtMost(nothing, C1, nothing, TLane.WhereAtMost(nothing, after, one, nothing));
        var root = TLane.Sqrt(TLane.Max((C2 * C2) - (TLane.Of(3.0) * C1 * C3), nothing));
        var place = C1 / (TLane.WhereAtMost(C1, nothing, -root, root) - C2);
        return (TLane.Min(TLane.Max(place, nothing), one), TLane.Max(falls, rises));
    }

    /// <summary>∫x² ds over the piece.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public TLane SquareIntegral() =>
        (C0 * (C0 + C1)) + (TLane.Of(Third) * ((C1 * C1) + (TLane.Of(2.0) * C0 * C2) + (C2 * C3)))
        + (TLane.Of(0.5) * ((C0 * C3) + (C1 * C2)))
        + (TLane.Of(Fifth) * ((C2 * C2) + (TLane.Of(2.0) * C1 * C3))) + (TLane.Of(Seventh) * C3 * C3);
}
