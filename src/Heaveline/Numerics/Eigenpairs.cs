using System.Numerics;
using MathNet.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace Heaveline.Numerics;

/// <summary>
/// Eigenvalues and eigenvectors of a real square matrix. Rows and columns are balanced first (Parlett and Reinsch, Numer. Math. 13, 1969), since
/// metres, radians and cubic metres stand side by side in a car; every pair is then checked against the matrix it came from.
/// </summary>
internal sealed class Eigenpairs
{
    private const double Tolerance = 1e-9;

    // Seven or nine degrees of freedom are too few for threads to pay.
    static Eigenpairs() => Control.UseSingleThread();

    private Eigenpairs(Complex[] values, Complex[][] vectors)
    {
        Values = values;
        Vectors = vectors;
    }

    /// <summary>Eigenvalues, shape (n).</summary>
    public Complex[] Values { get; }

    /// <summary>Eigenvector of each value, shape (n)(n), of any length.</summary>
    public Complex[][] Vectors { get; }

    /// <summary>Decomposes a matrix.</summary>
    /// <exception cref="ArithmeticException">
    /// The matrix holds a value that is not finite, or the iteration did not end in true eigenpairs.
    /// </exception>
    public static Eigenpairs Of(Matrix<double> matrix)
    {
        if (matrix.Enumerate().Any(x => !double.IsFinite(x)))
        {
            throw new ArithmeticException(
                "The equations of motion hold a number that is not finite: a mass, an inertia or a rate is zero or too large.");
        }

        var scale = Balance(matrix);
        var balanced = Matrix<double>.Build.Dense(matrix.RowCount, matrix.RowCount, (i, j) => matrix[i, j] * scale[j] / scale[i]);
        var size = balanced.FrobeniusNorm();
        // A shift of the whole spectrum leaves the vectors alone and starts the iteration elsewhere: the second try when the first one failed.
        foreach (var shift in (double[])[0.0, 0.01 * size])
        {
            if (Attempt(balanced, shift, size) is { } found)
            {
                return new Eigenpairs(found.Values, [.. found.Vectors.Select(v => v.Select((x, i) => x * scale[i]).ToArray())]);
            }
        }

        throw new ArithmeticException(
            "The modes of the linear equations of motion could not be found: the iteration for the eigenvalues did not settle.");
    }

    private static (Complex[] Values, Complex[][] Vectors)? Attempt(Matrix<double> matrix, double shift, double size)
    {
        var n = matrix.RowCount;
        MathNet.Numerics.LinearAlgebra.Factorization.Evd<double> evd;
        try
        {
            evd = (matrix + (Matrix<double>.Build.DenseIdentity(n) * shift)).Evd(Symmetricity.Asymmetric);
        }
        catch (NonConvergenceException)
        {
            return null;
        }

        var values = evd.EigenValues.Select(v => v - shift).ToArray();
        var vectors = new Complex[n][];
        for (var k = 0; k < n; k++)
        {
            // The library keeps a conjugate pair as a real and an imaginary column.
            vectors[k] = values[k].Imaginary switch
            {
                > 0.0 => [.. Enumerable.Range(0, n).Select(i => new Complex(evd.EigenVectors[i, k], evd.EigenVectors[i, k + 1]))],
                < 0.0 => [.. Enumerable.Range(0, n).Select(i => new Complex(evd.EigenVectors[i, k - 1], -evd.EigenVectors[i, k]))],
                _ => [.. Enumerable.Range(0, n).Select(i => new Complex(evd.EigenVectors[i, k], 0.0))],
            };
            if (!IsPair(matrix, values[k], vectors[k], size))
            {
                return null;
            }
        }

        return (values, vectors);
    }

    private static bool IsPair(Matrix<double> matrix, Complex value, Complex[] vector, double size)
    {
        var (miss, length) = (0.0, 0.0);
        for (var i = 0; i < vector.Length; i++)
        {
            var sum = -value * vector[i];
            for (var j = 0; j < vector.Length; j++)
            {
                sum += matrix[i, j] * vector[j];
            }

            miss += (sum * Complex.Conjugate(sum)).Real;
            length += (vector[i] * Complex.Conjugate(vector[i])).Real;
        }

        // Not "miss > …": a NaN must fail too.
        return length > 0.0 && Math.Sqrt(miss / length) <= Tolerance * size;
    }

    // Powers of two that bring the sums of each row and column together; exact, so that balancing adds no rounding.
    private static double[] Balance(Matrix<double> matrix)
    {
        var n = matrix.RowCount;
        var scale = Enumerable.Repeat(1.0, n).ToArray();
        for (var pass = 0; pass < 20; pass++)
        {
            var settled = true;
            for (var i = 0; i < n; i++)
            {
                var (row, column) = (0.0, 0.0);
                for (var j = 0; j < n; j++)
                {
                    if (j != i)
                    {
                        row += Math.Abs(matrix[i, j]) * scale[j] / scale[i];
                        column += Math.Abs(matrix[j, i]) * scale[i] / scale[j];
                    }
                }

                if (row > 0.0 && column > 0.0)
                {
                    var factor = Math.Pow(2.0, Math.Round(0.5 * Math.Log2(row / column)));
                    settled &= factor == 1.0;
                    scale[i] *= factor;
                }
            }

            if (settled)
            {
                break;
            }
        }

        return scale;
    }
}
