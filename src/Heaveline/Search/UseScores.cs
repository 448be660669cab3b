using System.Collections.Immutable;

namespace Heaveline.Search;

/// <summary>
/// A row of numbers against that of the car as it is in the same drawn car: each use case as a ratio, and their weighted means. The car as it is
/// comes to 1 exactly.
/// </summary>
internal sealed class UseScores
{
    private readonly ImmutableArray<UseColumn> columns;

    /// <param name="columns">The numbers of all use cases.</param>
    /// <param name="stated">The row of the car as it is, as stated: it says which use cases anybody feels.</param>
    public UseScores(IEnumerable<UseColumn> columns, SetupRow stated)
    {
        this.columns = [.. columns.OrderBy(c => c.Kind).ThenBy(c => c.Name, StringComparer.Ordinal)];
        Counted = [.. this.columns.Where(c => stated.Numbers[c.At] >= c.Floor)];
    }

    /// <summary>The numbers that count, in the order of their kinds and names.</summary>
    public ImmutableArray<UseColumn> Counted { get; }

    /// <summary>Those that nobody feels in the car as it is.</summary>
    public IEnumerable<UseColumn> Unfelt => columns.Except(Counted);

    /// <summary>Whether anything counts for a wish.</summary>
    public bool Has(WishKind kind) => Counted.Any(c => c.Kind == (kind == WishKind.WorstRoad ? WishKind.Settling : kind));

    /// <summary>The ratio of one number.</summary>
    public static double Ratio(UseColumn column, SetupRow row, SetupRow present) => row.Numbers[column.At] / present.Numbers[column.At];

    /// <summary>The weighted mean of the ratios of a kind, or the largest; 1 for the car as it is.</summary>
    /// <param name="kind">Settling, hit, ride or worst road.</param>
    /// <param name="row">A setup's row, driven.</param>
    /// <param name="present">That of the car as it is in the same car.</param>
    public double Of(WishKind kind, SetupRow row, SetupRow present)
    {
        var isWorst = kind == WishKind.WorstRoad;
        var (sum, weight, worst) = (0.0, 0.0, double.NegativeInfinity);
        foreach (var column in Counted)
        {
            if (column.Kind == (isWorst ? WishKind.Settling : kind))
            {
                var ratio = Ratio(column, row, present);
                // From 1 on, so that the car as it is comes to it exactly.
                sum += column.Weight * (ratio - 1.0);
                weight += column.Weight;
                worst = Math.Max(worst, ratio);
            }
        }

        return isWorst ? worst : weight > 0.0 ? 1.0 + (sum / weight) : double.NaN;
    }
}
