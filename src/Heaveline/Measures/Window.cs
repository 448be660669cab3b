using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Recording;
using Heaveline.Roads;

namespace Heaveline.Measures;

/// <summary>A stretch of time of a pass.</summary>
/// <param name="From">Its beginning, s.</param>
/// <param name="To">Its end, s.</param>
public readonly record struct Window(double From, double To)
{
    /// <summary>
    /// How long a root mean square over an obstacle looks from the front wheels' first touch on, s: the same at every speed, so that speeds can be
    /// set side by side. Every pass is recorded for as long. Own choice.
    /// </summary>
    public const double OverObstacle = 3.0;

    /// <summary>From t = 0 to the end of the record.</summary>
    public static Window Whole { get; } = new(0.0, double.PositiveInfinity);

    /// <summary>Its length, s.</summary>
    public double Length => To - From;

    /// <summary>
    /// What a root mean square of the ride is taken over: the fixed time over an obstacle; on another road from t = 0 until the rear wheels have
    /// left its last level, however long the record runs on.
    /// </summary>
    /// <param name="pass">The pass.</param>
    public static Window OfRide(Pass pass)
    {
        ArgumentNullException.ThrowIfNull(pass);
        return OfRide(pass.Request);
    }

    /// <summary>The same of a pass that is still to run.</summary>
    internal static Window OfRide(PassRequest pass) =>
        (pass.Road.Event is null ? OnRoad(pass.Model, pass.Road, pass.Speed) : OverIt(PitchHit.FirstTouch(pass.Model, pass.Road, pass.Speed))).Known;

    /// <summary>
    /// What numbers of the whole pass are taken over: the record over an obstacle; on another road from t = 0 until the rear wheels have left it.
    /// </summary>
    internal static CurveWindow OfPass(MeasuredCurves pass) =>
        pass.Road.Event is null ? OnRoad(pass.Model, pass.Road, pass.Speed) : Whole;

    private static CurveWindow OnRoad(RideModel model, Road road, NotedNumber speed) =>
        road.End > 0.0 ? new CurveWindow(0.0, (road.End + model.Car.Wheelbase.Si) / speed) : Whole;

    private static CurveWindow OverIt(NotedNumber firstTouch) => new(firstTouch, firstTouch + OverObstacle);

    /// <summary>Root mean square of a curve over its ride; not a number where that is not recorded, or a slow hit outlasts it.</summary>
    internal static NotedNumber RmsOfRide(MeasuredCurves pass, PassSignal of)
    {
        if (!pass.HasObstacle)
        {
            return pass.Rms(of, OnRoad(pass.Model, pass.Road, pass.Speed));
        }

        var window = OverIt(pass.FirstTouch);
        var recorded = NotedNumber.WhereAtMost(window.To, pass.Last + pass.SampleStep, pass.Rms(of, window), double.NaN);
        return NotedNumber.WhereAtMost(pass.RearLeaves, window.To, recorded, double.NaN);
    }

    /// <summary>Its ends in samples from the first of a record, cut to the record.</summary>
    /// <param name="start">Time of the first sample, s.</param>
    /// <param name="step">Time from one sample to the next, s.</param>
    /// <param name="count">Number of samples.</param>
    internal (double From, double To) Places(double start, double step, int count)
    {
        var last = Math.Max(0, count - 1);
        return (Math.Clamp((From - start) / step, 0.0, last), Math.Clamp((To - start) / step, 0.0, last));
    }

    /// <summary>The samples inside it, both ends included.</summary>
    internal ReadOnlySpan<double> Of(ReadOnlySpan<double> time, ReadOnlySpan<double> trace)
    {
        var first = time.BinarySearch(From - 1e-9);
        first = first < 0 ? ~first : first;
        var last = time.BinarySearch(To + 1e-9);
        last = last < 0 ? ~last : last + 1;
        return last > first ? trace[first..last] : [];
    }
}
