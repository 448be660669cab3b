using Heaveline.Numerics;

namespace Heaveline.Measures;

/// <summary>How many samples of each lane's signal are at most 0.</summary>
internal sealed class NothingFold<TLane> : LaneFold<TLane>
    where TLane : unmanaged, ILane<TLane>
{
    private TLane count = TLane.Of(0.0);

    /// <param name="curve">The signal.</param>
    /// <param name="questions">One a lane; null where none is asked.</param>
    /// <param name="records">The record of each lane.</param>
    public NothingFold(LaneCurve<TLane> curve, CurveQuestion?[] questions, CurveRecord[] records)
        : base(curve)
    {
        for (var lane = 0; lane < questions.Length; lane++)
        {
            if (questions[lane] is not null)
            {
                var (first, last) = (records[lane].First, records[lane].First + records[lane].Count - 1);
                Count(lane, first, last, first, last);
            }
        }
    }

    public override (double First, double Second) Answer(int lane)
    {
        Span<double> lanes = stackalloc double[TLane.Count];
        count.To(lanes);
        return (lanes[lane], 0.0);
    }

    protected override void All(int from, int to) => Some(from, to, TLane.Of(0.0));

    protected override void Some(int from, int to, TLane idle)
    {
        var (zero, one) = (TLane.Of(0.0), TLane.Of(1.0));
        foreach (ref readonly var value in Curve.Values[(from - Curve.Origin)..(to - Curve.Origin)])
        {
            count += TLane.WhereAtMost(idle, zero, TLane.WhereAtMost(value, zero, one, zero), zero);
        }
    }

    // There are no samples but inner ones.
    protected override void One(int lane, int sample) => throw new InvalidOperationException("Every sample runs in the lanes.");
}
