using Heaveline.Quantities;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace Heaveline.Numerics;

/// <summary>A straight least-squares fit with Student's intervals (Draper and Smith, Applied Regression Analysis, ch. 1–2).</summary>
internal sealed class LeastSquares
{
    private readonly Matrix<double> perVariance;

    /// <summary>Fits y ≈ rows·c.</summary>
    /// <param name="rows">One row per observation.</param>
    /// <param name="y">The observations.</param>
    public LeastSquares(IReadOnlyList<double[]> rows, IReadOnlyList<double> y)
    {
        var design = Matrix<double>.Build.DenseOfRowArrays(rows);
        var target = Vector<double>.Build.DenseOfEnumerable(y);
        // Columns of one length: lengths in m beside their squares would lose digits otherwise.
        var scale = Vector<double>.Build.Dense(design.ColumnCount, j => Math.Sqrt(design.Column(j).DotProduct(design.Column(j))));
        if (!scale.All(s => s > 0.0) || design.RowCount < design.ColumnCount)
        {
            throw new RefusedValueException(
                "the number of readings that differ", $"at most {design.RowCount}", "larger", "Take readings at more places, further apart.");
        }

        var scaled = design * Matrix<double>.Build.DenseOfDiagonalVector(1.0 / scale);
        var qr = scaled.QR();
        if (!(qr.R.Diagonal().AbsoluteMinimum() > 1e-10))
        {
            throw new RefusedValueException(
                "the distance between the readings",
                "too small beside the largest of them",
                "large enough to tell them apart",
                "Look for a reading that is far too large, or take readings further apart.");
        }

        var coefficients = qr.Solve(target);
        var residual = target - (scaled * coefficients);
        Coefficients = [.. coefficients.PointwiseDivide(scale)];
        SumOfSquares = residual.DotProduct(residual);
        Freedom = design.RowCount - design.ColumnCount;
        var inverse = qr.R.Inverse();
        perVariance = Matrix<double>.Build.DenseOfDiagonalVector(1.0 / scale) * inverse * inverse.Transpose()
            * Matrix<double>.Build.DenseOfDiagonalVector(1.0 / scale);
    }

    /// <summary>c.</summary>
    public double[] Coefficients { get; }

    /// <summary>Σ of the squared residuals.</summary>
    public double SumOfSquares { get; }

    /// <summary>Observations less coefficients.</summary>
    public int Freedom { get; }

    /// <summary>Standard deviation of one observation about the fit; 0 when the fit goes through all of them.</summary>
    public double Deviation => Freedom > 0 ? Math.Sqrt(SumOfSquares / Freedom) : 0.0;

    /// <summary>Standard error of Σ w·c from the scatter about the fit; 0 when there are no more observations than coefficients.</summary>
    public double StandardError(params ReadOnlySpan<double> weights) => Deviation * Spread(weights);

    /// <summary>How much of a single observation's variance the fit takes up there, w the observation's own row: its leverage, 0 to 1.</summary>
    public double Leverage(params ReadOnlySpan<double> weights) => Math.Pow(Spread(weights), 2.0);

    /// <summary>Half-width of the interval that holds Σ w·c 19 times out of 20; 0 when there are no more observations than coefficients.</summary>
    public double HalfWidth(params ReadOnlySpan<double> weights) => HalfWidthFrom(0.0, weights);

    /// <summary>The same where an observation is known to scatter by a standard deviation at least, whatever these ones happen to show.</summary>
    public double HalfWidthFrom(double deviation, params ReadOnlySpan<double> weights)
    {
        if (Freedom == 0)
        {
            return 0.0;
        }

        return Student(Freedom) * Math.Max(Deviation, deviation) * Spread(weights);
    }

    /// <summary>Student's t that ±t holds 95 % of, two standard deviations for many degrees of freedom.</summary>
    public static double Student(int freedom) => Student(freedom, 0.95);

    /// <summary>Student's t that ±t holds a share of.</summary>
    /// <param name="freedom">Degrees of freedom, at least 1.</param>
    /// <param name="share">The share, between 0 and 1.</param>
    public static double Student(int freedom, double share) => StudentT.InvCDF(0.0, 1.0, freedom, 0.5 * (1.0 + share));

    /// <summary>Whether a fit is determined: as many rows as columns at least, and no column a sum of the others.</summary>
    /// <param name="rows">One row per observation.</param>
    public static bool IsDetermined(IReadOnlyList<double[]> rows)
    {
        if (rows.Count == 0 || rows.Count < rows[0].Length)
        {
            return false;
        }

        var design = Matrix<double>.Build.DenseOfRowArrays(rows);
        var lengths = design.ColumnNorms(2.0);
        return lengths.All(l => l > 0.0)
            && (design * Matrix<double>.Build.DenseOfDiagonalVector(1.0 / lengths)).QR().R.Diagonal().AbsoluteMinimum() > 1e-6;
    }

    private double Spread(ReadOnlySpan<double> weights)
    {
        var w = Vector<double>.Build.DenseOfArray(weights.ToArray());
        return Math.Sqrt(w * (perVariance * w));
    }
}
