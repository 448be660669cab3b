using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Recording;
using Heaveline.Roads;

namespace Heaveline.Measures;

/// <summary>
/// The curves of a pass that ran to its end, with the questions that measures ask of them: each number is defined once over these, whether it is read
/// off traces or gathered while the pass runs.
/// </summary>
/// <param name="request">Car, road and speed; null where a car was measured, of which neither is known.</param>
/// <param name="start">Time of the first sample, s.</param>
/// <param name="sampleStep">Time from one sample to the next, s.</param>
/// <param name="count">Number of samples.</param>
internal abstract class MeasuredCurves(PassRequest? request, double start, double sampleStep, int count)
{
    /// <summary>The whole record.</summary>
    public static CurveWindow Record { get; } = new(double.NegativeInfinity, double.PositiveInfinity);

    /// <summary>Car, road and speed.</summary>
    public PassRequest Request => request ?? throw new InvalidOperationException("What was measured on a road has no car and no road to ask.");

    /// <summary>The car and its load.</summary>
    public RideModel Model => Request.Model;

    /// <summary>The road.</summary>
    public Road Road => Request.Road;

    /// <summary>Whether an obstacle is driven over.</summary>
    public virtual bool HasObstacle => Road.Event is not null;

    /// <summary>When the front wheels first touch the obstacle, s.</summary>
    public virtual NotedNumber FirstTouch => PitchHit.FirstTouch(Model, Road, Speed);

    /// <summary>When the rear wheel centres leave the obstacle, s.</summary>
    public virtual NotedNumber RearLeaves => Request.RearLeavesAt / Speed;

    /// <summary>Wheelbase, m.</summary>
    public virtual double Wheelbase => Model.Car.Wheelbase.Si;

    /// <summary>Speed, m/s.</summary>
    public virtual NotedNumber Speed => Request.Speed;

    /// <summary>Pitch at trim, rad, nose-down positive.</summary>
    public virtual NotedNumber StandingPitch => Model.Trim.Pitch;

    /// <summary>Time from one sample to the next, s.</summary>
    public double SampleStep => sampleStep;

    /// <summary>Time of the first sample, s.</summary>
    public virtual NotedNumber First => start;

    /// <summary>Time of the last sample, s.</summary>
    public virtual NotedNumber Last => start + ((count - 1) * sampleStep);

    /// <summary>Number of the last sample, counted from the first.</summary>
    protected virtual NotedNumber LastPlace => Math.Max(0, count - 1);

    /// <summary>Load of a whole wheel at trim, N.</summary>
    public virtual NotedNumber StandingLoad(int corner) => Model.Trim.WheelLoad[corner];

    /// <summary>Travel from the reference state at which a wheel's bump stop touches, m; infinite without a stop.</summary>
    public virtual NotedNumber BumpTouch(int corner) => Model.BumpTouch[corner];

    /// <summary>Travel at which its rebound stop touches, m.</summary>
    public virtual NotedNumber ReboundTouch(int corner) => Model.ReboundTouch[corner];

    /// <summary>√(mean of x² over a window), as far as it is recorded; 0 of nothing.</summary>
    public NotedNumber Rms(PassSignal of, CurveWindow window)
    {
        var (from, to) = Places(window);
        var squares = Squares(of, from, to);
        return NotedNumber.WhereAtMost(to, from, 0.0, NotedNumber.Sqrt(squares / (to - from)));
    }

    /// <summary>∫x² dt over a window, as far as it is recorded.</summary>
    public NotedNumber SquareIntegral(PassSignal of, CurveWindow window)
    {
        var (from, to) = Places(window);
        return sampleStep * Squares(of, from, to);
    }

    /// <summary>Least and greatest value in a window, its ends among them; +∞ and −∞ of nothing.</summary>
    public (NotedNumber Least, NotedNumber Most) Range(PassSignal of, CurveWindow window)
    {
        var (from, to) = Places(window);
        return Range(of, from, to);
    }

    /// <summary>Largest |x| of the record.</summary>
    public NotedNumber Peak(PassSignal of) => Peak(of, Record);

    /// <summary>Largest |x| in a window; 0 of nothing.</summary>
    public NotedNumber Peak(PassSignal of, CurveWindow window)
    {
        var (least, most) = Range(of, window);
        var top = NotedNumber.Abs(NotedNumber.WhereAtMost(-least, most, most, least));
        return NotedNumber.WhereAtMost(top, double.MaxValue, top, 0.0);
    }

    /// <summary>The last time at which |x| falls through a share of its peak, s: null when it stands above that at the record's end.</summary>
    public abstract NotedNumber? LastAbove(PassSignal of, double share);

    /// <summary>Number of turning points away from zero later than a time at which |x| passes a share of its peak.</summary>
    public abstract NotedNumber Lobes(PassSignal of, double share, NotedNumber after);

    /// <summary>Largest |x(t + h) − x(t − h)| of two samples of the record.</summary>
    /// <param name="of">x.</param>
    /// <param name="apart">2h in samples, above 0.</param>
    public abstract NotedNumber Farthest(PassSignal of, int apart);

    /// <summary>Number of samples that are at most 0.</summary>
    public abstract NotedNumber Nothing(PassSignal of);

    /// <summary>∫x² over a stretch counted in samples from the first.</summary>
    protected abstract NotedNumber Squares(PassSignal of, NotedNumber from, NotedNumber to);

    /// <summary>Least and greatest value in a stretch counted in samples from the first.</summary>
    protected abstract (NotedNumber Least, NotedNumber Most) Range(PassSignal of, NotedNumber from, NotedNumber to);

    // A window's ends in samples from the first, cut to the record.
    private (NotedNumber From, NotedNumber To) Places(CurveWindow window)
    {
        NotedNumber Cut(NotedNumber time) => NotedNumber.Min(NotedNumber.Max((time - First) / sampleStep, 0.0), LastPlace);
        return (Cut(window.From), Cut(window.To));
    }
}
