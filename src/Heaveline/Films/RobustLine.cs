using Heaveline.Numerics;

namespace Heaveline.Films;

/// <summary>
/// A polynomial through points of which some do not belong to it: least absolute distances by weights 1/|r| over and over, then least squares over
/// those that lie near.
/// </summary>
internal sealed class RobustLine
{
    private readonly double[] coefficients;
    private readonly double centre;
    private readonly double scale;

    private RobustLine(double[] coefficients, double centre, double scale, int order) =>
        (this.coefficients, this.centre, this.scale, Order) = (coefficients, centre, scale, order);

    /// <summary>Order of the polynomial.</summary>
    public int Order { get; }

    /// <summary>Of coefficients beyond those of the polynomial: each further set's offset from the first.</summary>
    public double Offset(int set) => set == 0 ? 0.0 : coefficients[Order + set];

    /// <summary>Fits sets of points by one polynomial, each set but the first with an offset of its own.</summary>
    /// <param name="sets">Points by set, with their weights; none is taken at weight 0.</param>
    /// <param name="order">Order of the polynomial.</param>
    /// <param name="isRobust">Whether points that lie apart are to be left out.</param>
    public static RobustLine Of((double X, double Y, double Weight)[][] sets, int order, bool isRobust)
    {
        var all = sets.SelectMany((s, k) => s.Where(p => p.Weight > 0.0).Select(p => (p.X, p.Y, p.Weight, Set: k))).ToArray();
        var (low, high) = (all.Min(p => p.X), all.Max(p => p.X));
        var (centre, scale) = (0.5 * (low + high), Math.Max(0.5 * (high - low), 1e-9));
        double[] Row(double x, int set)
        {
            var t = (x - centre) / scale;
            var row = new double[order + sets.Length];
            for (var k = 0; k <= order; k++)
            {
                row[k] = Math.Pow(t, k);
            }

            if (set > 0)
            {
                row[order + set] = 1.0;
            }

            return row;
        }

        var weights = all.Select(p => p.Weight).ToArray();
        double[] c = [];
        for (var round = 0; round < (isRobust ? 40 : 1); round++)
        {
            var roots = weights.Select(Math.Sqrt).ToArray();
            c = new LeastSquares(
                [.. all.Select((p, i) => Array.ConvertAll(Row(p.X, p.Set), r => r * roots[i]))],
                [.. all.Select((p, i) => p.Y * roots[i])]).Coefficients;
            var line = new RobustLine(c, centre, scale, order);
            var away = all.Select(p => Math.Abs(p.Y - line.At(p.X) - line.Offset(p.Set))).ToArray();
            var least = Math.Max(0.3 * Middle.Of(away), 1e-9);
            weights = [.. all.Select((p, i) => p.Weight / Math.Max(away[i], least))];
        }

        return new RobustLine(c, centre, scale, order);
    }

    public double At(double x)
    {
        var (t, sum) = ((x - centre) / scale, 0.0);
        for (var k = Order; k >= 0; k--)
        {
            sum = (sum * t) + coefficients[k];
        }

        return sum;
    }

    public double Slope(double x)
    {
        var (t, sum) = ((x - centre) / scale, 0.0);
        for (var k = Order; k >= 1; k--)
        {
            sum = (sum * t) + (k * coefficients[k]);
        }

        return sum / scale;
    }
}
