using Heaveline.Answers;
using Heaveline.Measures;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Tolerances that keep a promise, a column each.</summary>
public static class ToleranceTable
{
    private const string Page = "theory/kits-and-years.md";

    private const int MostColumns = 8;

    private static readonly Measure<ToleranceKept>[] All =
    [
        Of("tolerance-springs", "spring rates ±", In.Percent, k => k.Tolerance.Springs, "Half-width of the spring rates' tolerance.", "0.##") with
        {
            Name = "tolerance of the spring rates",
        },
        Of("tolerance-dampers", "damper forces ±", In.Percent, k => k.Tolerance.Dampers, "The same of the dampers' forces.", "0.##") with
        {
            Name = "tolerance of the damper forces",
        },
        Of("tolerance-heights", "heights ±", In.Millimetres, k => k.Tolerance.Heights, "The same of the heights over the axles.", "0.##") with
        {
            Name = "tolerance of the heights",
        },
        Of("tolerance-kept", "cars that keep the promise", In.Percent, k => k.Share, "Share of the drawn cars that keep every promise.", "F1"),
        Of("tolerance-kept-low", "at least, 95 % sure", In.Percent, k => k.Interval.Low, "Lower end of its Wilson interval (90 %).", "F1") with
        {
            Name = "cars that keep the promise, at least",
        },
        Of("tolerance-kept-high", "at most, 95 % sure", In.Percent, k => k.Interval.High, "Its upper end.", "F1") with
        {
            Name = "cars that keep the promise, at most",
        },
        Of("tolerance-price", "price of the tolerances", In.Plain, k => k.Price ?? double.NaN, "What the three tolerances cost a kit.", "0.##"),
    ];

    /// <summary>All that the table holds, for the glossary.</summary>
    public static IReadOnlyList<Measure> Measures { get; } = [.. All];

    /// <summary>The loosest tolerances that surely keep it, as many as a page holds.</summary>
    /// <param name="loosest">The tolerances, the first to be named first.</param>
    public static FactTable Loosest(IReadOnlyList<ToleranceKept> loosest) => Of("Loosest that keep it", [.. loosest.Take(MostColumns)]);

    /// <summary>All of them.</summary>
    /// <param name="all">The tolerances.</param>
    public static FactTable Whole(IReadOnlyList<ToleranceKept> all) => Of("All tolerances", all);

    private static FactTable Of(string title, IReadOnlyList<ToleranceKept> all) =>
        new FactTable(title, [.. Enumerable.Range(1, all.Count).Select(i => FormattableString.Invariant($"{i}"))]).Add(All, all);

    private static Measure<ToleranceKept> Of(
        string key, string label, ShownUnit unit, Func<ToleranceKept, double> of, string says, string format) =>
        new(key, label, unit, 1, of, says) { Page = Page, Format = format };
}
