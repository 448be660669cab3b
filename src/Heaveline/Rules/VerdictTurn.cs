namespace Heaveline.Rules;

/// <summary>Where along the values of one speed a rule turns from better to worse, or from worse to better.</summary>
/// <param name="Last">The last value on the near side.</param>
/// <param name="First">The first value on the far side.</param>
/// <param name="IsBetterBefore">Whether the near side is the better one.</param>
public sealed record VerdictTurn(double Last, double First, bool IsBetterBefore)
{
    internal static VerdictTurn? Of(RuleMap map, int speed)
    {
        var sides = map.Recommended.Select(j => (Value: map.Axis.Values[j], Side: SideOf(map.Verdict(speed, j)))).Where(p => p.Side != 0).ToList();
        var turns = Enumerable.Range(1, Math.Max(0, sides.Count - 1)).Where(k => sides[k].Side != sides[k - 1].Side).ToList();
        return turns is [var turn] ? new VerdictTurn(sides[turn - 1].Value, sides[turn].Value, sides[turn - 1].Side > 0) : null;
    }

    private static int SideOf(RuleVerdict verdict) => verdict switch
    {
        RuleVerdict.Holds or RuleVerdict.OnlyThisPasses => 1,
        RuleVerdict.Fails or RuleVerdict.OnlyReferencePasses => -1,
        _ => 0,
    };
}
