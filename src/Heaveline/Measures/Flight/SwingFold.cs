using Heaveline.Numerics;

namespace Heaveline.Measures;

/// <summary>
/// What passes a share of the peak of each lane's curve, which is known at its end only. Kept until then are the pieces and tops that may still
/// count: those above the share of the largest sample so far, and of the pieces those that no later one rises above.
/// </summary>
internal sealed class SwingFold<TLane> : LaneFold<TLane>
    where TLane : unmanaged, ILane<TLane>
{
    private readonly CurveRecord[] records;
    private readonly CurveQuestion?[] questions;
    private readonly RangeFold<TLane> range;
    private readonly Swing[] swings;

    /// <param name="curve">The signal.</param>
    /// <param name="questions">One a lane, all of one kind; null where none is asked.</param>
    /// <param name="records">The record of each lane.</param>
    public SwingFold(LaneCurve<TLane> curve, CurveQuestion?[] questions, CurveRecord[] records)
        : base(curve)
    {
        (this.questions, this.records) = (questions, records);
        swings = Array.ConvertAll(questions, _ => new Swing());
        range = new(
            curve,
            [.. questions.Select(
                (q, lane) => q is null ? null : q with { Kind = CurveQuestionKind.Range, From = 0.0, To = records[lane].Count - 1 })],
            records);
        for (var lane = 0; lane < questions.Length; lane++)
        {
            if (questions[lane] is not null)
            {
                // All one by one: the record has no inner samples.
                var (first, last) = (records[lane].First, records[lane].First + records[lane].Count - 1);
                Count(lane, first, last, last + 1, last);
            }
        }
    }

    public override void Fold(int from, int to)
    {
        range.Fold(from, to);
        base.Fold(from, to);
    }

    public override (double First, double Second) Answer(int lane)
    {
        var (least, most) = range.Answer(lane);
        var limit = questions[lane]!.From * Math.Abs(most >= -least ? most : least);
        return questions[lane]!.Kind == CurveQuestionKind.Lobes
            ? (swings[lane].Tops.Count(top => top > limit), 0.0)
            : (swings[lane].LastAbove(limit, records[lane]), 0.0);
    }

    protected override void One(int lane, int sample)
    {
        Span<double> about = stackalloc double[(2 * LaneCurve<TLane>.Beside) + 1];
        var record = records[lane];
        var k = sample - record.First;
        var (begin, count) = Curve.About(lane, k, about);
        var points = new CurvePoints(about[..count]);
        var (swing, question) = (swings[lane], questions[lane]!);
        swing.Meet(Math.Abs(about[k - begin]), question.From);
        if (question.Kind == CurveQuestionKind.LastAbove && k < record.Count - 1)
        {
            swing.Add(k, points.Piece(k - begin));
        }
        else if (question.Kind == CurveQuestionKind.Lobes && k > 0 && k < record.Count - 1
            && points.Lobe(k - begin) is var (place, top) && record.Time(place + begin) > question.To)
        {
            swing.Add(Math.Abs(top));
        }
    }

    protected override void All(int from, int to) => throw new InvalidOperationException("No sample runs in the lanes.");

    protected override void Some(int from, int to, TLane idle) => throw new InvalidOperationException("No sample runs in the lanes.");

    // What one lane has kept.
    private sealed class Swing
    {
        private readonly List<(int Sample, CurvePiece Piece, double Highest)> pieces = [];
        private double largest;
        private double limit;
        private double last;

        public List<double> Tops { get; } = [];

        public void Meet(double size, double share)
        {
            last = size;
            largest = Math.Max(largest, size);
            limit = share * largest;
        }

        public void Add(double top)
        {
            if (top > limit)
            {
                Tops.Add(top);
            }
        }

        public void Add(int sample, CurvePiece piece)
        {
            var highest = Math.Abs(piece.C0);
            if (piece.Turn is { } turn)
            {
                highest = Math.Max(highest, Math.Abs(piece.At(turn)));
            }

            while (pieces.Count > 0 && pieces[^1].Highest <= highest)
            {
                pieces.RemoveAt(pieces.Count - 1);
            }

            if (highest > limit)
            {
                pieces.Add((sample, piece, highest));
            }
        }

        // Not a number where the record ends above the limit.
        public double LastAbove(double above, CurveRecord record)
        {
            if (last > above)
            {
                return double.NaN;
            }

            var at = pieces.FindLastIndex(piece => piece.Highest > above);
            return at < 0 ? 0.0 : record.Time(pieces[at].Sample + Measures.Curve.Falls(pieces[at].Piece, above));
        }
    }
}
