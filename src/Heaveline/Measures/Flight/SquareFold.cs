using Heaveline.Numerics;

namespace Heaveline.Measures;

/// <summary>∫x² over a stretch of each lane, piece by piece of its curve: what <see cref="Curve.Squares"/> makes of the trace, bit for bit.</summary>
internal sealed class SquareFold<TLane> : LaneFold<TLane>
    where TLane : unmanaged, ILane<TLane>
{
    private readonly CurveRecord[] records;
    private readonly CurveQuestion?[] questions;
    private TLane sum = TLane.Of(0.0);

    /// <param name="curve">The signal.</param>
    /// <param name="questions">One a lane; null where none is asked.</param>
    /// <param name="records">The record of each lane.</param>
    public SquareFold(LaneCurve<TLane> curve, CurveQuestion?[] questions, CurveRecord[] records)
        : base(curve)
    {
        this.records = records;
        // Where the stretch is empty nothing is asked.
        this.questions = Array.ConvertAll(questions, q => q?.To > q?.From ? q : null);
        for (var lane = 0; lane < questions.Length; lane++)
        {
            if (this.questions[lane] is { From: var from, To: var to })
            {
                // Piece k begins at sample k. A record's first piece and its last have one second difference only.
                var (record, first, last) = (records[lane], (int)from, (int)to);
                Count(
                    lane,
                    record.First + first,
                    record.First + Math.Min(last, record.Count - 2),
                    record.First + Math.Max(1, first + 1),
                    record.First + Math.Min(record.Count - 3, last - 1));
            }
        }
    }

    public override (double First, double Second) Answer(int lane)
    {
        Span<double> lanes = stackalloc double[TLane.Count];
        sum.To(lanes);
        return (questions[lane] is null ? 0.0 : lanes[lane], 0.0);
    }

    protected override void All(int from, int to)
    {
        var values = Curve.Values[(from - Curve.Origin - 1)..];
        var two = TLane.Of(2.0);
        var total = sum;
        var (last, value, next) = (values[0], values[1], values[2]);
        var before = last - (two * value) + next;
        for (var k = 0; k < to - from; k++)
        {
            var beyond = values[k + 3];
            var after = value - (two * next) + beyond;
            total += LanePiece<TLane>.Of(value, next, before, after).SquareIntegral();
            (value, next, before) = (next, beyond, after);
        }

        sum = total;
    }

    protected override void Some(int from, int to, TLane idle)
    {
        var values = Curve.Values[(from - Curve.Origin - 1)..];
        var (two, zero) = (TLane.Of(2.0), TLane.Of(0.0));
        for (var k = 0; k < to - from; k++)
        {
            var (value, next) = (values[k + 1], values[k + 2]);
            var before = values[k] - (two * value) + next;
            var after = value - (two * next) + values[k + 3];
            sum = TLane.WhereAtMost(idle, zero, sum + LanePiece<TLane>.Of(value, next, before, after).SquareIntegral(), sum);
        }
    }

    protected override void One(int lane, int sample)
    {
        Span<double> about = stackalloc double[(2 * LaneCurve<TLane>.Beside) + 1];
        var k = sample - records[lane].First;
        var (begin, count) = Curve.About(lane, k, about);
        var piece = new CurvePoints(about[..count]).Piece(k - begin);
        var (from, to) = (questions[lane]!.From, questions[lane]!.To);
        Span<double> lanes = stackalloc double[TLane.Count];
        sum.To(lanes);
        ref var own = ref lanes[lane];
        own -= k == (int)from ? piece.SquareIntegral(from - k) : 0.0;
        own += k < (int)to ? piece.SquareIntegral() : 0.0;
        own += k == (int)to ? piece.SquareIntegral(to - k) : 0.0;
        sum = TLane.From(lanes);
    }
}
