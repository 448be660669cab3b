using Heaveline.Numerics;
using MathNet.Numerics.Distributions;

namespace Heaveline.Drives.Comparison;

/// <summary>
/// The linear model of a comparison, y = site + b·after + c·u + d·u² + e: y = ln of a pass's number, u = ln of its speed over the mean; c
/// and d for each site of four passes in each state, else for all such sites of a kind; d from eight passes in each state on, or five
/// where speeds lie far apart; one b for all sites, or one for each. Analysis of covariance by least squares, each pass weighed by how
/// much those of its site scatter beside the others.
/// </summary>
internal sealed class ComparisonFit
{
    private readonly string[] sites;
    private readonly bool isApart;
    private readonly Speeds[] groups;
    private readonly Dictionary<string, string> groupOf;
    private readonly List<double[]> rows;
    private readonly IReadOnlyList<ComparedPass> passes;
    private readonly IReadOnlyDictionary<string, double> scatter;
    private LeastSquares? fit;

    /// <summary>The model of passes.</summary>
    /// <param name="passes">At least one; each site in both states.</param>
    /// <param name="isApart">Whether each site answers the change by itself.</param>
    /// <param name="scatter">How much each site's passes scatter beside the typical site's; null: all alike.</param>
    public ComparisonFit(IReadOnlyList<ComparedPass> passes, bool isApart, IReadOnlyDictionary<string, double>? scatter = null)
    {
        this.passes = passes;
        this.isApart = isApart;
        this.scatter = scatter ?? passes.Select(p => p.Site).Distinct().ToDictionary(s => s, _ => 1.0);
        sites = [.. passes.Select(p => p.Site).Distinct()];
        groupOf = passes.GroupBy(p => p.Site)
            .ToDictionary(g => g.Key, g => Least(g) < ComparisonSettings.LeastPasses ? $"kind {g.First().Kind}" : $"site {g.Key}");
        groups = [.. passes.GroupBy(p => groupOf[p.Site]).Select(Speeds.Of)];
        rows = [.. passes.Select(p => Row(p.Site, p.Speed, p.IsAfter))];
    }

    /// <summary>Coefficients of the model.</summary>
    public int Columns => rows[0].Length;

    /// <summary>Coefficients that are not of sites.</summary>
    public int SharedColumns => Columns - sites.Length;

    /// <summary>Whether the passes determine it and leave scatter to be seen.</summary>
    public bool IsDetermined => rows.Count > Columns && LeastSquares.IsDetermined(rows);

    /// <summary>Σ of the squared residuals.</summary>
    public double SumOfSquares => Fit.SumOfSquares;

    /// <summary>Degrees of freedom.</summary>
    public int Freedom => Fit.Freedom;

    /// <summary>Standard deviation of one pass about the model: over several sites, that of passes of one scatter which would tell as much.</summary>
    public double Scatter => Fit.Deviation / Math.Sqrt(passes.Average(p => Math.Pow(scatter[p.Site], -2.0)));

    private LeastSquares Fit => fit ??= new LeastSquares(
        [.. rows.Select((row, i) => row.Select(x => x / scatter[passes[i].Site]).ToArray())],
        [.. passes.Select(p => Math.Log(p.Value) / scatter[p.Site])]);

    /// <summary>Standard deviation of one pass of a site about the model.</summary>
    public double ScatterAt(string site) => Fit.Deviation * scatter[site];

    /// <summary>How far a pass's logarithm lies above the model.</summary>
    public double Residual(int pass) =>
        Math.Log(passes[pass].Value) - Enumerable.Range(0, Columns).Sum(k => rows[pass][k] * Fit.Coefficients[k]);

    /// <summary>Whether a site is among its passes.</summary>
    public bool Holds(string site) => groupOf.ContainsKey(site);

    /// <summary>The change at a site, or at all where they share it.</summary>
    /// <param name="site">The site.</param>
    /// <param name="share">Share of cases in which the interval holds the truth.</param>
    public EffectInterval Effect(string site, double share)
    {
        var weights = new double[Columns];
        weights[isApart ? sites.Length + Array.IndexOf(sites, site) : sites.Length] = 1.0;
        return Interval(weights, share);
    }

    /// <summary>How much each site makes of the change that they share: what it would be were the passes of that site alone changed by 1.</summary>
    public IReadOnlyDictionary<string, double> Shares() => sites.ToDictionary(
        site => site,
        site => new LeastSquares(
            [.. rows.Select((row, i) => row.Select(x => x / scatter[passes[i].Site]).ToArray())],
            [.. passes.Select(p => p.IsAfter && p.Site == site ? 1.0 / scatter[site] : 0.0)]).Coefficients[sites.Length]);

    /// <summary>The mean level at a site and a speed in one state, with its interval.</summary>
    public (double Value, double Low, double High) Level(string site, double speed, bool isAfter, double share)
    {
        var row = Row(site, speed, isAfter);
        var half = LeastSquares.Student(Freedom, share) * Fit.StandardError(row);
        var log = Enumerable.Range(0, row.Length).Sum(k => row[k] * Fit.Coefficients[k]);
        return (Math.Exp(log), Math.Exp(log - half), Math.Exp(log + half));
    }

    /// <summary>
    /// How far a pass lies from the model of all the others, in standard errors with one degree of freedom less: its externally studentized residual
    /// [Draper and Smith, Applied Regression Analysis, ch. 8]. 0 where the others leave no scatter.
    /// </summary>
    public double Distance(int pass)
    {
        var own = scatter[passes[pass].Site];
        var residual = Residual(pass) / own;
        var left = 1.0 - Fit.Leverage([.. rows[pass].Select(x => x / own)]);
        var others = Freedom < 2 || left < 1e-9 ? 0.0 : (SumOfSquares - (residual * residual / left)) / (Freedom - 1);
        return others > 0.0 ? residual / Math.Sqrt(others * left) : 0.0;
    }

    private EffectInterval Interval(double[] weights, double share)
    {
        var log = Enumerable.Range(0, weights.Length).Sum(k => weights[k] * Fit.Coefficients[k]);
        var error = Fit.StandardError(weights);
        return new EffectInterval
        {
            Log = log,
            StandardError = error,
            Freedom = Freedom,
            HalfWidth = LeastSquares.Student(Freedom, share) * error,
            Probability = error > 0.0 ? 2.0 * StudentT.CDF(0.0, 1.0, Freedom, -Math.Abs(log) / error) : log == 0.0 ? 1.0 : 0.0,
        };
    }

    private double[] Row(string site, double speed, bool isAfter)
    {
        var place = Array.IndexOf(sites, site);
        List<double> row = [.. sites.Select((_, k) => k == place ? 1.0 : 0.0)];
        row.AddRange(isApart ? sites.Select((_, k) => k == place && isAfter ? 1.0 : 0.0) : [isAfter ? 1.0 : 0.0]);
        foreach (var group in groups)
        {
            var u = group.Name == groupOf[site] ? Math.Log(speed) - group.MeanLog : 0.0;
            row.AddRange(group.Powers switch { 0 => [], 1 => [u], _ => [u, u * u] });
        }

        return [.. row];
    }

    private static int Least(IEnumerable<ComparedPass> passes) => Math.Min(passes.Count(p => p.IsAfter), passes.Count(p => !p.IsAfter));

    // What is told of speeds: nothing where all are the same, a slope, a slope and a bend.
    private sealed record Speeds(string Name, double MeanLog, int Powers)
    {
        public static Speeds Of(IGrouping<string, ComparedPass> passes)
        {
            double[] logs = [.. passes.Select(p => Math.Log(p.Speed))];
            var (least, width) = (Least(passes), logs.Max() - logs.Min());
            var isBent = least >= ComparisonSettings.BentFrom || (least >= ComparisonSettings.BentFarFrom && width > ComparisonSettings.Far);
            var powers = width < 1e-6 ? 0 : isBent && logs.Select(l => Math.Round(l, 6)).Distinct().Count() > 2 ? 2 : 1;
            return new Speeds(passes.Key, logs.Average(), powers);
        }
    }
}
