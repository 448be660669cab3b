using Heaveline.Quantities;
using Heaveline.Answers;
using Heaveline.Passes;
using Heaveline.Rules;

namespace Heaveline.Studies;

/// <summary>What a rule is worth, in words: by ranges of speed, with what stands behind them.</summary>
internal static class RuleVerdictSentences
{
    private static readonly (SpeedVerdict Verdict, string Words)[] Said =
    [
        (SpeedVerdict.Holds, "true"), (SpeedVerdict.Depends, "true for some values and false for others"), (SpeedVerdict.Fails, "false"),
        (SpeedVerdict.NoDifference, "of no consequence"), (SpeedVerdict.NeitherPasses, "undecided, since both bottom out,"),
        (SpeedVerdict.NotComputed, "not computed"),
    ];

    /// <summary>The verdict, what is meant by it, and where it turns.</summary>
    public static IEnumerable<Sentence> Of(RuleMap map)
    {
        var rows = RuleAtSpeed.Of(map);
        yield return new Sentence(
            "verdict",
            $"“{map.Axis.ClaimBy(map.Measure)}” By this measure, for {Whom(map)} under this load over this road, that is {Verdict(map, rows)}.");
        if (map.Axis.HasStandIn)
        {
            yield return new Sentence(
                "stand-in",
                "The car itself has laws that this leaves out, its own link among them: the command link tries that one on the car as it is.");
        }

        var judged = rows.Where(r => r.Verdict is not (SpeedVerdict.NeitherPasses or SpeedVerdict.NotComputed)).ToList();
        // Where all values do not get across at a speed there is a best one and no verdict: two counts, two names.
        var all = judged.Count == map.Best.Count(b => b is not null) ? "computed" : "judged";
        yield return new Sentence(
            "speeds",
            FormattableString.Invariant($"True at {judged.Count(r => r.Verdict == SpeedVerdict.Holds)} of {judged.Count} speeds {all}")
            + (judged.Count < rows.Count ? FormattableString.Invariant($" ({rows.Count} tried)") : "")
            + $": of the values above {Above(map)} some are better by {Per} or more and none is worse. "
            + $"False is the other way round; of no consequence: all are within {Per}.");
        foreach (var sentence in Turns(map, rows).Concat(Bottoms(map, rows)))
        {
            yield return sentence;
        }
    }

    /// <summary>The verdict of a map over the same passes by the hit, to stand beside one on what follows.</summary>
    public static Sentence Hit(RuleMap hit) => new(
        "hit", $"The hit itself, by its peak pitch acceleration: there the rule is {Verdict(hit, RuleAtSpeed.Of(hit))}.");

    private static string Whom(RuleMap map) => map.Axis.HasStandIn ? "the linear car that stands in for this one" : "this car";

    private static string Per => FormattableString.Invariant($"{In.Percent.Of(RuleMap.Threshold):F0} %");

    private static string Above(RuleMap map)
    {
        var unit = map.Axis.Symbol.Length > 0 ? " " + map.Axis.Symbol : "";
        var last = FormattableString.Invariant($"{map.Axis.Values[^1]:0.###}{unit}");
        return map.Axis.Reference is null
            ? FormattableString.Invariant($"the car's own {map.Own:0.###}{unit}, up to {last},")
            : $"{map.Axis.Against}, up to {last},";
    }

    private static string Verdict(RuleMap map, IReadOnlyList<RuleAtSpeed> rows) => string.Join(
        "; ", Said.Where(s => rows.Any(r => r.Verdict == s.Verdict)).Select(s => $"{s.Words} {Where(map, rows.Where(r => r.Verdict == s.Verdict))}"));

    private static string Where(RuleMap map, IEnumerable<RuleAtSpeed> rows) => SpeedRanges.Of(map.Speeds, rows.Select(r => r.Speed));

    private static IEnumerable<Sentence> Turns(RuleMap map, IReadOnlyList<RuleAtSpeed> rows)
    {
        var depends = rows.Where(r => r.Verdict == SpeedVerdict.Depends).ToList();
        foreach (var kind in depends.GroupBy(r => r.Turn?.IsBetterBefore).OrderBy(k => k.Key is null).ThenByDescending(k => k.Key))
        {
            var (where, turns) = (Where(map, kind), kind.Select(r => r.Turn).OfType<VerdictTurn>().ToList());
            string Last() => Range(map, turns.Select(t => t.Last));
            string First() => Range(map, turns.Select(t => t.First));
            yield return new Sentence("turn", kind.Key switch
            {
                true => $"{Raised(where)} it is better up to {Last()}, worse from {First()} on.",
                false => $"{Raised(where)} it is worse up to {Last()}, better from {First()} on.",
                null => $"{Raised(where)} better and worse follow each other more than once along the values.",
            });
        }
    }

    private static string Range(RuleMap map, IEnumerable<double> values)
    {
        var unit = map.Axis.Symbol.Length > 0 ? " " + map.Axis.Symbol : "";
        var all = values.ToList();
        var (least, most) = (FormattableString.Invariant($"{all.Min():0.00##}"), FormattableString.Invariant($"{all.Max():0.00##}"));
        return least == most ? least + unit : $"{least}{unit} to {most}{unit} (by speed)";
    }

    private static IEnumerable<Sentence> Bottoms(RuleMap map, IReadOnlyList<RuleAtSpeed> rows)
    {
        var (plain, turned) = (map.Axis.Plain, map.Axis.Turned);
        var (mine, theirs, neither, none) = (
            rows.Where(r => r.Tally.OnlyThisPasses > 0).ToList(), rows.Where(r => r.Tally.OnlyReferencePasses > 0).ToList(),
            rows.Where(r => r.Tally.NeitherPasses > 0).ToList(), rows.Where(r => r.Tally.NotComputed > 0).ToList());
        if (mine.Count > 0)
        {
            yield return new Sentence(
                "only-this-passes",
                $"{Raised(Where(map, mine))} {plain.BottomsOut}; {turned.Passes}, "
                + $"at {mine.Sum(r => r.Tally.OnlyThisPasses)} of {mine.Count * map.Recommended.Count} points: the strongest evidence for the rule.");
        }

        if (theirs.Count > 0)
        {
            yield return new Sentence(
                "only-reference-passes",
                $"{Raised(Where(map, theirs))} {turned.BottomsOut}, at {theirs.Sum(r => r.Tally.OnlyReferencePasses)} of "
                + $"{theirs.Count * map.Recommended.Count} points; {plain.Passes}: evidence against the rule.");
        }

        if (neither.Count > 0)
        {
            yield return new Sentence(
                "neither-passes",
                $"At {neither.Sum(r => r.Tally.NeitherPasses)} points, {Where(map, neither)}, both bottom out: there neither is better.");
        }

        if (none.Count > 0)
        {
            yield return new Sentence(
                "not-computed",
                $"{none.Sum(r => r.Tally.NotComputed)} points could not be computed, {Where(map, none)}: {string.Join("; ", Reasons(map))}.");
        }
    }

    private static IEnumerable<string> Reasons(RuleMap map)
    {
        var points = (from i in Enumerable.Range(0, map.Speeds.Count)
                      from j in map.Recommended
                      where map.Verdict(i, j) == RuleVerdict.NotComputed
                      select (Value: j, Outcome: map.Outcomes[i][j], Reference: map.ReferenceOutcomes[i])).ToList();
        var refused = points.Select(p => map.Refusals[p.Value]).FirstOrDefault(r => r.Length > 0);
        return new[] { refused?.TrimEnd('.') }.OfType<string>().Concat(points.Where(p => map.Refusals[p.Value].Length == 0)
            .Select(p => p.Outcome is PassOutcome.Completed or null ? p.Reference : p.Outcome).Distinct().Select(BrokenOff.Of));
    }

    private static string Raised(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
