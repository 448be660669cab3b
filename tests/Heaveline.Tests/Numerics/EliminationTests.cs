using CsCheck;
using Heaveline.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace Heaveline.Tests.Numerics;

public class EliminationTests
{
    private static readonly Gen<double[]> Matrices = Gen.Double[-5.0, 5.0].Array[81];

    [Fact]
    public void What_is_solved_satisfies_its_equations()
    {
        Gen.Select(Matrices, Gen.Double[-5.0, 5.0].Array[9]).Sample((a, b) =>
        {
            double[] x = [.. b];
            Elimination.Solve([.. a], x);
            var size = x.Max(Math.Abs) * 50.0;
            for (var i = 0; i < 9; i++)
            {
                Assert.Equal(b[i], Enumerable.Range(0, 9).Sum(j => a[(9 * i) + j] * x[j]), 1e-10 * Math.Max(1.0, size));
            }
        }, iter: 300);
    }

    [Fact]
    public void What_is_condensed_is_a_minus_b_times_the_inverse_of_d_times_c()
    {
        Matrices.Sample(a =>
        {
            var whole = Matrix<double>.Build.Dense(9, 9, (i, j) => a[(9 * i) + j]);
            var lower = whole.SubMatrix(3, 6, 3, 6);
            if (lower.ConditionNumber() > 1e4)
            {
                return;
            }

            var expected = whole.SubMatrix(0, 3, 0, 3) - (whole.SubMatrix(0, 3, 3, 6) * lower.Solve(whole.SubMatrix(3, 6, 0, 3)));
            double[] condensed = [.. a];
            Elimination.Condense(condensed, 9, 3);
            for (var i = 0; i < 3; i++)
            {
                for (var j = 0; j < 3; j++)
                {
                    Assert.Equal(expected[i, j], condensed[(9 * i) + j], 1e-9 * Math.Max(1.0, expected.InfinityNorm()));
                }
            }
        }, iter: 300);
    }

    [Fact]
    public void A_singular_matrix_gives_nothing_finite()
    {
        double[] x = [1.0, 2.0];
        Elimination.Solve([1.0, 2.0, 2.0, 4.0], x);
        Assert.DoesNotContain(x, double.IsFinite);
    }
}
