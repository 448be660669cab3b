namespace Heaveline.Numerics;

/// <summary>Gauss's elimination with column pivots in small full matrices, row after row in one array.</summary>
internal static class Elimination
{
    /// <summary>Solves a·x = b. Not finite where the matrix is singular.</summary>
    /// <param name="a">Shape (n, n); overwritten.</param>
    /// <param name="b">Right side, shape (n); receives x.</param>
    public static void Solve(Span<double> a, Span<double> b)
    {
        var n = b.Length;
        Triangle(a, b, n, 0);
        for (var i = n - 1; i >= 0; i--)
        {
            for (var j = i + 1; j < n; j++)
            {
                b[i] -= a[(i * n) + j] * b[j];
            }

            b[i] /= a[(i * n) + i];
        }
    }

    /// <summary>Takes the last unknowns out of a matrix: A − B·D⁻¹·C stands in its first <paramref name="kept"/> rows and columns then.</summary>
    /// <param name="a">Shape (n, n); overwritten.</param>
    /// <param name="n">Rows.</param>
    /// <param name="kept">How many of the first unknowns stay.</param>
    public static void Condense(Span<double> a, int n, int kept)
    {
        Triangle(a, default, n, kept);
        for (var k = n - 1; k >= kept; k--)
        {
            for (var i = 0; i < k; i++)
            {
                if (a[(i * n) + k] != 0.0)
                {
                    Subtract(a, n, i, k, a[(i * n) + k] / a[(k * n) + k]);
                }
            }
        }
    }

    // Brings the rows from the first on into a triangle over the columns from the first on.
    private static void Triangle(Span<double> a, Span<double> b, int n, int first)
    {
        for (var k = first; k < n; k++)
        {
            var pivot = k;
            for (var i = k + 1; i < n; i++)
            {
                pivot = Math.Abs(a[(i * n) + k]) > Math.Abs(a[(pivot * n) + k]) ? i : pivot;
            }

            if (pivot != k)
            {
                for (var j = 0; j < n; j++)
                {
                    (a[(k * n) + j], a[(pivot * n) + j]) = (a[(pivot * n) + j], a[(k * n) + j]);
                }

                if (!b.IsEmpty)
                {
                    (b[k], b[pivot]) = (b[pivot], b[k]);
                }
            }

            for (var i = k + 1; i < n; i++)
            {
                var share = a[(i * n) + k] / a[(k * n) + k];
                if (share != 0.0)
                {
                    Subtract(a, n, i, k, share);
                    if (!b.IsEmpty)
                    {
                        b[i] -= share * b[k];
                    }
                }
            }
        }
    }

    private static void Subtract(Span<double> a, int n, int from, int row, double share)
    {
        var less = a.Slice(from * n, n);
        ReadOnlySpan<double> by = a.Slice(row * n, n);
        for (var j = 0; j < less.Length && j < by.Length; j++)
        {
            less[j] -= share * by[j];
        }
    }
}
