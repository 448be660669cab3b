namespace Heaveline.Drives.Comparison;

/// <summary>Which passes of two drives were driven alike.</summary>
internal static class SpeedMatching
{
    /// <summary>
    /// How the speeds of each site that both drives crossed meet: by its own passes where it has enough, else by those of all such sites of its kind,
    /// since sites of one kind share how their number grows with speed.
    /// </summary>
    /// <param name="passes">Passes over sites that both drives crossed.</param>
    public static IReadOnlyDictionary<string, SpeedMatch> Of(IReadOnlyList<ComparedPass> passes)
    {
        var kinds = passes.GroupBy(p => p.Kind).ToDictionary(g => g.Key, g => Of([.. g.Where(p => p.IsAfter)], [.. g.Where(p => !p.IsAfter)]));
        return passes.GroupBy(p => p.Site).ToDictionary(
            site => site.Key,
            site =>
            {
                ComparedPass[] before = [.. site.Where(p => !p.IsAfter)], after = [.. site.Where(p => p.IsAfter)];
                return Math.Min(before.Length, after.Length) >= ComparisonSettings.LeastPasses ? Of(after, before) : kinds[site.First().Kind];
            });
    }

    private static SpeedMatch Of(ComparedPass[] after, ComparedPass[] before)
    {
        var (b, a) = (Range(before), Range(after));
        var margin = Margin(before, after);
        var from = Math.Max(b.Slowest, a.Slowest) * (1.0 - margin);
        var to = Math.Min(b.Fastest, a.Fastest) * (1.0 + margin);
        double[] inBefore = [.. before.Select(p => p.Speed).Where(Counts)], inAfter = [.. after.Select(p => p.Speed).Where(Counts)];
        return new SpeedMatch
        {
            Before = b,
            After = a,
            From = from,
            To = to,
            IsAlike = to > from && inBefore.Length > 0 && inAfter.Length > 0 && Math.Abs(inAfter.Average() - inBefore.Average()) <= to - from,
        };

        bool Counts(double speed) => speed >= from && speed <= to;
    }

    // By chance the slowest of few passes is not so slow in one drive as in the other: what lies two standard deviations out is not another speed.
    private static double Margin(ComparedPass[] before, ComparedPass[] after)
    {
        var freedom = before.Length + after.Length - 2;
        double Squares(ComparedPass[] passes)
        {
            var mean = passes.Average(p => Math.Log(p.Speed));
            return passes.Sum(p => Math.Pow(Math.Log(p.Speed) - mean, 2.0));
        }

        var deviation = freedom > 0 ? Math.Sqrt((Squares(before) + Squares(after)) / freedom) : 0.0;
        return Math.Clamp(2.0 * deviation, ComparisonSettings.LeastMargin, ComparisonSettings.MostMargin);
    }

    private static (double Slowest, double Fastest) Range(ComparedPass[] passes) => (passes.Min(p => p.Speed), passes.Max(p => p.Speed));
}
