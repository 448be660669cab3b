using Heaveline.Numerics;
using MathNet.Numerics.Distributions;

namespace Heaveline.Worksheets;

/// <summary>
/// A loop of force against bump travel: F = c + k·x ± f, and past a stop + k_b·max(0, x − x_b) in bump, − k_r·max(0, x_r − x) in rebound.
/// Straight but for the two bends, whose places are searched.
/// </summary>
internal sealed class LoopCurve
{
    private readonly double[] travel;
    private readonly double[] side;
    private readonly double[] force;

    private LoopCurve(double[] travel, double[] side, double[] force, double? bump, double? rebound)
    {
        (this.travel, this.side, this.force, Bump, Rebound) = (travel, side, force, bump, rebound);
        Fit = new LeastSquares([.. travel.Zip(side, Row)], force);
    }

    /// <summary>Where the bump stop begins, m; null for none.</summary>
    public double? Bump { get; }

    /// <summary>Where the rebound stop begins, m; null for none.</summary>
    public double? Rebound { get; }

    /// <summary>c, k, f, then k_b and k_r of the stops there are.</summary>
    public LeastSquares Fit { get; }

    /// <summary>Readings less what was fitted to them, the places of the bends included.</summary>
    public int Freedom => Fit.Freedom - (Bump is null ? 0 : 1) - (Rebound is null ? 0 : 1);

    // A stop pushes: its rate is above zero.
    private bool IsSound => Fit.Coefficients.Skip(3).All(rate => rate > 0.0);

    /// <summary>The curve with the bends that the readings prove, each against the curve without it.</summary>
    /// <param name="travel">Bump travel, m.</param>
    /// <param name="side">1 going up, −1 coming down.</param>
    /// <param name="force">Force, N.</param>
    /// <param name="reading">Standard deviation of reading one of them, N.</param>
    public static LoopCurve Of(double[] travel, double[] side, double[] force, double reading)
    {
        // Straight readings would show such a bend once in 200 times.
        const double Proof = 0.005;
        var straight = new LoopCurve(travel, side, force, null, null);
        var places = Places(travel);
        LoopCurve?[] single = [Best(straight, places, true, false), Best(straight, places, false, true)];
        var both = Best(straight, places, true, true);
        var one = single.OfType<LoopCurve>().OrderBy(c => c.Fit.SumOfSquares).FirstOrDefault(c => c.Chance(straight, reading) < Proof);
        return both is not null && both.Chance(one ?? straight, reading) < Proof ? both : one ?? straight;
    }

    /// <summary>Intervals about the fit with the places of the bends among the unknowns: c, k, f, k_b, k_r, x_b, x_r as far as there are.</summary>
    public LeastSquares Linearised()
    {
        var (b, r) = (Bump, Rebound);
        var rates = Fit.Coefficients.AsSpan(3);
        var (bumpRate, reboundRate) = (b is null ? 0.0 : rates[0], r is null ? 0.0 : rates[^1]);
        double[] Wide(double x, double s) =>
        [
            .. Row(x, s),
            .. b is { } bump ? [x > bump ? -bumpRate : 0.0] : Array.Empty<double>(),
            .. r is { } rebound ? [x < rebound ? -reboundRate : 0.0] : Array.Empty<double>(),
        ];
        return new LeastSquares([.. travel.Zip(side, Wide)], [.. travel.Select((x, i) => force[i] - Force(x, side[i]))]);
    }

    /// <summary>Force by the curve, N.</summary>
    public double Force(double x, double s) => Row(x, s).Zip(Fit.Coefficients, (a, c) => a * c).Sum();

    /// <summary>
    /// Change of the half loop over the travel, N/m, and the half-width of its interval: nothing when the loop is as wide at one end as at the other.
    /// </summary>
    public (double PerTravel, double HalfWidth) Widening()
    {
        var mean = travel.Average();
        var fit = new LeastSquares([.. travel.Zip(side, (x, s) => (double[])[.. Row(x, s), s * (x - mean)])], force);
        double[] last = [.. Enumerable.Repeat(0.0, fit.Coefficients.Length - 1), 1.0];
        return (fit.Coefficients[^1], fit.HalfWidth(last));
    }

    private double[] Row(double x, double s) =>
    [
        1.0, x, s,
        .. Bump is { } b ? [Math.Max(0.0, x - b)] : Array.Empty<double>(),
        .. Rebound is { } r ? [-Math.Max(0.0, r - x)] : Array.Empty<double>(),
    ];

    // The F test of nested fits; 1 where no reading is left to tell.
    private double Chance(LoopCurve simpler, double reading)
    {
        var gain = simpler.Fit.SumOfSquares - Fit.SumOfSquares;
        if (Freedom < 1 || !(gain > 0.0))
        {
            return 1.0;
        }

        // Rounding is no scatter.
        var rounding = 1e-18 * force.Sum(f => f * f);
        var variance = Math.Max(Fit.SumOfSquares / Freedom, Math.Max(reading * reading, rounding));
        var more = simpler.Freedom - Freedom;
        return 1.0 - FisherSnedecor.CDF(more, Freedom, gain / more / variance);
    }

    // Up and down meet nearly the same travel: readings closer than a fiftieth of the whole are one place.
    private static List<double> Places(double[] travel)
    {
        double[] sorted = [.. travel.Order()];
        var near = 0.02 * (sorted[^1] - sorted[0]);
        List<double> places = [sorted[0]];
        foreach (var x in sorted.Where((x, i) => i > 0 && x - sorted[i - 1] > near))
        {
            places.Add(x);
        }

        return places;
    }

    // A bend leaves two places or more on each of its sides; a coarse search, then ever closer about the best.
    private static LoopCurve? Best(LoopCurve straight, List<double> places, bool withBump, bool withRebound)
    {
        const int Between = 4;
        const int Halvings = 10;
        var (first, last) = (1, places.Count - 2);
        double[] grid = [.. Enumerable.Range(0, Math.Max(0, ((last - first) * Between) + 1)).Select(k => At(first + (k / (double)Between)))];
        double?[] none = [null];
        LoopCurve? best = null;
        foreach (var b in withBump ? grid.Select(x => (double?)x) : none)
        {
            foreach (var r in withRebound ? grid.Select(x => (double?)x) : none)
            {
                Try(b, r);
            }
        }

        var step = (places[^1] - places[0]) / Math.Max(1, places.Count - 1) / Between;
        for (var k = 0; best is not null && k < Halvings; k++, step /= 2.0)
        {
            var (b, r) = (best.Bump, best.Rebound);
            foreach (var move in new[] { -1.0, -0.5, 0.5, 1.0 })
            {
                Try(b + (move * step), r);
                Try(b, r + (move * step));
            }
        }

        return best;

        double At(double place)
        {
            var k = (int)place;
            return places[k] + ((place - k) * (places[Math.Min(k + 1, places.Count - 1)] - places[k]));
        }

        void Try(double? b, double? r)
        {
            var low = places.Count(x => x < (r ?? b));
            var middle = b is not null && r is not null ? places.Count(x => x > r && x < b) : 2;
            var high = places.Count(x => x > (b ?? r));
            if (low < 2 || middle < 2 || high < 2 || straight.travel.Length < 4 + (withBump ? 2 : 0) + (withRebound ? 2 : 0))
            {
                return;
            }

            var curve = new LoopCurve(straight.travel, straight.side, straight.force, b, r);
            best = curve.IsSound && (best is null || curve.Fit.SumOfSquares < best.Fit.SumOfSquares) ? curve : best;
        }
    }
}
