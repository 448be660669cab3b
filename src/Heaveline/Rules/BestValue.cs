namespace Heaveline.Rules;

/// <summary>Where a measure is least along a rule's axis.</summary>
/// <param name="Value">The value there; between the values tried by a parabola through the least three.</param>
/// <param name="Relative">The measure there over that at the reference (–).</param>
/// <param name="AtEdge">Whether it is the first or last value tried: the true best may lie beyond.</param>
public sealed record BestValue(double Value, double Relative, bool AtEdge)
{
    internal static BestValue? Of(IReadOnlyList<double> x, IReadOnlyList<double> y)
    {
        var least = -1;
        for (var i = 0; i < y.Count; i++)
        {
            least = double.IsFinite(y[i]) && (least < 0 || y[i] < y[least]) ? i : least;
        }

        if (least < 0)
        {
            return null;
        }

        if (least == 0 || least == y.Count - 1 || !double.IsFinite(y[least - 1]) || !double.IsFinite(y[least + 1]))
        {
            return new BestValue(x[least], y[least], AtEdge: true);
        }

        var (a, b) = (x[least - 1] - x[least], x[least + 1] - x[least]);
        var (u, v) = ((y[least - 1] - y[least]) / a, (y[least + 1] - y[least]) / b);
        var bend = (v - u) / (b - a);
        if (!(bend > 0.0))
        {
            return new BestValue(x[least], y[least], AtEdge: false);
        }

        var slope = u - (bend * a);
        var step = -slope / (2.0 * bend);
        return new BestValue(x[least] + step, y[least] + (0.5 * slope * step), AtEdge: false);
    }
}
