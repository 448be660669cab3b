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
        new("reading", $"{Raised(map.Measure.Name)}, over that of {map.Axis.Against}; below 1 is better. Turned: {map.Axis.Name}."),
    ];

    /// <summary>What the rule is worth for this car and road.</summary>
    public static IEnumerable<Sentence> Rule(RuleMap map)
    {
        var tally = RuleTally.Of(map);
        var most = tally.Most switch
        {
            RuleVerdict.Holds => "true in most places",
            RuleVerdict.Fails => "false in most places",
            RuleVerdict.NoDifference => "of no consequence in most places",
            _ => "neither true nor false as a whole: it depends on speed and value",
        };
        yield return new Sentence("verdict", $"“{map.Axis.Claim}” By this measure, for this car and road, that is {most}.");
        yield return new Sentence(
            "places",
            FormattableString.Invariant($"Of {tally.Computed} places above {map.Axis.Against} it is true in {tally.Holds}, false in {tally.Fails} ")
            + FormattableString.Invariant($"and makes no difference (within {100.0 * RuleMap.Threshold:F0} %) in {tally.NoDifference}."));
        if (tally.NotComputed > 0)
        {
            var why = map.Refusals.FirstOrDefault(r => r.Length > 0) ?? "the pass left the model's range";
            yield return new Sentence("not-computed", $"{tally.NotComputed} places could not be computed: {why.TrimEnd('.')}.");
        }

        var best = map.Best;
        var edges = best.Count(b => b is { AtEdge: true });
        if (edges > 0)
        {
            yield return new Sentence(
                "edges",
                $"At {edges} of {map.Speeds.Count} speeds the best value lies at or beyond the edge of those tried; "
                + "there no best value is given (–).");
        }
    }

    /// <summary>Where the car stands, a line a load state; one line where the load changes nothing.</summary>
    public static IEnumerable<Sentence> Loads(RuleMap map, IReadOnlyList<RuleLoad> loads) =>
        loads.All(l => l.Ends is null && Math.Abs(l.Own - loads[0].Own) < 1e-9)
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

        var suits = load.Suited is { } speed
            ? FormattableString.Invariant($"suits {In.KilometresPerHour.Of(speed):F0} km/h: there it is the best of the map under this load")
            : FormattableString.Invariant(
                $"suits no speed from {In.KilometresPerHour.Of(map.Speeds[0]):F0} to {In.KilometresPerHour.Of(map.Speeds[^1]):F0} km/h{Side(load)}");
        return new Sentence(Id, $"{value} {suits}.{Closed(map, load)}");
    }

    private static string Side(RuleLoad load) => load.Best switch
    {
        ( > 0, 0) => ": more would be better at all of them",
        (0, > 0) => ": less would be better at all of them",
        _ => "",
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

        return load.Ends is { SuitedSpeed: { } closed, SuitedRange: { } range }
            ? FormattableString.Invariant($" The ends fall into step after 0.7 cycles at {In.KilometresPerHour.Of(closed):F0} km/h ")
                + FormattableString.Invariant(
                    $"(0.8 to 0.6 cycles: {In.KilometresPerHour.Of(range.Slowest):F0} to {In.KilometresPerHour.Of(range.Fastest):F0}).")
            : $" {load.Ends!.WhyNot}";
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
                    + FormattableString.Invariant($"{optima.Own:F2}, and {100.0 * ((1.0 / best.Relative) - 1.0):F0} % more of it."));
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

    private static string Raised(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
