namespace Heaveline.Numerics;

/// <summary>
/// A symmetric positive definite matrix as L·Lᵀ [Cholesky's factor; Golub and Van Loan, Matrix Computations, ch. 4]. Rows and columns are brought to
/// a diagonal of ones first, since parameters of very different size stand side by side.
/// </summary>
internal sealed class PositiveMatrix
{
    private readonly int count;
    private readonly double[] factor;
    private readonly double[] scale;

    private PositiveMatrix(int count, double[] factor, double[] scale) => (this.count, this.factor, this.scale) = (count, factor, scale);

    /// <summary>Factors a matrix; null where it is not positive definite.</summary>
    /// <param name="matrix">Shape (n, n), row after row; the lower triangle is read.</param>
    /// <param name="count">n.</param>
    /// <param name="more">Added to every element of the diagonal of ones.</param>
    public static PositiveMatrix? Of(ReadOnlySpan<double> matrix, int count, double more = 0.0)
    {
        var (factor, scale) = (new double[count * count], new double[count]);
        for (var i = 0; i < count; i++)
        {
            if (!(matrix[(i * count) + i] > 0.0))
            {
                return null;
            }

            scale[i] = 1.0 / Math.Sqrt(matrix[(i * count) + i]);
            var row = factor.AsSpan(i * count, count);
            for (var j = 0; j < i; j++)
            {
                var above = factor.AsSpan(j * count, j);
                row[j] = ((matrix[(i * count) + j] * scale[i] * scale[j]) - Dot.Of(row[..j], above)) / factor[(j * count) + j];
            }

            var left = 1.0 + more - Dot.Of(row[..i], row[..i]);
            if (!(left > 1e-15) || !double.IsFinite(left))
            {
                return null;
            }

            row[i] = Math.Sqrt(left);
        }

        return new PositiveMatrix(count, factor, scale);
    }

    /// <summary>A⁻¹·b.</summary>
    public double[] Solve(ReadOnlySpan<double> b)
    {
        var x = new double[count];
        for (var i = 0; i < count; i++)
        {
            var row = factor.AsSpan(i * count, i);
            x[i] = ((b[i] * scale[i]) - Dot.Of(row, x.AsSpan(0, i))) / factor[(i * count) + i];
        }

        for (var i = count - 1; i >= 0; i--)
        {
            x[i] /= factor[(i * count) + i];
            Dot.Add(-x[i], factor.AsSpan(i * count, i), x.AsSpan(0, i));
        }

        for (var i = 0; i < count; i++)
        {
            x[i] *= scale[i];
        }

        return x;
    }

    /// <summary>A⁻¹, shape (n, n), row after row.</summary>
    public double[] Inverse()
    {
        var (result, unit) = (new double[count * count], new double[count]);
        for (var j = 0; j < count; j++)
        {
            unit[j] = 1.0;
            Solve(unit).CopyTo(result, j * count);
            unit[j] = 0.0;
        }

        return result;
    }
}
