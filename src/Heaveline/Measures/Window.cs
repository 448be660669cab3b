using Heaveline.Passes;

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
        pass.Road.Event is null ? OnRoad(pass) : new(PitchHit.FirstTouch(pass), PitchHit.FirstTouch(pass) + OverObstacle);

    /// <summary>
    /// What numbers of the whole pass are taken over: the record over an obstacle; on another road from t = 0 until the rear wheels have left it.
    /// </summary>
    internal static Window OfPass(PassRequest pass) => pass.Road.Event is null ? OnRoad(pass) : Whole;

    private static Window OnRoad(PassRequest pass) =>
        pass.Road.End > 0.0 ? new(0.0, (pass.Road.End + pass.Model.Car.Wheelbase.Si) / pass.Speed) : Whole;

    /// <summary>Root mean square of a curve over its ride; not a number where that is not recorded, or a slow hit outlasts it.</summary>
    internal static double RmsOfRide(MeasuredCurves pass, PassSignal of)
    {
        var window = pass.HasObstacle ? new(pass.FirstTouch, pass.FirstTouch + OverObstacle) : OnRoad(pass.Request);
        var holds = !pass.HasObstacle || (window.To >= pass.RearLeaves && window.To <= pass.Last + pass.SampleStep);
        return holds ? pass.Rms(of, window) : double.NaN;
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
