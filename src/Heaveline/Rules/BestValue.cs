namespace Heaveline.Rules;

/// <summary>Where a measure is least along a rule's axis.</summary>
/// <param name="Value">The value there; between the values tried by a parabola through the least three.</param>
/// <param name="Relative">The measure there over that at the reference (–); NaN where the reference has none.</param>
/// <param name="AtEdge">Whether it is the first or last value computed: the true best may lie beyond.</param>
public sealed record BestValue(double Value, double Relative, bool AtEdge)
{
    /// <summary>The measure there, in its SI unit; a number also where the reference has none.</summary>
    public required double Measured { get; init; }

    internal static BestValue? Of(IReadOnlyList<double> x, IReadOnlyList<double> y, double reference)
    {
        BestValue At(double value, double measured, bool atEdge) => new(value, measured / reference, atEdge) { Measured = measured };
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
            return At(x[least], y[least], atEdge: true);
        }

        var (a, b) = (x[least - 1] - x[least], x[least + 1] - x[least]);
        var (u, v) = ((y[least - 1] - y[least]) / a, (y[least + 1] - y[least]) / b);
        var bend = (v - u) / (b - a);
        if (!(bend > 0.0))
        {
            return At(x[least], y[least], atEdge: false);
        }

        var slope = u - (bend * a);
        var step = -slope / (2.0 * bend);
        return At(x[least] + step, y[least] + (0.5 * slope * step), atEdge: false);
    }
}
