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
    public void A_few_equations_have_the_solution_of_a_library()
    {
        Gen.Select(Gen.Int[1, 9], Gen.Double[-1.0, 1.0].Array[90]).Sample((n, numbers) =>
        {
            var matrix = Matrix<double>.Build.Dense(n, n, (i, j) => numbers[(i * n) + j]);
            if (!(matrix.ConditionNumber() < 1e6))
            {
                return;
            }

            var x = numbers[81..(81 + n)];
            var expected = matrix.Solve(Vector<double>.Build.DenseOfArray(x));
            Elimination.Solve(matrix.ToRowMajorArray(), x);
            Assert.True((Vector<double>.Build.DenseOfArray(x) - expected).L2Norm() <= 1e-9 * expected.L2Norm());
        }, iter: 200);
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
        double[] none = [0.0, 0.0];
        Elimination.Solve(new double[4], none);
        Assert.DoesNotContain(none, double.IsFinite);
    }
}
