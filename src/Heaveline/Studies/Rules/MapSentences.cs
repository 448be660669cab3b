using Heaveline.Measures;
using Heaveline.Quantities;
using Heaveline.Rules;

namespace Heaveline.Studies;

/// <summary>What a map says, in words.</summary>
public static class MapSentences
{
    /// <summary>What was mapped and how to read it.</summary>
    public static string Head(RuleMap map) => $"{map.Model.Car.Name}, {map.Model.Load.Name}, over {map.Road.Caption}.\n"
        + $"{Raised(map.Measure.Name)}, over that of {map.Axis.Against}; below 1 is better. Turned: {map.Axis.Name}.";

    /// <summary>What the rule is worth for this car and road.</summary>
    public static IEnumerable<string> Rule(RuleMap map)
    {
        var tally = RuleTally.Of(map);
        var most = tally.Most switch
        {
            RuleVerdict.Holds => "true in most places",
            RuleVerdict.Fails => "false in most places",
            RuleVerdict.NoDifference => "of no consequence in most places",
            _ => "neither true nor false as a whole: it depends on speed and value",
        };
        yield return $"“{map.Axis.Claim}” By this measure, for this car and road, that is {most}.";
        yield return FormattableString.Invariant(
            $"Of {tally.Computed} places above {map.Axis.Against} it is true in {tally.Holds}, false in {tally.Fails} and makes no difference (within {100.0 * RuleMap.Threshold:F0} %) in {tally.NoDifference}.");
        if (tally.NotComputed > 0)
        {
            var why = map.Refusals.FirstOrDefault(r => r.Length > 0) ?? "the pass left the model's range";
            yield return $"{tally.NotComputed} places could not be computed: {why.TrimEnd('.')}.";
        }

        var best = map.Best;
        var edges = best.Count(b => b is { AtEdge: true });
        if (edges > 0)
        {
            yield return $"At {edges} of {map.Speeds.Count} speeds the best value lies at or beyond the edge of those tried; there no best value is given (–).";
        }
    }

    /// <summary>Where the car stands, a line a load state; one line where the load changes nothing.</summary>
    public static IEnumerable<string> Loads(RuleMap map, IReadOnlyList<MapLoad> loads) =>
        loads.All(l => l.Ends is null && Math.Abs(l.Own - loads[0].Own) < 1e-9) ? Load(map, loads[0] with { Name = "every load" }) : loads.SelectMany(l => Load(map, l));

    private static IEnumerable<string> Load(RuleMap map, MapLoad load)
    {
        var value = FormattableString.Invariant($"{load.Name}: {map.Axis.ShortName} {load.Own:F2}{(map.Axis.Symbol.Length > 0 ? " " + map.Axis.Symbol : "")}");
        if (load.Ends is null)
        {
            yield return value + ".";
            yield break;
        }

        var suits = load.Suited is { } speed
            ? FormattableString.Invariant($"suits {In.KilometresPerHour.Of(speed):F0} km/h: there it is the best of the map under this load")
            : FormattableString.Invariant($"suits no speed from {In.KilometresPerHour.Of(map.Speeds[0]):F0} to {In.KilometresPerHour.Of(map.Speeds[^1]):F0} km/h{Side(load)}");
        yield return $"{value} {suits}.{Closed(map, load)}";
    }

    private static string Side(MapLoad load) => load.Best switch
    {
        ( > 0, 0) => ": more would be better at all of them",
        (0, > 0) => ": less would be better at all of them",
        _ => "",
    };

    // Each closed form is about one measure; none is about the hit.
    private static string Closed(RuleMap map, MapLoad load)
    {
        if (!map.JudgesSettling)
        {
            return "";
        }

        if (map.Measure == SettlingCatalogue.LatePitch)
        {
            return load.Late is { } late ? FormattableString.Invariant($" 1 + 0.6 L f/V gives it at {In.KilometresPerHour.Of(late):F0} km/h.") : "";
        }

        return load.Ends is { SuitedSpeed: { } closed, SuitedRange: { } range }
            ? FormattableString.Invariant($" The ends fall into step after 0.7 cycles at {In.KilometresPerHour.Of(closed):F0} km/h (0.8 to 0.6 cycles: {In.KilometresPerHour.Of(range.Slowest):F0} to {In.KilometresPerHour.Of(range.Fastest):F0}).")
            : $" {load.Ends!.WhyNot}";
    }

    /// <summary>What the closed forms are of.</summary>
    public static string ClosedForms(RuleMap map) => FormattableString.Invariant(
        $"The closed forms are of linear cars with a dynamic index near 1 (here {RuleAxis.DynamicIndex([0.5, 1.0]).Own(map.Model):F2}), read off our own runs, no published source: 1 + 0.6 L f/V for what is left later than 0.8 s, in step after n cycles for the first second. Stops, friction and damper tables are in the map, not in them.");

    /// <summary>Which part of the pass was judged.</summary>
    /// <param name="map">The map.</param>
    /// <param name="withOption">Whether to name the option of the command that judges the other part.</param>
    public static string Window(RuleMap map, bool withOption = true)
    {
        ArgumentNullException.ThrowIfNull(map);
        return (map.JudgesHit, map.JudgesSettling) switch
        {
            (true, _) => $"This judges the hit alone: what follows is not in it{(withOption ? " (--measure settling)" : "")}.",
            (_, true) => $"This judges the settling alone: the hit, until the rear wheels have left, is not in it{(withOption ? " (--measure hit)" : "")}.",
            _ => "This judges the whole pass, the hit and what follows.",
        };
    }

    /// <summary>Which damping suits what on a rough road.</summary>
    /// <param name="optima">The optima.</param>
    /// <param name="road">The road and the speed in words.</param>
    public static IEnumerable<string> Optima(DampingOptima optima, string road)
    {
        yield return $"On {road}: no damping is best for all.";
        foreach (var (name, best) in new[] { ("pitch acceleration", optima.Pitch), ("heave acceleration", optima.Heave), ("front tyre load", optima.FrontTyre), ("rear tyre load", optima.RearTyre) })
        {
            if (best is not null)
            {
                var side = optima.Own > best.Value ? "more" : "less";
                yield return FormattableString.Invariant($"  {name} varies least near {Numeral.Of(best.Value, "F2")}{(best.AtEdge ? " (the edge of what was tried)" : "")}; this car has {side}, {optima.Own:F2}, and {100.0 * ((1.0 / best.Relative) - 1.0):F0} % more of it.");
            }
        }
    }

    private static string Raised(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
