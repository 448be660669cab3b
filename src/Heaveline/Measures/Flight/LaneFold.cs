using Heaveline.Numerics;

namespace Heaveline.Measures;

/// <summary>
/// Gathers one answer of passes side by side, sample by sample. Of a lane's stretch the inner samples run in the lanes; those at its ends, where a
/// window cuts a piece or the record begins or ends, are worked out one by one, in the order of time.
/// </summary>
/// <param name="curve">The signal.</param>
internal abstract class LaneFold<TLane>(LaneCurve<TLane> curve)
    where TLane : unmanaged, ILane<TLane>
{
    private readonly List<(int Lane, Stretch At)> stretches = [];
    private (int First, int Last) reach = (int.MaxValue, int.MinValue);

    /// <summary>The signal.</summary>
    public LaneCurve<TLane> Curve => curve;

    /// <summary>The first and the last sample that counts for any lane; the first after the last where none does.</summary>
    public virtual (int First, int Last) Reach => reach;

    /// <summary>Takes up the samples that are ready.</summary>
    /// <param name="from">Number of the first, counted from the first of all lanes.</param>
    /// <param name="to">Number after the last.</param>
    public virtual void Fold(int from, int to)
    {
        foreach (var (lane, at) in stretches)
        {
            Ends(lane, Math.Max(from, at.First), Math.Min(to, at.InnerFirst));
        }

        Span<double> idle = stackalloc double[TLane.Count];
        for (var here = from; here < to;)
        {
            var next = to;
            idle.Fill(1.0);
            var active = 0;
            foreach (var (lane, at) in stretches)
            {
                next = Math.Min(next, at.InnerFirst > here ? at.InnerFirst : at.InnerLast >= here ? at.InnerLast + 1 : to);
                if (at.InnerFirst <= here && here <= at.InnerLast)
                {
                    idle[lane] = 0.0;
                    active++;
                }
            }

            if (active == stretches.Count && active > 0)
            {
                All(here, next);
            }
            else if (active > 0)
            {
                Some(here, next, TLane.From(idle));
            }

            here = next;
        }

        foreach (var (lane, at) in stretches)
        {
            Ends(lane, Math.Max(from, at.InnerLast + 1), Math.Min(to, at.Last + 1));
        }
    }

    /// <summary>The answer of a lane.</summary>
    public abstract (double First, double Second) Answer(int lane);

    /// <summary>Says which samples of a lane count, and which of these run in the lanes; all counted from the first of all lanes.</summary>
    protected void Count(int lane, int first, int last, int innerFirst, int innerLast)
    {
        if (first <= last)
        {
            var hasInner = innerFirst <= innerLast;
            stretches.Add((lane, new(first, last, hasInner ? innerFirst : last + 1, hasInner ? innerLast : last)));
            reach = (Math.Min(reach.First, first), Math.Max(reach.Last, last));
        }
    }

    /// <summary>Inner samples that count for every lane that any count for; what the others gather is never asked for.</summary>
    protected abstract void All(int from, int to);

    /// <summary>Inner samples that count for some lanes.</summary>
    /// <param name="from">The first.</param>
    /// <param name="to">The one after the last.</param>
    /// <param name="idle">1 in lanes for which they do not count, 0 in the others.</param>
    protected abstract void Some(int from, int to, TLane idle);

    /// <summary>One sample at an end of a lane's stretch.</summary>
    protected abstract void One(int lane, int sample);

    private void Ends(int lane, int from, int to)
    {
        for (var k = from; k < to; k++)
        {
            One(lane, k);
        }
    }

    // Samples that count, and those of them in the lanes; without inner ones these begin after the last.
    private readonly record struct Stretch(int First, int Last, int InnerFirst, int InnerLast);
}
