using Heaveline.Numerics;

namespace Heaveline.Measures;

/// <summary>
/// Least and greatest value of each lane's curve in a stretch, its ends among them: what <see cref="Curve.Range"/> makes of the
/// trace, bit for bit.
/// </summary>
/// <remarks>
/// Between two samples a piece swings past the line through them by at most an eighth of its larger second difference, which is tamed to at most
/// three times the smaller one: a turn beside a sample lies no further beyond it than 3/8 of the second difference there. Only where that could reach
/// past what has been met is the turn worked out.
/// </remarks>
internal sealed class RangeFold<TLane> : LaneFold<TLane>
    where TLane : unmanaged, ILane<TLane>
{
    private readonly CurveRecord[] records;
    private readonly CurveQuestion?[] questions;
    private TLane least = TLane.Of(double.PositiveInfinity);
    private TLane most = TLane.Of(double.NegativeInfinity);

    /// <param name="curve">The signal.</param>
    /// <param name="questions">One a lane; null where none is asked.</param>
    /// <param name="records">The record of each lane.</param>
    public RangeFold(LaneCurve<TLane> curve, CurveQuestion?[] questions, CurveRecord[] records)
        : base(curve)
    {
        this.records = records;
        // Where the stretch is empty nothing is asked.
        this.questions = Array.ConvertAll(questions, q => q?.To > q?.From ? q : null);
        for (var lane = 0; lane < questions.Length; lane++)
        {
            if (this.questions[lane] is { From: var from, To: var to })
            {
                // Inner samples: those with both neighbours inside the stretch and all they need inside the record.
                var record = records[lane];
                Count(
                    lane,
                    record.First + (int)from,
                    record.First + Math.Min(record.Count - 1, (int)Math.Ceiling(to)),
                    record.First + Math.Max(LaneCurve<TLane>.Beside, (int)from + 2),
                    record.First + Math.Min(record.Count - 1 - LaneCurve<TLane>.Beside, (int)Math.Ceiling(to) - 2));
            }
        }
    }

    public override (double First, double Second) Answer(int lane) =>
        questions[lane] is null ? (double.PositiveInfinity, double.NegativeInfinity) : (Of(least, lane), Of(most, lane));

    protected override void All(int from, int to)
    {
        var values = Curve.Values[(from - Curve.Origin - 1)..];
        var (two, beyond) = (TLane.Of(2.0), TLane.Of(LanePiece<TLane>.Beyond));
        var (low, high) = (least, most);
        var (last, value) = (values[0], values[1]);
        for (var k = 0; k < to - from; k++)
        {
            var next = values[k + 2];
            var bend = last - (two * value) + next;
            var swing = beyond * TLane.Max(bend, -bend);
            if (TLane.AnyAbove(value + swing, high) || TLane.AnyAbove(low, value - swing))
            {
                Meet(from + k, last, value, next, TLane.Of(0.0));
                (low, high) = (least, most);
            }

            (last, value) = (value, next);
        }
    }

    protected override void Some(int from, int to, TLane idle)
    {
        var values = Curve.Values[(from - Curve.Origin - 1)..];
        var (zero, two, beyond) = (TLane.Of(0.0), TLane.Of(2.0), TLane.Of(LanePiece<TLane>.Beyond));
        var (below, above) = (TLane.Of(double.NegativeInfinity), TLane.Of(double.PositiveInfinity));
        for (var k = 0; k < to - from; k++)
        {
            var (last, value, next) = (values[k], values[k + 1], values[k + 2]);
            var bend = last - (two * value) + next;
            var swing = beyond * TLane.Max(bend, -bend);
            if (TLane.AnyAbove(TLane.WhereAtMost(idle, zero, value + swing, below), most)
                || TLane.AnyAbove(least, TLane.WhereAtMost(idle, zero, value - swing, above)))
            {
                Meet(from + k, last, value, next, idle);
            }
        }
    }

    protected override void One(int lane, int sample)
    {
        Span<double> about = stackalloc double[(2 * LaneCurve<TLane>.Beside) + 1];
        var record = records[lane];
        var k = sample - record.First;
        var (begin, count) = Curve.About(lane, k, about);
        var points = new CurvePoints(about[..count]);
        var (from, to) = (questions[lane]!.From, questions[lane]!.To);
        if (k == (int)from)
        {
            Include(lane, points.At(from - begin));
        }

        if (k == Math.Min((int)to, record.Count - 2))
        {
            Include(lane, points.At(to - begin));
        }

        if (k >= from && k <= to)
        {
            Include(lane, about[k - begin]);
        }

        if (k >= 1 && k <= record.Count - 2 && points.StandsOut(k - begin)
            && points.Turn(k - begin) is var (place, value) && place + begin > from && place + begin < to)
        {
            Include(lane, value);
        }
    }

    // An inner sample that may reach past what the lanes that are not idle have met, itself or by a turn beside it.
    private void Meet(int sample, TLane last, TLane value, TLane next, TLane idle)
    {
        var (zero, one) = (TLane.Of(0.0), TLane.Of(1.0));
        least = TLane.WhereAtMost(idle, zero, TLane.Min(least, value), least);
        most = TLane.WhereAtMost(idle, zero, TLane.Max(most, value), most);
        var standsOut = TLane.WhereAtMost(zero, (value - last) * (value - next), one - idle, zero);
        if (!TLane.AnyAbove(standsOut, zero))
        {
            return;
        }

        Span<double> lanes = stackalloc double[TLane.Count];
        Span<double> about = stackalloc double[(2 * LaneCurve<TLane>.Beside) + 1];
        standsOut.To(lanes);
        for (var lane = 0; lane < questions.Length; lane++)
        {
            if (lanes[lane] > 0.0 && questions[lane] is not null)
            {
                var k = sample - records[lane].First;
                var (begin, count) = Curve.About(lane, k, about);
                Include(lane, new CurvePoints(about[..count]).Turn(k - begin).Value);
            }
        }
    }

    private void Include(int lane, double value)
    {
        Span<double> lanes = stackalloc double[TLane.Count];
        least.To(lanes);
        lanes[lane] = value < lanes[lane] ? value : lanes[lane];
        least = TLane.From(lanes);
        most.To(lanes);
        lanes[lane] = value > lanes[lane] ? value : lanes[lane];
        most = TLane.From(lanes);
    }

    private static double Of(TLane values, int lane)
    {
        Span<double> lanes = stackalloc double[TLane.Count];
        values.To(lanes);
        return lanes[lane];
    }
}
