using Heaveline.Numerics;

namespace Heaveline.Measures;

/// <summary>Largest change of each lane's signal between two samples so far apart.</summary>
internal sealed class FarthestFold<TLane> : LaneFold<TLane>
    where TLane : unmanaged, ILane<TLane>
{
    private readonly TLane[] ring;
    private TLane most = TLane.Of(0.0);

    /// <param name="curve">The signal.</param>
    /// <param name="questions">One a lane, all as far apart; null where none is asked.</param>
    /// <param name="records">The record of each lane.</param>
    public FarthestFold(LaneCurve<TLane> curve, CurveQuestion?[] questions, CurveRecord[] records)
        : base(curve)
    {
        ring = new TLane[(int)Array.Find(questions, q => q is not null)!.From];
        for (var lane = 0; lane < questions.Length; lane++)
        {
            if (questions[lane] is not null)
            {
                var (first, last) = (records[lane].First + ring.Length, records[lane].First + records[lane].Count - 1);
                Count(lane, first, last, first, last);
            }
        }
    }

    /// <summary>All samples are read from the first on: a sample is compared with one before it.</summary>
    public override (int First, int Last) Reach => base.Reach is var (first, last) && first <= last ? (0, last) : (first, last);

    public override void Fold(int from, int to)
    {
        // As far as the ring reaches, for then it turns over.
        for (var here = from; here < to; here += ring.Length)
        {
            var next = Math.Min(to, here + ring.Length);
            base.Fold(here, next);
            for (var k = here; k < next; k++)
            {
                ring[k % ring.Length] = Curve.Values[k - Curve.Origin];
            }
        }
    }

    public override (double First, double Second) Answer(int lane)
    {
        Span<double> lanes = stackalloc double[TLane.Count];
        most.To(lanes);
        return (lanes[lane], 0.0);
    }

    protected override void All(int from, int to)
    {
        for (var k = from; k < to; k++)
        {
            most = TLane.Max(most, Change(k));
        }
    }

    protected override void Some(int from, int to, TLane idle)
    {
        for (var k = from; k < to; k++)
        {
            most = TLane.WhereAtMost(idle, TLane.Of(0.0), TLane.Max(most, Change(k)), most);
        }
    }

    // There are no samples but inner ones.
    protected override void One(int lane, int sample) => throw new InvalidOperationException("Every sample runs in the lanes.");

    private TLane Change(int k)
    {
        var change = Curve.Values[k - Curve.Origin] - ring[k % ring.Length];
        return TLane.Max(change, -change);
    }
}
