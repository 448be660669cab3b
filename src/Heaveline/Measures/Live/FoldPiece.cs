using Heaveline.Numerics;

namespace Heaveline.Measures;

/// <summary>The piece of a curve behind one sample, and what of it a stretch of the record takes up.</summary>
internal readonly struct FoldPiece<TLane>
    where TLane : unmanaged, ILane<TLane>
{
    private readonly LanePiece<TLane> piece;
    private readonly TLane next;

    // Where the stretch begins and ends, counted from the sample.
    private readonly TLane from;
    private readonly TLane to;

    // How far behind the sample its end is still this piece's; the last piece has the record's end too.
    private readonly TLane reach;
    private readonly TLane hasStretch;

    // Not below nothing where a sample of the record at one of its ends stands out among its neighbours: the curve turns beside such alone.
    private readonly TLane standsOut;

    /// <param name="about">The samples before the piece, at its ends and behind it; beyond the record they may be anything.</param>
    /// <param name="sample">Number of the sample that the piece begins at.</param>
    /// <param name="last">Number of that at which the record's last piece begins.</param>
    /// <param name="from">Where the stretch begins, in samples.</param>
    /// <param name="to">Where it ends.</param>
    public FoldPiece((TLane, TLane, TLane, TLane) about, TLane sample, TLane last, TLane from, TLane to)
    {
        var (before, value, after, beyond) = about;
        var two = TLane.Of(2.0);
        var (bend, bendNext) = (before - (two * value) + after, value - (two * after) + beyond);
        // At the record's ends there is one second difference only.
        piece = LanePiece<TLane>.Of(
            value, after, TLane.WhereAtMost(sample, Nothing, bendNext, bend), TLane.WhereAtMost(last, sample, bend, bendNext));
        (next, this.from, this.to) = (after, from - sample, to - sample);
        reach = TLane.WhereAtMost(last, sample, two, One);
        hasStretch = to - from;
        var (rise, never) = (after - value, TLane.Of(-1.0));
        standsOut = TLane.Max(
            TLane.WhereAtMost(sample, Nothing, never, -(value - before) * rise), TLane.WhereAtMost(last, sample, never, -rise * (beyond - after)));
    }

    // Of whatever record is written: a lane may be a line of it.
    private static TLane Nothing => TLane.Of(0.0);

    private static TLane One => TLane.Of(1.0);

    /// <summary>∫x² so far, and over the piece.</summary>
    public TLane Squares(TLane sum)
    {
        var whole = TLane.WhereAtMost(One, from, Nothing, piece.SquareIntegral());
        var taken = sum - Within(from, One, Cut(from)) + TLane.WhereAtMost(One, to, whole, Nothing) + Within(to, One, Cut(to));
        return TLane.WhereAtMost(hasStretch, Nothing, sum, taken);
    }

    /// <summary>The least value so far, and of the piece.</summary>
    public TLane Least(TLane least) => Farthest(least, double.PositiveInfinity, TLane.Min);

    /// <summary>The greatest.</summary>
    public TLane Most(TLane most) => Farthest(most, double.NegativeInfinity, TLane.Max);

    private TLane Farthest(TLane so, double none, Func<TLane, TLane, TLane> farther)
    {
        var (never, of) = (TLane.Of(none), piece);
        // The ends of the stretch, the samples in it and the turn between two of them.
        TLane Between(TLane low, TLane place, TLane high, TLane value) =>
            TLane.WhereAtMost(low, place, TLane.WhereAtMost(place, high, value, never), never);
        TLane At(TLane end, TLane within) => TLane.WhereAtMost(Nothing, end, TLane.WhereAtMost(within, end, never, of.At(end)), never);
        var (turn, isTurn) = piece.Turn();
        var inside = TLane.WhereAtMost(turn, from, never, TLane.WhereAtMost(to, turn, never, piece.At(turn)));
        TLane[] met =
        [
            At(from, One), At(to, reach), Between(from, Nothing, to, piece.C0), Between(from, One, to, next),
            TLane.WhereAtMost(isTurn, Nothing, never, TLane.WhereAtMost(Nothing, standsOut, inside, never)),
        ];
        var far = met.Aggregate(so, (a, b) => farther(a, b));
        return TLane.WhereAtMost(hasStretch, Nothing, so, far);
    }

    private static TLane Within(TLane place, TLane reach, TLane value) =>
        TLane.WhereAtMost(Nothing, place, TLane.WhereAtMost(reach, place, Nothing, value), Nothing);

    // ∫x² ds from the sample on to a place.
    private TLane Cut(TLane s) =>
        s * new LanePiece<TLane>(piece.C0, piece.C1 * s, piece.C2 * s * s, piece.C3 * s * s * s).SquareIntegral();
}
