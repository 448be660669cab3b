using MathNet.Numerics.LinearAlgebra;

namespace Heaveline.Insight;

/// <summary>What the doubts of a car leave possible for one number, by drawn cars.</summary>
public sealed record DoubtResult
{
    private readonly double[] sorted = [];

    /// <summary>What the number is.</summary>
    public required string Name { get; init; }

    /// <summary>Its unit.</summary>
    public required string Symbol { get; init; }

    /// <summary>The number of the car as stated.</summary>
    public required double Stated { get; init; }

    /// <summary>The number of each drawn car in the order of the draws; NaN where there was none.</summary>
    public required IReadOnlyList<double> Values { get; init => (field, sorted) = (value, [.. value.Where(double.IsFinite).Order()]); }

    /// <summary>Shares of the variance by a linear fit to the draws, greatest first; empty when there are fewer draws than three times the sources.</summary>
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

    /// <summary>The middle 90 %: 5 to 95 %.</summary>
    public DoubtInterval Central90 => new(Quantile(0.05), Quantile(0.95));

    /// <summary>The middle 95 %: 2.5 to 97.5 %.</summary>
    public DoubtInterval Central95 => new(Quantile(0.025), Quantile(0.975));

    /// <summary>Share of the variance that no single source explains: curvature and interplay (–).</summary>
    public double Unexplained => Math.Max(0.0, 1.0 - Shares.Sum(s => s.Share));

    /// <summary>
    /// The value below which a share of the draws lies, straight between neighbours [Hyndman and Fan 1996, definition 6]: an interval of few draws then
    /// holds a further draw as often as it says.
    /// </summary>
    /// <param name="share">0 to 1.</param>
    public double Quantile(double share)
    {
        if (sorted.Length == 0)
        {
            return double.NaN;
        }

        var at = Math.Clamp((share * (sorted.Length + 1)) - 1.0, 0.0, sorted.Length - 1);
        var below = Math.Clamp((int)at, 0, sorted.Length - 1);
        var above = Math.Min(below + 1, sorted.Length - 1);
        return sorted[below] + ((at - below) * (sorted[above] - sorted[below]));
    }

    /// <summary>The same in degrees when it is in radians; itself otherwise.</summary>
    public DoubtResult ForReaders()
    {
        if (!Symbol.StartsWith("rad", StringComparison.Ordinal) || Symbol.Contains("/s²", StringComparison.Ordinal))
        {
            return this;
        }

        const double degrees = 180.0 / Math.PI;
        return this with
        {
            Symbol = "°" + Symbol["rad".Length..].Replace("·s^0.5", "·s½", StringComparison.Ordinal),
            Stated = degrees * Stated,
            Values = [.. Values.Select(v => degrees * v)],
            Shares = [.. Shares.Select(s => s with { PerDeviation = degrees * s.PerDeviation })],
        };
    }

    /// <summary>Share of the draws below a limit (–).</summary>
    public double ChanceBelow(double limit) => (double)sorted.Count(v => v < limit) / sorted.Length;

    internal static DoubtResult Of(string name, string symbol, double stated, double[] values, IReadOnlyList<DoubtSource> sources, IReadOnlyList<IReadOnlyList<double>> errors) => new()
    {
        Name = name,
        Symbol = symbol,
        Stated = stated,
        Values = values,
        Shares = SharesOf(values, sources, errors),
    };

    // Least squares of the number on the sources' errors: they are independent, so the squared coefficients are parts of the variance. The part that
    // chance gives to a source without any effect, the residual variance over the count, is taken off.
    private static IReadOnlyList<VarianceShare> SharesOf(double[] values, IReadOnlyList<DoubtSource> sources, IReadOnlyList<IReadOnlyList<double>> errors)
    {
        int[] good = [.. Enumerable.Range(0, values.Length).Where(i => double.IsFinite(values[i]))];
        if (sources.Count == 0 || good.Length < 3 * (sources.Count + 1))
        {
            return [];
        }

        var x = Matrix<double>.Build.Dense(good.Length, sources.Count + 1, (i, j) => j == 0 ? 1.0 : errors[good[i]][j - 1]);
        var y = Vector<double>.Build.Dense(good.Length, i => values[good[i]]);
        var mean = y.Average();
        var variance = y.Sum(v => (v - mean) * (v - mean)) / (good.Length - 1);
        if (!(variance > 0.0))
        {
            return [];
        }

        var fit = x.TransposeThisAndMultiply(x).Cholesky().Solve(x.TransposeThisAndMultiply(y));
        var rest = (y - (x * fit)).L2Norm();
        var chance = rest * rest / (good.Length - sources.Count - 1) / good.Length;
        return [.. sources
            .Select((s, j) => new VarianceShare(s, Math.Clamp(((fit[j + 1] * fit[j + 1] * Spread(x.Column(j + 1))) - chance) / variance, 0.0, 1.0), fit[j + 1]))
            .OrderByDescending(s => s.Share)];
    }

    // Variance of the errors as drawn: near one, but not one.
    private static double Spread(Vector<double> errors)
    {
        var mean = errors.Average();
        return errors.Sum(e => (e - mean) * (e - mean)) / (errors.Count - 1);
    }
}
