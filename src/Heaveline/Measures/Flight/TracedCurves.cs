using Heaveline.Passes;
using Heaveline.Recording;

namespace Heaveline.Measures;

/// <summary>The curves through the traces of a recorded pass.</summary>
/// <param name="pass">The pass.</param>
internal sealed class TracedCurves(Pass pass) : MeasuredCurves(pass.Request, pass.Start, pass.SampleStep, pass.Count)
{
    // A two-wheeler has each of its wheels twice, on one and the same track.
    private static readonly int[] AllWheels = [0, 1, 2, 3];

    /// <summary>The values of a signal, one a sample.</summary>
    public static ReadOnlySpan<double> Values(Pass pass, PassSignal of)
    {
        var read = pass.Read(of.Reading).AsSpan();
        if (of.Less == 0.0 && !of.AboveRoad)
        {
            return read;
        }

        var values = new double[read.Length];
        for (var k = 0; k < values.Length; k++)
        {
            values[k] = read[k] - of.Less;
        }

        foreach (var corner in of.AboveRoad ? AllWheels : [])
        {
            foreach (var (k, height) in pass.RoadHeight(corner).Index())
            {
                values[k] -= height / AllWheels.Length;
            }
        }

        return values;
    }

    public override NotedNumber? LastAbove(PassSignal of, double share)
    {
        var curve = Curve(of);
        return curve.LastAbove(share * curve.Peak());
    }

    public override NotedNumber Lobes(PassSignal of, double share, NotedNumber after)
    {
        var curve = Curve(of);
        return curve.Lobes(share * curve.Peak(), after).Count;
    }

    public override NotedNumber Farthest(PassSignal of, int apart)
    {
        var values = Values(pass, of);
        var most = 0.0;
        for (var k = apart; k < values.Length; k++)
        {
            most = Math.Max(most, Math.Abs(values[k] - values[k - apart]));
        }

        return most;
    }

    public override NotedNumber Nothing(PassSignal of)
    {
        var count = 0;
        foreach (var value in Values(pass, of))
        {
            count += value <= 0.0 ? 1 : 0;
        }

        return count;
    }

    protected override NotedNumber Squares(PassSignal of, NotedNumber from, NotedNumber to) => Curve(of).Squares(from, to);

    protected override (NotedNumber Least, NotedNumber Most) Range(PassSignal of, NotedNumber from, NotedNumber to)
    {
        var (least, most) = Curve(of).Range(from, to);
        return (least, most);
    }

    private Curve Curve(PassSignal of) => new(pass, Values(pass, of));
}
