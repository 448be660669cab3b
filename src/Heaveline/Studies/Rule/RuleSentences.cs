using Heaveline.Answers;
using Heaveline.Measures;
using Heaveline.Quantities;
using Heaveline.Rules;

namespace Heaveline.Studies;

/// <summary>What a map of a rule says, in words.</summary>
public static class RuleSentences
{
    /// <summary>What was mapped and how to read it.</summary>
    public static IEnumerable<Sentence> Head(RuleMap map) =>
    [
        new("map", $"{map.Model.Car.Name}, {map.Model.Load.Name}, over {map.Road.CaptionFor(map.Model.Rolls)}."),
        new("reading", $"{FirstLetter.Raised(map.Measure.Name)}, over that of {map.Axis.Against}; below 1 is better. Turned: {map.Axis.Name}."
            + (Enumerable.Range(0, map.Speeds.Count).Any(map.OnlyReferenceBottomsOut)
                ? $" Where {map.Axis.Plain.BottomsOut}, the measure itself stands in a table of its own." : "")
            + (Dashes(map) is { } dashes ? $" {dashes}" : "")),
    ];

    /// <summary>What a point without a number means; null where every point has one.</summary>
    /// <param name="map">The map.</param>
    public static string? Dashes(RuleMap map)
    {
        ArgumentNullException.ThrowIfNull(map);
        RuleVerdict[] blank =
        [
            .. from i in Enumerable.Range(0, map.Speeds.Count)
               from j in Enumerable.Range(0, map.Axis.Values.Count)
               where !double.IsFinite(map.Relative(i, j))
               select map.Verdict(i, j),
        ];
        string[] reasons =
        [
            .. blank.Any(v => v != RuleVerdict.NotComputed) ? new[] { "a car bottoms out" } : [],
            .. blank.Contains(RuleVerdict.NotComputed) ? new[] { "nothing could be computed" } : [],
        ];
        return reasons.Length == 0 ? null : $"No number (–) stands where {string.Join(" or ", reasons)}.";
    }

    /// <summary>What the rule is worth for this car and road.</summary>
    /// <param name="map">The map.</param>
    /// <param name="hit">The same passes by the hit; null where the map itself is of the hit.</param>
    public static IEnumerable<Sentence> Rule(RuleMap map, RuleMap? hit)
    {
        foreach (var sentence in RuleVerdictSentences.Of(map))
        {
            yield return sentence;
        }

        if (hit is not null)
        {
            yield return RuleVerdictSentences.Hit(hit);
        }

        var best = map.Best;
        var edges = best.Count(b => b is { AtEdge: true });
        if (edges > 0)
        {
            yield return new Sentence(
                "edges",
                $"At {edges} of {best.Count(b => b is not null)} speeds computed the best value lies at or beyond the edge of those computed; "
                + $"there no best value is given (–){NotKnown(map)}.");
        }
    }

    /// <summary>Where the car stands, a line a load state; one line where the load changes nothing.</summary>
    public static IEnumerable<Sentence> Loads(RuleMap map, IReadOnlyList<RuleLoad> loads) =>
        map.Axis.HasStandIn ? [] : loads.All(l => l.Ends is null && Math.Abs(l.Own - loads[0].Own) < 1e-9)
            ? [Load(map, loads[0] with { Name = "every load" })]
            : loads.Select(l => Load(map, l));

    private static Sentence Load(RuleMap map, RuleLoad load)
    {
        const string Id = "load";
        var unit = map.Axis.Symbol.Length > 0 ? " " + map.Axis.Symbol : "";
        var value = FormattableString.Invariant($"{load.Name}: {map.Axis.ShortName} {load.Own:F2}{unit}");
        if (load.Ends is null)
        {
            return new Sentence(Id, value + ".");
        }

        return new Sentence(Id, $"{value}{(load.Standing is { } standing ? Standing(map, load, standing) : "")}.{Closed(map, load)}");
    }

    // Every speed that was computed is in one of three lists, so that nothing is said of a speed without a value.
    private static string Standing(RuleMap map, RuleLoad load, RuleStanding standing)
    {
        IReadOnlyList<double> all = [.. standing.Best.Concat(standing.More).Concat(standing.Less).Concat(standing.NotComputed).Order()];
        var parts = new List<string>();
        if (standing.More.Count > 0)
        {
            parts.Add($"more would be better {SpeedRanges.Of(all, standing.More)}");
        }

        if (standing.Less.Count > 0)
        {
            parts.Add($"less would be better {SpeedRanges.Of(all, standing.Less)}");
        }

        foreach (var (speeds, side, end) in new[]
        {
            (standing.NotKnownBelow, "below", standing.Tried.Least), (standing.NotKnownAbove, "above", standing.Tried.Most),
        })
        {
            if (speeds.Count > 0)
            {
                parts.Add(FormattableString.Invariant($"not known {side} {end:0.00##} {SpeedRanges.Of(all, speeds)}"));
            }
        }

        if (standing.NotComputed.Count > 0)
        {
            parts.Add($"not computed {SpeedRanges.Of(all, standing.NotComputed)}");
        }

        var beyond = load.Own < standing.Tried.Least || load.Own > standing.Tried.Most ? " (outside the values tried)" : "";
        var passes = standing.Passings.Count > 0 ? $"; the best value passes it {SpeedRanges.And([.. standing.Passings.Select(Passing)])}" : "";
        // Another load is computed at fewer speeds than the map: two counts, two names.
        var computed = standing.Computed == map.Best.Count(b => b is not null) ? "speeds computed" : "speeds computed under this load";
        var best = standing.Best.Count == 0
            ? FormattableString.Invariant($"is best at none of {standing.Computed} {computed}")
            : FormattableString.Invariant($"is best or within 3 % of it at {standing.Best.Count} of {standing.Computed} {computed}, ")
                + SpeedRanges.Of(all, standing.Best);
        return $"{beyond} {string.Join("; ", parts.Prepend(best))}{passes}";
    }

    // Nothing is said beyond the ends of what was tried.
    private static string NotKnown(RuleMap map)
    {
        var unit = map.Axis.Symbol.Length > 0 ? " " + map.Axis.Symbol : "";
        string[] sides =
        [
            .. map.BestAtSmallest.Count > 0 ? new[] { FormattableString.Invariant($"below {map.Axis.Values[0]:0.00##}{unit}") } : [],
            .. map.BestAtLargest.Count > 0 ? new[] { FormattableString.Invariant($"above {map.Axis.Values[^1]:0.00##}{unit}") } : [],
        ];
        return sides.Length == 0 ? "" : $"; what lies {string.Join(" or ", sides)} is not known";
    }

    private static string Passing(BestPassing passing) => (passing.From == passing.To, passing.Near) switch
    {
        (true, _) => $"at {SpeedRanges.Number(passing.From)} km/h",
        (_, { } near) => FormattableString.Invariant(
            $"between {SpeedRanges.Number(passing.From)} and {SpeedRanges.Number(passing.To)} km/h, near {In.KilometresPerHour.Of(near):F0} km/h"),
        _ => $"between {SpeedRanges.Number(passing.From)} and {SpeedRanges.Number(passing.To)} km/h",
    };

    // Each closed form is about one measure; none is about the hit.
    private static string Closed(RuleMap map, RuleLoad load)
    {
        if (!map.JudgesSettling)
        {
            return "";
        }

        if (map.Measure == SettlingCatalogue.LatePitch)
        {
            return load.Late is { } late ? FormattableString.Invariant($" 1 + 0.6 L f/V gives it at {In.KilometresPerHour.Of(late):F0} km/h.") : "";
        }

        if (map.Measure != SettlingCatalogue.RmsPitch)
        {
            return "";
        }

        // Near ratio 1 the closed form runs away; past what is driven it says nothing.
        return load.Ends switch
        {
            { SuitedSpeed: { } closed, SuitedRange: { } range } when In.KilometresPerHour.Of(closed) is >= 20.0 and <= 150.0 =>
                FormattableString.Invariant($" A linear car's ends fall into step after 0.7 cycles at {In.KilometresPerHour.Of(closed):F0} km/h ")
                + FormattableString.Invariant(
                    $"(0.8 to 0.6 cycles: {In.KilometresPerHour.Of(range.Slowest):F0} to {In.KilometresPerHour.Of(range.Fastest):F0} km/h)."),
            { SuitedSpeed: not null } => " A linear car's ends fall into step after 0.7 cycles at no speed from 20 to 150 km/h.",
            _ => $" {load.Ends!.WhyNot}",
        };
    }

    /// <summary>What the closed forms are of.</summary>
    public static Sentence ClosedForms(RuleMap map) => new(
        "closed-forms",
        "The closed forms are of linear cars with a dynamic index near 1 "
        + FormattableString.Invariant($"(here {RuleAxis.DynamicIndex([0.5, 1.0]).Own(map.Model):F2}), ")
        + "read off our own runs, no published source: 1 + 0.6 L f/V for what is left later than 0.8 s, in step after n cycles for the first second. "
        + "Stops, friction and damper tables are in the map, not in them.");

    /// <summary>Which part of the pass was judged.</summary>
    public static Sentence Window(RuleMap map) => Window(map, "");

    /// <summary>The same with the option of the command that judges the other part.</summary>
    public static Sentence WindowAtCommand(RuleMap map)
    {
        ArgumentNullException.ThrowIfNull(map);
        return Window(map, map.JudgesHit ? " (--measure settling)" : " (--measure hit)");
    }

    /// <summary>Which damping suits what on a rough road.</summary>
    /// <param name="damping">The optima.</param>
    public static IEnumerable<Sentence> Optima(RoughDamping damping)
    {
        ArgumentNullException.ThrowIfNull(damping);
        var optima = damping.Optima;
        yield return new Sentence("optima", $"On {damping.Road}: no damping is best for all.");
        foreach (var (id, name, best) in new[]
        {
            ("optimum-pitch", "pitch acceleration", optima.Pitch), ("optimum-heave", "heave acceleration", optima.Heave),
            ("optimum-front-tyre", "front tyre load", optima.FrontTyre), ("optimum-rear-tyre", "rear tyre load", optima.RearTyre),
        })
        {
            if (best is not null)
            {
                var side = optima.Own > best.Value ? "more" : "less";
                var edge = best.AtEdge ? " (the edge of what was tried)" : "";
                yield return new Sentence(
                    id,
                    $"  {name} varies least near {Numeral.Of(best.Value, "F2")}{edge}; this car has {side}, "
                    + FormattableString.Invariant($"{optima.Own:F2}, and {In.Percent.Of((1.0 / best.Relative) - 1.0):F0} % more of it."));
            }
        }
    }

    private static Sentence Window(RuleMap map, string option)
    {
        ArgumentNullException.ThrowIfNull(map);
        return new Sentence(
            "window",
            (map.JudgesHit, map.JudgesSettling) switch
            {
                (true, _) => $"This judges the hit alone: what follows is not in it{option}.",
                (_, true) => $"This judges the settling alone: the hit, until the rear wheels have left, is not in it{option}.",
                _ => "This judges the whole pass, the hit and what follows.",
            });
    }
}
