namespace Heaveline.Numerics;

/// <summary>A few linear equations, by elimination with exchange of rows.</summary>
internal static class SmallSystem
{
    /// <summary>Puts the solution of A·x = b in place of b; false when A has no inverse. A is written over.</summary>
    /// <param name="matrix">A, row by row.</param>
    /// <param name="right">b.</param>
    public static bool Solve(Span<double> matrix, Span<double> right)
    {
        var n = right.Length;
        for (var k = 0; k < n; k++)
        {
            var pivot = k;
            for (var i = k + 1; i < n; i++)
            {
                pivot = Math.Abs(matrix[(i * n) + k]) > Math.Abs(matrix[(pivot * n) + k]) ? i : pivot;
            }

            if (!(Math.Abs(matrix[(pivot * n) + k]) > 0.0))
            {
                return false;
            }

            if (pivot != k)
            {
                for (var j = 0; j < n; j++)
                {
                    (matrix[(k * n) + j], matrix[(pivot * n) + j]) = (matrix[(pivot * n) + j], matrix[(k * n) + j]);
                }

                (right[k], right[pivot]) = (right[pivot], right[k]);
            }

            for (var i = k + 1; i < n; i++)
            {
                var share = matrix[(i * n) + k] / matrix[(k * n) + k];
                if (share == 0.0)
                {
                    continue;
                }

                for (var j = k + 1; j < n; j++)
                {
                    matrix[(i * n) + j] -= share * matrix[(k * n) + j];
                }

                right[i] -= share * right[k];
            }
        }

        for (var k = n - 1; k >= 0; k--)
        {
            for (var j = k + 1; j < n; j++)
            {
                right[k] -= matrix[(k * n) + j] * right[j];
            }

            right[k] /= matrix[(k * n) + k];
        }

        return true;
    }
}
