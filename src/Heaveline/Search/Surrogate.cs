using MathNet.Numerics.LinearAlgebra;

namespace Heaveline.Search;

/// <summary>
/// A guess at the logarithm of a number from the numbers of a setup's parts: a polynomial, fitted to the setups that were driven by least squares
/// with a small penalty on its coefficients (ridge) [Hoerl and Kennard, Ridge regression, Technometrics 1970], solved by an orthogonal factorisation.
/// </summary>
internal sealed class Surrogate
{
    // Small beside the rows of a fit, which are of order one.
    private const double Penalty = 1e-4;

    private readonly double[] coefficients;

    private Surrogate(double[] coefficients, double residual) => (this.coefficients, Residual) = (coefficients, residual);

    /// <summary>Root mean square of what the fit is off by at the setups that it was fitted to, in the logarithm.</summary>
    public double Residual { get; }

    /// <summary>Fits several numbers to the same setups.</summary>
    /// <param name="rows">The terms of each setup, see <see cref="SetupTerms"/>.</param>
    /// <param name="values">For each number its value at each setup, above 0.</param>
    public static Surrogate[] Of(double[][] rows, IReadOnlyList<double[]> values)
    {
        var (n, terms) = (rows.Length, rows[0].Length);
        // Each coefficient is a row more, that says it is nought.
        var design = Matrix<double>.Build.Dense(n + terms, terms);
        for (var i = 0; i < n; i++)
        {
            design.SetRow(i, rows[i]);
        }

        for (var j = 0; j < terms; j++)
        {
            design[n + j, j] = Math.Sqrt(Penalty);
        }

        var factors = design.QR(MathNet.Numerics.LinearAlgebra.Factorization.QRMethod.Thin);
        return [.. values.Select(value =>
        {
            var target = Vector<double>.Build.Dense(n + terms, i => i < n ? Math.Log(value[i]) : 0.0);
            double[] found = [.. factors.Solve(target)];
            var off = 0.0;
            for (var i = 0; i < n; i++)
            {
                var d = Dot(rows[i], found) - target[i];
                off += d * d;
            }

            return new Surrogate(found, Math.Sqrt(off / n));
        })];
    }

    /// <summary>The guess.</summary>
    /// <param name="row">The terms of a setup.</param>
    public double Of(ReadOnlySpan<double> row) => Math.Exp(Dot(row, coefficients));

    private static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        var sum = 0.0;
        for (var k = 0; k < a.Length; k++)
        {
            sum += a[k] * b[k];
        }

        return sum;
    }
}
