using Heaveline.Answers;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>The chances of what years bring, a column a year.</summary>
public static class YearsTable
{
    private const int MostColumns = 8;

    /// <summary>The table.</summary>
    /// <param name="chances">A row each.</param>
    /// <param name="years">The years, a column each.</param>
    public static FactTable Of(IReadOnlyList<YearsChance> chances, IReadOnlyList<int> years)
    {
        ArgumentNullException.ThrowIfNull(chances);
        ArgumentNullException.ThrowIfNull(years);
        var table = new FactTable(
            "Share of the drawn cars by year", [.. years.Select(y => y == 0 ? "today" : FormattableString.Invariant($"year {y}"))]);
        foreach (var chance in chances)
        {
            var shown = years.Select(y => (double?)In.Percent.Of(chance.Shares[y]));
            table.Add(YearsWords.Id(chance.Event), Label(chance.Event), In.Percent.Symbol, "F1", shown);
        }

        return table;
    }

    /// <summary>Few enough years for a page, the first and the last among them.</summary>
    /// <param name="years">The last year.</param>
    public static IReadOnlyList<int> Few(int years)
    {
        var step = (years + MostColumns - 2) / (MostColumns - 1);
        return [.. Enumerable.Range(0, MostColumns).Select(i => Math.Min(i * step, years)).Distinct()];
    }

    private static string Label(YearsEvent what) => what switch
    {
        YearsEvent.SofterRear => "rear the softer end",
        YearsEvent.StandsOnStop => "stands on a bump stop",
        YearsEvent.TouchesStop => "touches a bump stop on the road",
        YearsEvent.HighBeam => "dipped beam above its range",
        YearsEvent.WeakDamping => FormattableString.Invariant($"an axle damped below {CureGuard.LeastDamping:F2}"),
        _ => throw new ArgumentOutOfRangeException(nameof(what), what, null),
    };
}
