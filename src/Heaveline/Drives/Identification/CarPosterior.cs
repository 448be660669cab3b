using Heaveline.Numerics;

namespace Heaveline.Drives.Identification;

/// <summary>
/// How sure a fit is: for any number of the parameters the larger of two variances, that of the inverse information and that of the sandwich over
/// windows [Huber; White, Econometrica 50 (1982) 1], what was known before in both.
/// </summary>
internal sealed class CarPosterior
{
    private readonly int count;
    private readonly double[] precision;
    private readonly double[][] scores;

    private CarPosterior(double[] covariance, double[] precision, double[][] scores)
    {
        (Covariance, this.precision, this.scores, count) = (covariance, precision, scores, precision.Length);
    }

    /// <summary>The inverse of the information, shape (n, n).</summary>
    public double[] Covariance { get; }

    /// <summary>Windows, of which a sandwich needs four.</summary>
    public int Windows => scores.Length;

    /// <summary>What of Student's t holds 90 %, ±.</summary>
    public double Student => Quantile(Windows);

    /// <summary>The same for a number of windows.</summary>
    public static double Quantile(int windows) => LeastSquares.Student(Math.Max(1, windows - 1), 0.9);

    /// <summary>The posterior at the end of a fit; null where the information cannot be inverted.</summary>
    public static CarPosterior? Of(CarFit fit, CarLikelihood likelihood, double[] x)
    {
        var (information, scores) = fit.At(x);
        var n = likelihood.Count;
        for (var i = 0; i < n; i++)
        {
            information[(i * n) + i] += likelihood.Precision[i];
        }

        if (PositiveMatrix.Of(information, n) is not { } matrix)
        {
            return null;
        }

        var mean = new double[n];
        foreach (var row in scores)
        {
            Dot.Add(1.0 / scores.Length, row, mean);
        }

        foreach (var row in scores)
        {
            Dot.Add(-1.0, mean, row);
        }

        return new CarPosterior(matrix.Inverse(), likelihood.Precision, scores);
    }

    /// <summary>Variance of Σ slope·parameter, the slopes of the first parameters given, the others 0.</summary>
    public double Variance(ReadOnlySpan<double> slopes)
    {
        var by = Times(slopes);
        return Math.Max(Dot.Of(slopes, by), Windows >= 4 ? Sandwich(by, by) : 0.0);
    }

    /// <summary>Variance by information alone.</summary>
    public double Informed(ReadOnlySpan<double> slopes) => Dot.Of(slopes, Times(slopes));

    /// <summary>Correlation of two such sums, by information.</summary>
    public double Correlation(ReadOnlySpan<double> one, ReadOnlySpan<double> other) =>
        Dot.Of(one, Times(other)) / Math.Sqrt(Informed(one) * Informed(other));

    /// <summary>Standard deviation of one parameter.</summary>
    public double Deviation(int parameter)
    {
        var by = Covariance.AsSpan(parameter * count, count);
        return Math.Sqrt(Math.Max(by[parameter], Windows >= 4 ? Sandwich(by, by) : 0.0));
    }

    /// <summary>The covariance, every parameter's deviation raised to the larger of the two.</summary>
    public double[] Raised()
    {
        var raise = Enumerable.Range(0, count).Select(i => Deviation(i) / Math.Sqrt(Covariance[(i * count) + i])).ToArray();
        return [.. Covariance.Select((c, k) => c * raise[k / count] * raise[k % count])];
    }

    private double[] Times(ReadOnlySpan<double> slopes)
    {
        var by = new double[count];
        for (var i = 0; i < slopes.Length; i++)
        {
            if (slopes[i] != 0.0)
            {
                Dot.Add(slopes[i], Covariance.AsSpan(i * count, count), by);
            }
        }

        return by;
    }

    private double Sandwich(ReadOnlySpan<double> one, ReadOnlySpan<double> other)
    {
        var sum = 0.0;
        foreach (var score in scores)
        {
            sum += Dot.Of(score, one) * Dot.Of(score, other);
        }

        sum *= Windows / (Windows - 1.0);
        for (var i = 0; i < count; i++)
        {
            sum += precision[i] * one[i] * other[i];
        }

        return sum;
    }
}
