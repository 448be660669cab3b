using System.Globalization;
using Heaveline.Answers;
using Heaveline.Measures;
using Heaveline.Quantities;
using Heaveline.Rules;

namespace Heaveline.Studies;

/// <summary>A map as tables: the grid with the best values and the closed forms beside, the load states, the damping optima.</summary>
public static class RuleTables
{
    // A page holds so many.
    private const int MostRows = 11;
    private const int MostColumns = 7;

    private const string BestHeading = "best";
    private const string Page = "theory/measures.md";

    private static readonly Measure<RuleLoad> Own =
        Load("own", "the car's own value", In.Plain, 3, l => l.Own, "Where the car stands on the axis of the rule; the row bears the axis' name.");

    private static readonly Measure<RuleLoad>[] Best =
    [
        Load("best-at", "best, within 3 %, at so many speeds", In.Plain, 0, l => l.Standing?.Best.Count,
            "Speeds at which no other value tried is better by more than 3 %."),
        Load("computed", "of so many computed", In.Plain, 0, l => l.Standing?.Computed, "Speeds at which values were compared."),
    ];

    private static readonly Measure<RuleLoad>[] Forms =
    [
        Load("late", "1 + 0.6 L f/V gives it at", In.KilometresPerHour, 0, l => l.Late, "Speed for which that closed form asks for the car's ratio."),
        Load("in-step", "in step after 0.7 cycles at", In.KilometresPerHour, 0, l => l.Ends?.SuitedSpeed,
            "Speed at which both ends of the car fall into step after 0.7 cycles."),
        Load("in-step-slowest", "after 0.8 cycles at", In.KilometresPerHour, 0, l => l.Ends?.SuitedRange?.Slowest,
            "Speed at which both ends of the car fall into step after 0.8 cycles."),
        Load("in-step-fastest", "after 0.6 cycles at", In.KilometresPerHour, 0, l => l.Ends?.SuitedRange?.Fastest,
            "Speed at which both ends of the car fall into step after 0.6 cycles."),
    ];

    private static readonly Measure<(BestValue? Best, double Own)>[] Damping =
    [
        Damped(
            "optimum",
            "at a mean damping ratio of",
            (best, _) => best?.Value,
            "Mean damping ratio at which the measure is least on the random road."),
        Damped("present", "as it is now", (_, own) => own, "The car's own mean damping ratio."),
        Damped("there-over-now", "the measure there over now", (best, _) => best?.Relative, "The measure at that damping over what it is now."),
    ];

    /// <summary>All that the tables hold of the car and its damping, for the glossary; rows of a map bear their speed.</summary>
    public static IReadOnlyList<Measure> Measures { get; } = [Own, .. Best, .. Suited(0), .. Forms, .. Damping];

    /// <summary>The measure over that at the reference; a row a speed, a column a value.</summary>
    /// <param name="map">The map.</param>
    /// <param name="rules">The closed forms by speed; null where there are none.</param>
    /// <param name="whole">The whole grid, or as much as a page holds.</param>
    public static FactTable Grid(RuleMap map, IReadOnlyList<RatioRule>? rules, bool whole)
    {
        int[] columns = Some(map.Axis.Values.Count, whole ? int.MaxValue : MostColumns);
        string[] closed = rules is null ? [] : ["1 + 0.6 L f/V", "in step, n = 0.8", "n = 0.7", "n = 0.6"];
        var unit = map.Axis.Symbol.Length > 0 ? ", " + map.Axis.Symbol : "";
        var values = columns.Select(j => map.Axis.Values[j].ToString("0.00##", CultureInfo.InvariantCulture));
        var table = new FactTable($"At {map.Axis.ShortName}{unit}", [.. values, BestHeading, .. closed])
        {
            HeadUnit = map.Axis.Symbol,
            InHeadUnit = BestHeading,
        };
        var best = map.Best;
        foreach (var i in Some(map.Speeds.Count, whole ? int.MaxValue : MostRows))
        {
            var speed = In.KilometresPerHour.Of(map.Speeds[i]).ToString("0.##", CultureInfo.InvariantCulture);
            table.Add(speed + "-km-h", speed + " km/h", "–", "F2",
            [
                .. columns.Select(j => (double?)map.Relative(i, j)),
                best[i] is { AtEdge: false } inside ? inside.Value : null,
                .. rules is null ? [] : new double?[] { rules[i].Late, rules[i].StepBand.Least, rules[i].Step, rules[i].StepBand.Most },
            ]);
        }

        return table;
    }

    /// <summary>
    /// The measure itself at the speeds at which the reference has none because it bottoms out; null where there is no such speed. A row a speed, a
    /// column a value.
    /// </summary>
    /// <param name="map">The map.</param>
    /// <param name="whole">All speeds and values, or as many as a page holds.</param>
    public static FactTable? Absolute(RuleMap map, bool whole)
    {
        int[] rows = [.. Enumerable.Range(0, map.Speeds.Count).Where(map.OnlyReferenceBottomsOut)];
        if (rows.Length == 0)
        {
            return null;
        }

        int[] columns = Some(map.Axis.Values.Count, whole ? int.MaxValue : MostColumns);
        var values = columns.Select(j => map.Axis.Values[j].ToString("0.00##", CultureInfo.InvariantCulture));
        var table = new FactTable($"Where {map.Axis.Plain.BottomsOut}, at", [.. values]);
        foreach (var k in Some(rows.Length, whole ? int.MaxValue : MostRows))
        {
            var speed = In.KilometresPerHour.Of(map.Speeds[rows[k]]).ToString("0.##", CultureInfo.InvariantCulture);
            table.Add(
                speed + "-km-h-itself", speed + " km/h", map.Measure.Unit.Symbol, $"F{map.Measure.Digits}",
                columns.Select(j => (double?)map.Measure.Unit.Of(map.Measured[rows[k]][j])));
        }

        return table;
    }

    /// <summary>Where the car stands under each load, and what speed that suits.</summary>
    public static FactTable Loads(RuleMap map, IReadOnlyList<RuleLoad> loads)
    {
        var own = Own with { Label = map.Axis.ShortName, Unit = map.Axis.Symbol.Length > 0 ? new("", map.Axis.Symbol, 1.0) : In.Plain };
        var table = new FactTable("This car", [.. loads.Select(l => l.Name)])
            .Add([own], loads)
            .Add(Best, loads);
        for (var k = 0; k < loads.Max(l => l.Standing?.Passings.Count ?? 0); k++)
        {
            table.Add(Suited(k), loads);
        }

        return table.Add(Forms, loads);
    }

    /// <summary>Which damping suits what.</summary>
    public static FactTable Optima(DampingOptima optima) =>
        new FactTable("Least on the random road", ["pitch", "heave", "front tyre", "rear tyre"]).Add(
            Damping, [.. new[] { optima.Pitch, optima.Heave, optima.FrontTyre, optima.RearTyre }.Select(best => (best, optima.Own))]);

    // Where the best lies at an edge of what was tried, the passing is known no better than to its speeds, written as the sentence writes them.
    private static Measure<RuleLoad>[] Suited(int k)
    {
        var (key, and) = (k == 0 ? "suited" : $"suited-{k + 1}", k == 0 ? "" : "and again ");
        BestPassing? Passing(RuleLoad load) => load.Standing?.Passings.ElementAtOrDefault(k);
        return
        [
            Load(key, k == 0 ? "the best value passes it near" : "and near", In.KilometresPerHour, 0, l => Passing(l)?.Near,
                "Speed at which the value that is best passes the car's own; further speeds are suited-2 and so on."),
            Load(key + "-above", and + "the best value passes it above", In.KilometresPerHour, 1, l => Passing(l) is { Near: null } p ? p.From : null,
                "Where it passes between two speeds, and at one of them the best lies at the edge of the values tried: the slower one.") with
            {
                Format = SpeedRanges.Format,
            },
            Load(key + "-below", "and below", In.KilometresPerHour, 1, l => Passing(l) is { Near: null } p ? p.To : null,
                "The faster one of these two speeds.") with
            {
                Format = SpeedRanges.Format,
            },
        ];
    }

    private static Measure<RuleLoad> Load(string key, string label, ShownUnit unit, int digits, Func<RuleLoad, double?> of, string says) =>
        new(key, label, unit, digits, l => of(l) ?? double.NaN, says) { Page = Page };

    private static Measure<(BestValue? Best, double Own)> Damped(string key, string label, Func<BestValue?, double, double?> of, string says) =>
        new(key, label, In.Plain, 2, one => of(one.Best, one.Own) ?? double.NaN, says) { Page = Page };

    private static int[] Some(int count, int most)
    {
        var step = most >= count ? 1 : (int)Math.Ceiling((count - 1) / (most - 1.0));
        return [.. Enumerable.Range(0, count).Where(i => i % step == 0)];
    }
}
