using Heaveline.Models;
using Heaveline.Passes;
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
    public static Window Record { get; } = new(double.NegativeInfinity, double.PositiveInfinity);

    /// <summary>Car, road and speed.</summary>
    public PassRequest Request => request ?? throw new InvalidOperationException("What was measured on a road has no car and no road to ask.");

    /// <summary>The car and its load.</summary>
    public RideModel Model => Request.Model;

    /// <summary>The road.</summary>
    public Road Road => Request.Road;

    /// <summary>Whether an obstacle is driven over.</summary>
    public virtual bool HasObstacle => Road.Event is not null;

    /// <summary>When the front wheels first touch the obstacle, s.</summary>
    public virtual double FirstTouch => PitchHit.FirstTouch(Request);

    /// <summary>When the rear wheel centres leave the obstacle, s.</summary>
    public virtual double RearLeaves => Request.RearLeaves;

    /// <summary>Wheelbase, m.</summary>
    public virtual double Wheelbase => Model.Car.Wheelbase.Si;

    /// <summary>Time from one sample to the next, s.</summary>
    public double SampleStep => sampleStep;

    /// <summary>Time of the first sample, s.</summary>
    public double First => start;

    /// <summary>Time of the last sample, s.</summary>
    public double Last => start + ((count - 1) * sampleStep);

    /// <summary>√(mean of x² over a window), as far as it is recorded; 0 of nothing.</summary>
    public double Rms(PassSignal of, Window window)
    {
        var (from, to) = window.Places(start, sampleStep, count);
        var squares = Squares(of, from, to);
        return to > from ? Math.Sqrt(squares / (to - from)) : 0.0;
    }

    /// <summary>∫x² dt over a window, as far as it is recorded.</summary>
    public double SquareIntegral(PassSignal of, Window window)
    {
        var (from, to) = window.Places(start, sampleStep, count);
        return sampleStep * Squares(of, from, to);
    }

    /// <summary>Least and greatest value in a window, its ends among them; +∞ and −∞ of nothing.</summary>
    public (double Least, double Most) Range(PassSignal of, Window window)
    {
        var (from, to) = window.Places(start, sampleStep, count);
        return Range(of, from, to);
    }

    /// <summary>Largest |x| of the record.</summary>
    public double Peak(PassSignal of) => Peak(of, Record);

    /// <summary>Largest |x| in a window; 0 of nothing.</summary>
    public double Peak(PassSignal of, Window window)
    {
        var (least, most) = Range(of, window);
        var top = most >= -least ? most : least;
        return double.IsFinite(top) ? Math.Abs(top) : 0.0;
    }

    /// <summary>The last time at which |x| falls through a share of its peak, s: null when it stands above that at the record's end.</summary>
    public abstract double? LastAbove(PassSignal of, double share);

    /// <summary>Number of turning points away from zero later than a time at which |x| passes a share of its peak.</summary>
    public abstract int Lobes(PassSignal of, double share, double after);

    /// <summary>Largest |x(t + h) − x(t − h)| of two samples of the record.</summary>
    /// <param name="of">x.</param>
    /// <param name="apart">2h in samples, above 0.</param>
    public abstract double Farthest(PassSignal of, int apart);

    /// <summary>Number of samples that are at most 0.</summary>
    public abstract int Nothing(PassSignal of);

    /// <summary>∫x² over a stretch counted in samples from the first.</summary>
    protected abstract double Squares(PassSignal of, double from, double to);

    /// <summary>Least and greatest value in a stretch counted in samples from the first.</summary>
    protected abstract (double Least, double Most) Range(PassSignal of, double from, double to);
}
