using Heaveline.Quantities;

namespace Heaveline.Worksheets;

/// <summary>
/// Turns of a swing that dies by viscous damping and by dry friction. A half swing goes about a point that friction moves by d towards the turn that
/// it comes from, and leaves the share r = e^(−πζ/√(1−ζ²)) of the distance from there: |xₖ₊₁| = r·|xₖ| − d·(1 + r). Without friction each turn is a
/// share of the one before, without damping each is 2·d less (both: Rao, <em>Mechanical Vibrations</em>).
/// </summary>
internal sealed class DyingSwing
{
    // A fit is believed as far as no turn lies beyond so many times what the readings may be off. Own choice.
    private const double Fits = 2.0;

    private readonly double[] inputs;
    private readonly double[] doubts;

    /// <summary>Turns as they were read.</summary>
    /// <param name="turns">Heights, m.</param>
    /// <param name="of">Half-widths of their doubts, m.</param>
    /// <param name="rest">Height of rest, m.</param>
    /// <param name="ofRest">Half-width of its doubt, m.</param>
    public DyingSwing(double[] turns, double[] of, double rest, double ofRest)
    {
        inputs = [rest, .. turns];
        doubts = [ofRest, .. of];
    }

    /// <summary>How far the last turn is from rest, m.</summary>
    public double Last => Math.Abs(inputs[^1] - inputs[0]);

    /// <summary>Share of critical damping of the first turn and the last, friction counted in (–).</summary>
    public Amount<Plain> Plain => new(Share(inputs, 0.0), new Doubt(DoubtBudget.Of(v => Share(v, 0.0), inputs, doubts)));

    private int Halves => inputs.Length - 2;

    /// <summary>The same with a known friction taken out (–).</summary>
    /// <param name="friction">Its half-width, m, with a doubt.</param>
    public Amount<Plain> Against(Amount<Length> friction)
    {
        double Of(double[] v) => Share(v[..^1], v[^1]);
        double[] all = [.. inputs, friction.Si];
        return new(Of(all), new Doubt(DoubtBudget.Of(Of, all, [.. doubts, friction.Doubt.HalfWidth])));
    }

    /// <summary>The share with a friction taken out, without doubts (–).</summary>
    /// <param name="friction">Its half-width, m.</param>
    public double RatioAgainst(double friction) => Share(inputs, friction);

    /// <summary>
    /// Damping and friction from the turns alone, three half swings or more: the straight line of each turn against the one before. Null where there
    /// are fewer, where no friction shows, and where the turns do not lie on one line: bump and rebound are then damped unlike.
    /// </summary>
    public (Amount<Plain> Swing, Amount<Length>? Friction)? Fitted()
    {
        if (Halves < 3)
        {
            return null;
        }

        var (left, friction) = Line(inputs);
        var away = From(inputs);
        for (var k = 0; k < Halves; k++)
        {
            var off = Math.Sqrt(Math.Pow(doubts[k + 2], 2) + Math.Pow(left * doubts[k + 1], 2) + Math.Pow((1.0 + left) * doubts[0], 2));
            if (!(Math.Abs(away[k + 1] - ((left * away[k]) - (friction * (1.0 + left)))) <= Fits * off))
            {
                return null;
            }
        }

        return left is > 0.0 and < 1.0 && friction > 0.0
            ? (new(Ratio(left), new Doubt(DoubtBudget.Of(v => Ratio(Line(v).Left), inputs, doubts))),
                new Amount<Length>(friction, new Doubt(DoubtBudget.Of(v => Line(v).Friction, inputs, doubts))))
            : null;
    }

    private static double[] From(double[] v) => [.. v.Skip(1).Select(turn => Math.Abs(turn - v[0]))];

    private static (double Left, double Friction) Line(double[] v)
    {
        var away = From(v);
        var (before, after) = (away[..^1], away[1..]);
        var (x, y) = (before.Average(), after.Average());
        var slope = before.Zip(after, (a, b) => (a - x) * (b - y)).Sum() / before.Sum(a => (a - x) * (a - x));
        return (slope, ((slope * x) - y) / (1.0 + slope));
    }

    private double Share(double[] v, double friction)
    {
        var away = From(v);
        if (friction == 0.0)
        {
            return Ratio(Math.Pow(away[^1] / away[0], 1.0 / Halves));
        }

        // The last turn grows with the share that each half swing leaves.
        var (low, high) = (0.0, 4.0);
        for (var k = 0; k < 60; k++)
        {
            var left = 0.5 * (low + high);
            var at = away[0];
            for (var half = 0; half < Halves; half++)
            {
                at = (left * at) - (friction * (1.0 + left));
            }

            (low, high) = at < away[^1] ? (left, high) : (low, left);
        }

        return Ratio(0.5 * (low + high));
    }

    private static double Ratio(double left)
    {
        var decrement = -Math.Log(left);
        return decrement / Math.Sqrt((Math.PI * Math.PI) + (decrement * decrement));
    }
}
