using MathNet.Numerics.LinearAlgebra.Factorization;
using MathNet.Numerics.LinearAlgebra;

namespace Heaveline.Doubts;

/// <summary>
/// Least squares of numbers of drawn cars on the sources' errors. The sources are independent, so the squared coefficients are parts of the variance.
/// The part that chance gives to a source without any effect, the residual variance over the count, is taken off.
/// </summary>
internal sealed class ErrorFit
{
    private readonly IReadOnlyList<DoubtSource> sources;
    private readonly IReadOnlyList<IReadOnlyList<double>> errors;
    private readonly Lazy<Solved> all;

    /// <param name="sources">The sources.</param>
    /// <param name="errors">Their errors, shape (draws)(sources).</param>
    public ErrorFit(IReadOnlyList<DoubtSource> sources, IReadOnlyList<IReadOnlyList<double>> errors)
    {
        (this.sources, this.errors) = (sources, errors);
        // Nearly all numbers exist for every draw: they share one factorisation.
        all = new Lazy<Solved>(() => new Solved(errors, [.. Enumerable.Range(0, errors.Count)], sources.Count));
    }

    /// <summary>Fewest draws that tell the shares of so many sources: three to each of them, and to the mean.</summary>
    public static int Fewest(int sources) => 3 * (sources + 1);

    /// <summary>
    /// Shares of the variance, greatest first; empty when fewer draws than <see cref="Fewest"/> have a number, or there is no variance.
    /// </summary>
    /// <param name="values">The number of each draw; NaN where there is none.</param>
    public IReadOnlyList<VarianceShare> Shares(double[] values)
    {
        int[] good = [.. Enumerable.Range(0, values.Length).Where(i => double.IsFinite(values[i]))];
        if (sources.Count == 0 || good.Length < Fewest(sources.Count))
        {
            return [];
        }

        var y = Vector<double>.Build.Dense(good.Length, i => values[good[i]]);
        var mean = y.Average();
        var variance = y.Sum(v => (v - mean) * (v - mean)) / (good.Length - 1);
        if (!(variance > 0.0))
        {
            return [];
        }

        var of = good.Length == values.Length ? all.Value : new Solved(errors, good, sources.Count);
        var fit = of.Normal.Solve(of.X.TransposeThisAndMultiply(y));
        var rest = (y - (of.X * fit)).L2Norm();
        var chance = rest * rest / (good.Length - sources.Count - 1) / good.Length;
        return [.. sources
            .Select((s, j) => new VarianceShare(s, Math.Clamp(((fit[j + 1] * fit[j + 1] * of.Spread[j]) - chance) / variance, 0.0, 1.0), fit[j + 1]))
            .OrderByDescending(s => s.Share)];
    }

    private sealed class Solved
    {
        public Solved(IReadOnlyList<IReadOnlyList<double>> errors, int[] good, int sources)
        {
            X = Matrix<double>.Build.Dense(good.Length, sources + 1, (i, j) => j == 0 ? 1.0 : errors[good[i]][j - 1]);
            Normal = X.TransposeThisAndMultiply(X).Cholesky();
            Spread = [.. Enumerable.Range(0, sources).Select(j => SpreadOf(X.Column(j + 1)))];
        }

        public Matrix<double> X { get; }

        public Cholesky<double> Normal { get; }

        /// <summary>Variance of each source's errors as drawn: near one, but not one.</summary>
        public double[] Spread { get; }

        private static double SpreadOf(Vector<double> errors)
        {
            var mean = errors.Average();
            return errors.Sum(e => (e - mean) * (e - mean)) / (errors.Count - 1);
        }
    }
}
