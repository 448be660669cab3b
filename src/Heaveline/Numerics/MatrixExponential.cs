using Heaveline.Quantities;
using MathNet.Numerics.LinearAlgebra;

namespace Heaveline.Numerics;

/// <summary>
/// e^A by Padé approximants with scaling and squaring [Higham, The scaling and squaring method for the matrix exponential revisited, SIAM J. Matrix
/// Anal. Appl. 26 (2005) 1179]: the least degree m of 3, 5, 7, 9, 13 whose bound θ(m) holds the 1-norm, and halvings only for 13.
/// </summary>
public static class MatrixExponential
{
    // θ(m): the greatest 1-norm for which the backward error stays below the unit roundoff 2^-53 [Higham 2005, table 2.3].
    private static readonly (int Degree, double Norm)[] Bounds =
        [(3, 1.495585217958292e-2), (5, 2.539398330063230e-1), (7, 9.504178996162932e-1), (9, 2.097847961257068), (13, 5.371920351148152)];

    /// <summary>The exponential of a square matrix of finite numbers.</summary>
    /// <param name="a">A, shape (n, n).</param>
    /// <returns>e^A, shape (n, n).</returns>
    public static Matrix<double> Of(Matrix<double> a)
    {
        if (a.RowCount != a.ColumnCount)
        {
            throw new RefusedValueException("matrix", $"{a.RowCount} by {a.ColumnCount}", "square", "Only a square matrix has an exponential.");
        }

        var norm = a.L1Norm();
        if (!double.IsFinite(norm))
        {
            throw new RefusedValueException("matrix", "not finite", "of finite numbers", "Give finite numbers.");
        }

        foreach (var (degree, bound) in Bounds)
        {
            if (norm <= bound)
            {
                return Pade(a, degree);
            }
        }

        var halvings = Math.Max(0, (int)Math.Ceiling(Math.Log2(norm / Bounds[^1].Norm)));
        var result = Pade(a * Math.ScaleB(1.0, -halvings), Bounds[^1].Degree);
        for (var i = 0; i < halvings; i++)
        {
            result *= result;
        }

        return result;
    }

    // r(A) = (V − U)⁻¹(V + U), V the even and U the odd terms of the numerator Σ c_j A^j, c_j/c_(j−1) = (m − j + 1)/((2m − j + 1) j).
    private static Matrix<double> Pade(Matrix<double> a, int degree)
    {
        var c = new double[degree + 1];
        c[0] = 1.0;
        for (var j = 1; j <= degree; j++)
        {
            c[j] = c[j - 1] * (degree - j + 1) / ((double)((2 * degree) - j + 1) * j);
        }

        var one = Matrix<double>.Build.DenseIdentity(a.RowCount);
        var square = a * a;
        var even = one * c[degree - 1];
        var odd = one * c[degree];
        for (var j = degree - 3; j >= 0; j -= 2)
        {
            even = (square * even) + (one * c[j]);
            odd = (square * odd) + (one * c[j + 1]);
        }

        odd = a * odd;
        return (even - odd).Solve(even + odd);
    }
}
