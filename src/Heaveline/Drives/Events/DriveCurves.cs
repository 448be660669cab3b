using Heaveline.Measures;
using Heaveline.Recording;

namespace Heaveline.Drives.Events;

/// <summary>The curves of a bump that was driven over: the definitions of a computed pass are asked of what was measured.</summary>
/// <param name="start">Time of the first sample, s since the log's start.</param>
/// <param name="step">Time from one sample to the next, s.</param>
/// <param name="curves">What was measured about it.</param>
/// <param name="firstTouch">When the front wheels first touch it, s.</param>
/// <param name="rearLeaves">When the rear wheels have left it, s.</param>
/// <param name="wheelbase">Wheelbase, m.</param>
internal sealed class DriveCurves(double start, double step, MeasuredMotion curves, double firstTouch, double rearLeaves, double wheelbase)
    : MeasuredCurves(null, start, step, curves.Pitch.Length)
{
    /// <summary>Vertical acceleration at the place that heave is wanted at.</summary>
    public static PassSignal Vertical { get; } = PassSignal.HeaveAcceleration;

    private static readonly PassSignal HeaveAboveRoad = PassSignal.Heave with { AboveRoad = true };

    public override bool HasObstacle => true;

    public override NotedNumber FirstTouch => firstTouch;

    public override NotedNumber RearLeaves => rearLeaves;

    public override double Wheelbase => wheelbase;

    public override NotedNumber? LastAbove(PassSignal of, double share)
    {
        var curve = CurveOf(of);
        return curve.LastAbove(share * curve.Peak());
    }

    public override NotedNumber Lobes(PassSignal of, double share, NotedNumber after)
    {
        var curve = CurveOf(of);
        return curve.Lobes(share * curve.Peak(), after).Count;
    }

    public override NotedNumber Farthest(PassSignal of, int apart)
    {
        var values = Values(of);
        var most = 0.0;
        for (var k = apart; k < values.Length; k++)
        {
            most = Math.Max(most, Math.Abs(values[k] - values[k - apart]));
        }

        return most;
    }

    public override NotedNumber Nothing(PassSignal of) => Values(of).Count(v => v <= 0.0);

    protected override NotedNumber Squares(PassSignal of, NotedNumber from, NotedNumber to) => CurveOf(of).Squares(from, to);

    protected override (NotedNumber Least, NotedNumber Most) Range(PassSignal of, NotedNumber from, NotedNumber to)
    {
        var (least, most) = CurveOf(of).Range(from, to);
        return (least, most);
    }

    private Curve CurveOf(PassSignal of) => new(First, SampleStep, Values(of));

    private double[] Values(PassSignal of) =>
        of == PassSignal.Pitch ? curves.Pitch
        : of == PassSignal.PitchRate ? curves.PitchRate
        : of == PassSignal.PitchAcceleration ? curves.PitchAcceleration
        : of == Vertical ? curves.Vertical
        : of == HeaveAboveRoad ? curves.Heave
        : throw new InvalidOperationException($"A drive does not measure {of}.");
}
