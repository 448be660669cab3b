namespace Heaveline.Rules;

/// <summary>
/// In how many places of a map a rule is true, false or makes no difference. Only places on the side that the rule recommends count: values above the
/// reference (a rear faster than the front, a longer wheelbase).
/// </summary>
/// <param name="Holds">Places better by 3 % or more.</param>
/// <param name="NoDifference">Places within 3 %.</param>
/// <param name="Fails">Places worse by 3 % or more.</param>
/// <param name="NotComputed">Places without a car or a finished pass.</param>
public sealed record RuleTally(int Holds, int NoDifference, int Fails, int NotComputed)
{
    /// <summary>All places that were computed.</summary>
    public int Computed => Holds + NoDifference + Fails;

    /// <summary>The verdict of more than half of the computed places; null where none has so many.</summary>
    public RuleVerdict? Most =>
        2 * Holds > Computed
            ? RuleVerdict.Holds
            : 2 * Fails > Computed ? RuleVerdict.Fails : 2 * NoDifference > Computed ? RuleVerdict.NoDifference : null;

    /// <summary>Counts a whole map.</summary>
    public static RuleTally Of(RuleMap map)
    {
        ArgumentNullException.ThrowIfNull(map);
        return Of(map, [.. Enumerable.Range(0, map.Speeds.Count)]);
    }

    /// <summary>Counts some speeds of a map.</summary>
    /// <param name="map">The map.</param>
    /// <param name="speeds">Indices of the speeds.</param>
    public static RuleTally Of(RuleMap map, IReadOnlyList<int> speeds)
    {
        ArgumentNullException.ThrowIfNull(map);
        ArgumentNullException.ThrowIfNull(speeds);
        var reference = map.Axis.Reference ?? map.Own;
        // The reference itself, met again after rounding, is no change at all.
        int[] values = [.. Enumerable.Range(0, map.Axis.Values.Count).Where(j => map.Axis.Values[j] > reference + (1e-9 * Math.Abs(reference)))];
        var verdicts = speeds.SelectMany(i => values.Select(j => map.Verdict(i, j))).ToLookup(v => v);
        return new RuleTally(
            verdicts[RuleVerdict.Holds].Count(),
            verdicts[RuleVerdict.NoDifference].Count(),
            verdicts[RuleVerdict.Fails].Count(),
            verdicts[RuleVerdict.NotComputed].Count());
    }
}
