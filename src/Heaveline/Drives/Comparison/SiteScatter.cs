namespace Heaveline.Drives.Comparison;

/// <summary>How much the passes of each site scatter, beside those of the others.</summary>
/// <remarks>
/// The road about a bump adds as much to the number of a high one as of a low one, so that the low one's logarithm scatters more: variance
/// 1 + ρ·(typical level/level)². The one number ρ is that of greatest likelihood among powers of ten and their halves. A variance for each site by
/// its own few residuals was tried on planted drives and raised half as many false alarms again; this one adds few.
/// </remarks>
internal static class SiteScatter
{
    private static readonly double[] Shares = [0.0, .. Enumerable.Range(-4, 13).Select(k => Math.Pow(10.0, 0.5 * k))];

    /// <summary>Standard deviation of each site's passes over that of the typical site; 1 with a single site or where nothing scatters.</summary>
    /// <param name="passes">The passes.</param>
    public static IReadOnlyDictionary<string, double> Of(IReadOnlyList<ComparedPass> passes)
    {
        var levels = passes.GroupBy(p => p.Site).ToDictionary(g => g.Key, g => Math.Exp(g.Average(p => Math.Log(p.Value))));
        var fit = new ComparisonFit(passes, isApart: true);
        fit = fit.IsDetermined ? fit : new ComparisonFit(passes, isApart: false);
        if (levels.Count < 2 || !fit.IsDetermined || !(fit.Scatter > 0.0))
        {
            return levels.ToDictionary(l => l.Key, _ => 1.0);
        }

        var typical = Math.Exp(levels.Values.Average(Math.Log));
        var best = Shares.MinBy(share => Surprise(passes, fit, Variances(levels, typical, share)));
        return Variances(levels, typical, best).ToDictionary(v => v.Key, v => Math.Sqrt(v.Value));
    }

    private static Dictionary<string, double> Variances(Dictionary<string, double> levels, double typical, double share) =>
        levels.ToDictionary(l => l.Key, l => (1.0 + (share * typical * typical / (l.Value * l.Value))) / (1.0 + share));

    // Twice the negative logarithm of the likelihood, the common variance at its best.
    private static double Surprise(IReadOnlyList<ComparedPass> passes, ComparisonFit fit, Dictionary<string, double> variances)
    {
        var (squares, logs) = (0.0, 0.0);
        for (var i = 0; i < passes.Count; i++)
        {
            var variance = variances[passes[i].Site];
            squares += Math.Pow(fit.Residual(i), 2.0) / variance;
            logs += Math.Log(variance);
        }

        return (passes.Count * Math.Log(squares)) + logs;
    }
}
