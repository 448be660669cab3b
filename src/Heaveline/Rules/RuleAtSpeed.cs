namespace Heaveline.Rules;

/// <summary>
/// What a rule is worth at one speed of a map, over all values on the side that it recommends. It hangs on the least and the greatest of the measure
/// there, and so hardly on how many values were tried.
/// </summary>
/// <param name="Speed">Speed, m/s.</param>
/// <param name="Tally">Its points.</param>
/// <param name="Turn">Where the verdict turns once along the values; null where it does not turn, or more than once.</param>
public sealed record RuleAtSpeed(double Speed, RuleTally Tally, VerdictTurn? Turn)
{
    /// <summary>What the rule is worth here.</summary>
    public SpeedVerdict Verdict => Tally.Together;

    /// <summary>Every speed of a map.</summary>
    public static IReadOnlyList<RuleAtSpeed> Of(RuleMap map)
    {
        ArgumentNullException.ThrowIfNull(map);
        return [.. map.Speeds.Select((speed, i) => new RuleAtSpeed(speed, RuleTally.Of(map, [i]), VerdictTurn.Of(map, i)))];
    }
}
