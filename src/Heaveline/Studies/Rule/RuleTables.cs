using System.Globalization;
using Heaveline.Answers;
using Heaveline.Quantities;
using Heaveline.Rules;

namespace Heaveline.Studies;

/// <summary>A map as tables: the grid with the best values and the closed forms beside, the load states, the damping optima.</summary>
public static class RuleTables
{
    // A page holds so many.
    private const int MostRows = 11;
    private const int MostColumns = 7;

    private const string Best = "best";

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
        var table = new FactTable($"At {map.Axis.ShortName}{unit}", [.. values, Best, .. closed]) { HeadUnit = map.Axis.Symbol, InHeadUnit = Best };
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
        IEnumerable<double?> All(Func<RuleLoad, double?> of) => loads.Select(of);
        var table = new FactTable("This car", [.. loads.Select(l => l.Name)])
            .Add("own", map.Axis.ShortName, map.Axis.Symbol.Length > 0 ? map.Axis.Symbol : "–", "F3", All(l => l.Own))
            .Add("best-at", "best, within 3 %, at so many speeds", "–", "F0", All(l => l.Standing?.Best.Count))
            .Add("computed", "of so many computed", "–", "F0", All(l => l.Standing?.Computed));
        for (var k = 0; k < loads.Max(l => l.Standing?.Passings.Count ?? 0); k++)
        {
            var n = k;
            // Where the best lies at an edge of what was tried, the passing is known no better than to its speeds: the slower of the two.
            table.Add(
                k == 0 ? "suited" : $"suited-{k + 1}", k == 0 ? "the best value passes it near" : "and near", "km/h", "F0",
                All(l => In.KilometresPerHour.Of(l.Standing?.Passings.ElementAtOrDefault(n) is { } p ? p.Near ?? p.From : null)));
        }

        return table
            .Add("late", "1 + 0.6 L f/V gives it at", "km/h", "F0", All(l => In.KilometresPerHour.Of(l.Late)))
            .Add("in-step", "in step after 0.7 cycles at", "km/h", "F0", All(l => In.KilometresPerHour.Of(l.Ends?.SuitedSpeed)))
            .Add("in-step-slowest", "after 0.8 cycles at", "km/h", "F0", All(l => In.KilometresPerHour.Of(l.Ends?.SuitedRange?.Slowest)))
            .Add("in-step-fastest", "after 0.6 cycles at", "km/h", "F0", All(l => In.KilometresPerHour.Of(l.Ends?.SuitedRange?.Fastest)));
    }

    /// <summary>Which damping suits what.</summary>
    public static FactTable Optima(DampingOptima optima)
    {
        BestValue?[] all = [optima.Pitch, optima.Heave, optima.FrontTyre, optima.RearTyre];
        return new FactTable("Least on the random road", ["pitch", "heave", "front tyre", "rear tyre"])
            .Add("optimum", "at a mean damping ratio of", "–", "F2", all.Select(b => b?.Value))
            .Add("present", "as it is now", "–", "F2", all.Select(_ => (double?)optima.Own))
            .Add("there-over-now", "the measure there over now", "–", "F2", all.Select(b => b?.Relative));
    }

    private static int[] Some(int count, int most)
    {
        var step = most >= count ? 1 : (int)Math.Ceiling((count - 1) / (most - 1.0));
        return [.. Enumerable.Range(0, count).Where(i => i % step == 0)];
    }
}
