namespace Heaveline.Numerics;

/// <summary>
/// The limit on a reading that parts those of one kind from all others best: where the difference is greatest between the share of the former beyond
/// it and the share of the latter (Youden's index [Youden, Index for rating diagnostic tests, Cancer 3, 1950, 32–35; cited by its title]).
/// </summary>
/// <param name="Limit">The limit, between two readings.</param>
/// <param name="Found">Share of those of the kind that lie above it (–).</param>
/// <param name="Mistaken">Share of the others that lie above it, too (–).</param>
internal sealed record PartingLimit(double Limit, double Found, double Mistaken)
{
    // Fewer than one in twenty of either kind tell too little.
    private const int Fewest = 20;

    /// <summary>How well it parts them (–): 1 wholly, 0 not at all.</summary>
    public double Parts => Found - Mistaken;

    /// <summary>The limit; null where fewer than one in twenty are of the kind, or of the others, or none lies higher than the others.</summary>
    /// <param name="readings">A reading of each.</param>
    /// <param name="isOfKind">Whether each is of the kind.</param>
    public static PartingLimit? Of(IReadOnlyList<double> readings, IReadOnlyList<bool> isOfKind)
    {
        var with = isOfKind.Count(h => h);
        var without = isOfKind.Count - with;
        if (Math.Min(with, without) * Fewest < isOfKind.Count)
        {
            return null;
        }

        var order = Enumerable.Range(0, readings.Count).OrderByDescending(i => readings[i]).ToArray();
        var (found, mistaken, best) = (0, 0, (PartingLimit?)null);
        for (var i = 0; i + 1 < order.Length; i++)
        {
            (found, mistaken) = isOfKind[order[i]] ? (found + 1, mistaken) : (found, mistaken + 1);
            var (here, next) = (readings[order[i]], readings[order[i + 1]]);
            var limit = new PartingLimit(0.5 * (here + next), (double)found / with, (double)mistaken / without);
            if (here > next && limit.Parts > (best?.Parts ?? 0.0))
            {
                best = limit;
            }
        }

        return best;
    }
}
