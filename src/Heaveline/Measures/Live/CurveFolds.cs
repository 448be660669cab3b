using Heaveline.Recording;

namespace Heaveline.Measures;

/// <summary>
/// The questions to the curve through a record, a sample at a time: what <see cref="Curve"/> makes of the trace. They are the same for every car; two
/// are answered side by side.
/// </summary>
internal static class CurveFolds
{
    // Samples that the piece behind one is made of beside its ends.
    private const int Beside = 2;

    /// <summary>The kinds of question that have one.</summary>
    public static IReadOnlyList<CurveQuestionKind> Kinds { get; } =
        [CurveQuestionKind.Squares, CurveQuestionKind.Range, CurveQuestionKind.Farthest, CurveQuestionKind.Nothing];

    /// <summary>The fold of a kind.</summary>
    public static FoldRecord Of(CurveQuestionKind kind)
    {
        var record = new Record();
        using var writing = record.Begin();
        RecordLane State(int i) => new(record.Source(Operation.State, i));
        RecordLane Road(int i) => new(record.Source(Operation.Road, i));
        RecordLane Given(int i) => new(record.Source(Operation.Given, i));
        RecordLane Both(int i) => RecordLane.Joined(Given(i), Given(i + 1));
        RecordLane[] before = [.. Enumerable.Range(0, FoldRecord.Answers + (kind == CurveQuestionKind.Range ? 2 : 1)).Select(State)];
        var (sample, newest) = (before[0], Road(0));
        var piece = new FoldPiece<RecordLane>(
            (before[1], before[2], before[3], newest),
            sample,
            Given(LiveGiven.Last) - RecordLane.Of(1.0),
            Both(LiveGiven.Stretch),
            Both(LiveGiven.Stretch + 2));
        var answer = before[FoldRecord.Answers];
        RecordLane[] next = kind switch
        {
            CurveQuestionKind.Squares => [piece.Squares(answer)],
            CurveQuestionKind.Range => [piece.Least(answer), piece.Most(before[^1])],
            CurveQuestionKind.Farthest => [Farther(answer, newest - Road(1))],
            CurveQuestionKind.Nothing => [answer + RecordLane.WhereAtMost(newest, new(Record.Zero), RecordLane.Of(1.0), new(Record.Zero))],
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "It has no fold."),
        };
        RecordLane[] after = [sample + RecordLane.Of(1.0), before[2], before[3], newest, .. next];
        return new(
            record,
            [.. before.Zip(after, (now, then) => (now.Line, then.Line))],
            kind is CurveQuestionKind.Squares or CurveQuestionKind.Range ? Beside : 0,
            kind == CurveQuestionKind.Range ? [double.PositiveInfinity, double.NegativeInfinity] : [0.0]);
    }

    private static RecordLane Farther(RecordLane most, RecordLane change) => RecordLane.Max(most, RecordLane.Max(change, -change));
}
