namespace Heaveline.Studies;

/// <summary>
/// A reading that a workshop takes in a minute, and where it parts cars upon which the years have brought something from those upon which they have
/// not: the limit with the greatest difference between the share of the former beyond it and the share of the latter.
/// </summary>
public sealed record YearsReading
{
    /// <summary>What is read.</summary>
    public required YearsReadingKind Kind { get; init; }

    /// <summary>The limit: m of sinking, or swings.</summary>
    public required double Limit { get; init; }

    /// <summary>Share of the cars with the event whose reading is beyond the limit (–).</summary>
    public required double Found { get; init; }

    /// <summary>Share of the cars without it whose reading is beyond the limit, too (–).</summary>
    public required double Mistaken { get; init; }

    /// <summary>How well it parts them (–): 1 wholly, 0 not at all.</summary>
    public double Parts => Found - Mistaken;

    /// <summary>The limit that parts best; null where there are too few cars of either kind to tell, fewer than one in twenty.</summary>
    /// <param name="kind">What is read.</param>
    /// <param name="readings">The reading of each car in each year.</param>
    /// <param name="happened">Whether the event has come upon it by then.</param>
    internal static YearsReading? Of(YearsReadingKind kind, IReadOnlyList<double> readings, IReadOnlyList<bool> happened)
    {
        var with = happened.Count(h => h);
        var without = happened.Count - with;
        if (Math.Min(with, without) * 20 < happened.Count)
        {
            return null;
        }

        var order = Enumerable.Range(0, readings.Count).OrderByDescending(i => readings[i]).ToArray();
        var (found, mistaken, best) = (0, 0, (YearsReading?)null);
        for (var i = 0; i + 1 < order.Length; i++)
        {
            (found, mistaken) = happened[order[i]] ? (found + 1, mistaken) : (found, mistaken + 1);
            var (here, next) = (readings[order[i]], readings[order[i + 1]]);
            var parts = ((double)found / with) - ((double)mistaken / without);
            if (here > next && parts > (best?.Parts ?? 0.0))
            {
                best = new YearsReading
                {
                    Kind = kind,
                    Limit = 0.5 * (here + next),
                    Found = (double)found / with,
                    Mistaken = (double)mistaken / without,
                };
            }
        }

        return best;
    }
}
