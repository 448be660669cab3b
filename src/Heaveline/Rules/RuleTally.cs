namespace Heaveline.Rules;

/// <summary>
/// At how many points of a map a rule is true, false or makes no difference. Only points on the side that the rule recommends count: values above the
/// reference (a rear faster than the front, a longer wheelbase). The counts hang on the grid: what the rule is worth is told by speed,
/// <see cref="RuleAtSpeed"/>.
/// </summary>
/// <param name="Better">Points better by 3 % or more.</param>
/// <param name="NoDifference">Points within 3 %.</param>
/// <param name="Worse">Points worse by 3 % or more.</param>
/// <param name="OnlyThisPasses">Points where the reference bottoms out and this car passes.</param>
/// <param name="OnlyReferencePasses">Points where this car bottoms out and the reference passes.</param>
/// <param name="NeitherPasses">Points where both bottom out.</param>
/// <param name="NotComputed">Points without a car or a pass within the model's range.</param>
public sealed record RuleTally(
    int Better, int NoDifference, int Worse, int OnlyThisPasses, int OnlyReferencePasses, int NeitherPasses, int NotComputed)
{
    /// <summary>Points that speak for the rule.</summary>
    public int Holds => Better + OnlyThisPasses;

    /// <summary>Points that speak against it.</summary>
    public int Fails => Worse + OnlyReferencePasses;

    /// <summary>The verdict of all these points together.</summary>
    public SpeedVerdict Together => (Holds, Fails, NoDifference, NeitherPasses) switch
    {
        ( > 0, > 0, _, _) => SpeedVerdict.Depends,
        ( > 0, 0, _, _) => SpeedVerdict.Holds,
        (0, > 0, _, _) => SpeedVerdict.Fails,
        (0, 0, > 0, _) => SpeedVerdict.NoDifference,
        (0, 0, 0, > 0) => SpeedVerdict.NeitherPasses,
        _ => SpeedVerdict.NotComputed,
    };

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
        var recommended = map.Recommended;
        var verdicts = speeds.SelectMany(i => recommended.Select(j => map.Verdict(i, j))).ToLookup(v => v);
        int Count(RuleVerdict verdict) => verdicts[verdict].Count();
        return new RuleTally(
            Count(RuleVerdict.Holds),
            Count(RuleVerdict.NoDifference),
            Count(RuleVerdict.Fails),
            Count(RuleVerdict.OnlyThisPasses),
            Count(RuleVerdict.OnlyReferencePasses),
            Count(RuleVerdict.NeitherPasses),
            Count(RuleVerdict.NotComputed));
    }
}
