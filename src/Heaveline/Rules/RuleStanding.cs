namespace Heaveline.Rules;

/// <summary>How the car's own value stands against the best of a map, speed by speed.</summary>
public sealed record RuleStanding
{
    /// <summary>Speeds at which no value tried is better than the car by 3 % or more, m/s.</summary>
    public required IReadOnlyList<double> Best { get; init; }

    /// <summary>Speeds at which the best value tried is larger and better by 3 % or more, m/s.</summary>
    public required IReadOnlyList<double> More { get; init; }

    /// <summary>Speeds at which the best value tried is smaller and better by 3 % or more, m/s.</summary>
    public required IReadOnlyList<double> Less { get; init; }

    /// <summary>Speeds at which the best value is the smallest one tried, m/s: what lies below it is not known.</summary>
    public required IReadOnlyList<double> NotKnownBelow { get; init; }

    /// <summary>Speeds at which the best value is the largest one tried, m/s: what lies above it is not known.</summary>
    public required IReadOnlyList<double> NotKnownAbove { get; init; }

    /// <summary>The smallest and the largest value tried.</summary>
    public required (double Least, double Most) Tried { get; init; }

    /// <summary>Speeds at which nothing could be computed, m/s.</summary>
    public required IReadOnlyList<double> NotComputed { get; init; }

    /// <summary>Where over speed the best value passes or touches the car's own, rising.</summary>
    public required IReadOnlyList<BestPassing> Passings { get; init; }

    /// <summary>How many speeds were computed.</summary>
    public int Computed => Best.Count + More.Count + Less.Count;

    /// <summary>The car of a map.</summary>
    public static RuleStanding Of(RuleMap map)
    {
        ArgumentNullException.ThrowIfNull(map);
        var own = map.Own;
        var sides = map.Speeds.Select((_, i) => Side(map, i)).ToList();
        IReadOnlyList<double> At(int? side) => [.. map.Speeds.Where((_, i) => sides[i] == side)];
        return new RuleStanding
        {
            Best = At(0),
            More = At(1),
            Less = At(-1),
            Tried = (map.Axis.Values[0], map.Axis.Values[^1]),
            NotKnownBelow = map.BestAtSmallest,
            NotKnownAbove = map.BestAtLargest,
            NotComputed = At(null),
            Passings = [.. BestPassing.Of(map.Speeds, map.Best, own)],
        };
    }

    // Against the values tried, not against a curve through them: each of these words can be read off the table. A car that runs past its travel is
    // worse than any that does not.
    private static int? Side(RuleMap map, int speed)
    {
        var (own, measured) = (map.OwnMeasured[speed], map.Measured[speed]);
        var tried = Enumerable.Range(0, measured.Count).Where(j => double.IsFinite(measured[j])).ToList();
        if (tried.Count == 0)
        {
            return double.IsFinite(own) ? 0 : null;
        }

        var least = tried.MinBy(j => measured[j]);
        return own * (1.0 - RuleMap.Threshold) < measured[least] ? 0 : Math.Sign(map.Axis.Values[least] - map.Own);
    }
}
