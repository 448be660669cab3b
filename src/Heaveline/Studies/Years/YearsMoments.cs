using System.Collections.Immutable;

namespace Heaveline.Studies;

/// <summary>When an event comes upon each of the drawn cars, and when it leaves it again.</summary>
internal sealed class YearsMoments
{
    // A hundredth of a year.
    private const int Halvings = 7;

    private readonly List<(double Year, int Change)>[] ofCars;

    /// <summary>Nothing yet.</summary>
    /// <param name="draws">How many cars are drawn.</param>
    public YearsMoments(int draws) => ofCars = [.. Enumerable.Range(0, draws).Select(_ => new List<(double, int)>())];

    /// <summary>Of all cars, one after another in time.</summary>
    public ImmutableArray<(double Year, int Change)> All =>
        [.. ofCars.SelectMany(moments => moments).OrderBy(m => m.Year).ThenByDescending(m => m.Change)];

    /// <summary>Keeps a car's moments.</summary>
    /// <param name="draw">The car.</param>
    /// <param name="happened">Whether it is so, in each year from 0 on.</param>
    /// <param name="isSo">Whether it is so at a moment between two years.</param>
    /// <param name="first">A moment between a year and the next that is known already; null where it must be looked for.</param>
    public void Keep(int draw, IReadOnlyList<bool> happened, Func<double, bool> isSo, Func<int, double?> first)
    {
        if (happened[0])
        {
            ofCars[draw].Add((0.0, 1));
        }

        for (var year = 1; year < happened.Count; year++)
        {
            if (happened[year] != happened[year - 1])
            {
                ofCars[draw].Add((first(year - 1) ?? Between(year - 1.0, year, happened[year], isSo), happened[year] ? 1 : -1));
            }
        }
    }

    private static double Between(double before, double after, bool becomes, Func<double, bool> isSo)
    {
        for (var k = 0; k < Halvings; k++)
        {
            var middle = 0.5 * (before + after);
            (before, after) = isSo(middle) == becomes ? (before, middle) : (middle, after);
        }

        return after;
    }
}
