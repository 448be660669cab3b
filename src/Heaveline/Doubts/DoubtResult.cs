using Heaveline.Measures;
using Heaveline.Numerics;

namespace Heaveline.Doubts;

/// <summary>What the doubts of a car leave possible for one number, by drawn cars.</summary>
public sealed record DoubtResult
{
    private readonly double[] sorted = [];

    /// <summary>What the number is.</summary>
    public required Measure Measure { get; init; }

    /// <summary>The unit that it is in: SI, or as shown.</summary>
    public required string Symbol { get; init; }

    /// <summary>The number of the car as stated.</summary>
    public required double Stated { get; init; }

    /// <summary>The number of each drawn car in the order of the draws; NaN where there was none.</summary>
    public required IReadOnlyList<double> Values { get; init => (field, sorted) = (value, [.. value.Where(double.IsFinite).Order()]); }

    /// <summary>
    /// Shares of the variance by a linear fit to the draws, greatest first; empty when there are fewer draws than three times the sources.
    /// </summary>
    public required IReadOnlyList<VarianceShare> Shares { get; init; }

    /// <summary>How many draws gave a number.</summary>
    public int Count => sorted.Length;

    /// <summary>Mean.</summary>
    public double Mean => sorted.Average();

    /// <summary>Standard deviation.</summary>
    public double StandardDeviation
    {
        get
        {
            var mean = Mean;
            return Math.Sqrt(sorted.Sum(v => (v - mean) * (v - mean)) / Math.Max(1, sorted.Length - 1));
        }
    }

    /// <summary>Whether it is what lies between two cars, which knows no end and no way through infinity of the number itself.</summary>
    public bool IsChange { get; init; }

    /// <summary>
    /// The middle 90 %: 5 to 95 %. Its lower end is the greater one where it passes through infinity (<see cref="Measure.PassesInfinity"/>); an end
    /// beyond <see cref="Measure.NoneAbove"/> is infinite.
    /// </summary>
    public DoubtInterval Central90 => Between(0.05, 0.95);

    /// <summary>The middle 95 %: 2.5 to 97.5 %, with ends as above.</summary>
    public DoubtInterval Central95 => Between(0.025, 0.975);

    /// <summary>How many draws have no number because it lies above where it is looked for.</summary>
    public int CountAbove => !IsChange && Measure.NoneAbove is not null ? Values.Count - sorted.Length : 0;

    /// <summary>
    /// The value below which a share of the draws lies, straight between neighbours [Hyndman and Fan 1996, definition 6]: an interval of few draws
    /// then holds a further draw as often as it says.
    /// </summary>
    /// <param name="share">0 to 1.</param>
    public double Quantile(double share) => DrawnNumbers.QuantileInOrder(sorted, share);

    private DoubtInterval Between(double low, double high)
    {
        double[] ordered = CountAbove > 0 ? [.. sorted, .. Enumerable.Repeat(double.PositiveInfinity, CountAbove)]
            : !IsChange && Measure.PassesInfinity && Turn() is > 0 and var first ? [.. sorted.AsSpan(first), .. sorted.AsSpan(0, first)]
            : sorted;
        return new(DrawnNumbers.QuantileInOrder(ordered, low), DrawnNumbers.QuantileInOrder(ordered, high));
    }

    // Numbers on a line that closes in infinity lie on a circle. It is cut where it is empty over the longest way, and read from there on.
    private int Turn()
    {
        if (sorted.Length < 2 || sorted[0] >= 0.0 || sorted[^1] <= 0.0)
        {
            return 0;
        }

        var usual = sorted.Select(Math.Abs).Order().ElementAt(sorted.Length / 2);
        double[] angles = [.. sorted.Select(v => Math.Atan2(v, usual))];
        var (first, widest) = (0, Math.PI - (angles[^1] - angles[0]));
        for (var i = 1; i < angles.Length; i++)
        {
            if (angles[i] - angles[i - 1] > widest)
            {
                (first, widest) = (i, angles[i] - angles[i - 1]);
            }
        }

        return first;
    }

    /// <summary>The same in the unit that the number is shown in.</summary>
    public DoubtResult Shown() => In(Measure.Unit.Factor, Measure.Unit.Symbol);

    /// <summary>The same in another unit: every number times a factor.</summary>
    /// <param name="factor">New units per old one, not 0.</param>
    /// <param name="symbol">The new unit.</param>
    public DoubtResult In(double factor, string symbol) => this with
    {
        Symbol = symbol,
        Stated = factor * Stated,
        Values = [.. Values.Select(v => factor * v)],
        Shares = [.. Shares.Select(s => s with { PerDeviation = factor * s.PerDeviation })],
    };

    /// <summary>Share of the draws below a limit (–).</summary>
    public double ChanceBelow(double limit) => (double)sorted.Count(v => v < limit) / sorted.Length;

    internal static DoubtResult Of(Measure measure, double stated, double[] values, ErrorFit fit) => new()
    {
        Measure = measure,
        Symbol = measure.Unit.Si,
        Stated = stated,
        Values = values,
        Shares = fit.Shares(values),
    };
}
