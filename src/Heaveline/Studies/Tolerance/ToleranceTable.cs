using Heaveline.Answers;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Tolerances that keep a promise, a column each.</summary>
public static class ToleranceTable
{
    private const int MostColumns = 8;

    /// <summary>The loosest tolerances that surely keep it, as many as a page holds.</summary>
    /// <param name="loosest">The tolerances, the first to be named first.</param>
    public static FactTable Loosest(IReadOnlyList<ToleranceKept> loosest) => Of("Loosest that keep it", [.. loosest.Take(MostColumns)]);

    /// <summary>All of them.</summary>
    /// <param name="all">The tolerances.</param>
    public static FactTable Whole(IReadOnlyList<ToleranceKept> all) => Of("All tolerances", all);

    internal static string Id(ToleranceReading reading) => reading switch
    {
        ToleranceReading.Front => "front-height",
        ToleranceReading.Rear => "rear-height",
        ToleranceReading.Rake => "rear-over-front",
        ToleranceReading.FrontSwings => "front-swings",
        ToleranceReading.RearSwings => "rear-swings",
        _ => throw new ArgumentOutOfRangeException(nameof(reading), reading, null),
    };

    private static FactTable Of(string title, IReadOnlyList<ToleranceKept> all)
    {
        ArgumentNullException.ThrowIfNull(all);
        return new FactTable(title, [.. Enumerable.Range(1, all.Count).Select(i => FormattableString.Invariant($"{i}"))])
            .Add("tolerance-springs", "spring rates ±", In.Percent.Symbol, "0.##", all.Select(k => (double?)In.Percent.Of(k.Tolerance.Springs)))
            .Add("tolerance-dampers", "damper forces ±", In.Percent.Symbol, "0.##", all.Select(k => (double?)In.Percent.Of(k.Tolerance.Dampers)))
            .Add("tolerance-heights", "heights ±", "mm", "0.##", all.Select(k => (double?)In.Millimetres.Of(k.Tolerance.Heights)))
            .Add("tolerance-kept", "cars that keep the promise", In.Percent.Symbol, "F1", all.Select(k => (double?)In.Percent.Of(k.Share)))
            .Add("tolerance-kept-low", "at least, 95 % sure", In.Percent.Symbol, "F1", all.Select(k => (double?)In.Percent.Of(k.Interval.Low)))
            .Add("tolerance-kept-high", "at most, 95 % sure", In.Percent.Symbol, "F1", all.Select(k => (double?)In.Percent.Of(k.Interval.High)))
            .Add("tolerance-price", "price of the tolerances", "–", "0.##", all.Select(k => k.Price));
    }
}
