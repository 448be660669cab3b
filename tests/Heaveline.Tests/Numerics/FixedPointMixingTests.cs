using CsCheck;
using Heaveline.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace Heaveline.Tests.Numerics;

public class FixedPointMixingTests
{
    [Fact]
    public void A_straight_map_is_solved_in_one_turn_more_than_it_has_unknowns()
    {
        // y = A·y + b with ‖A‖ < 1: mixing is GMRES [Walker and Ni] and has the solution after n + 1 turns.
        Gen.Double[-3.0, 3.0].Array[12].Sample(numbers =>
        {
            var matrix = Matrix<double>.Build.Dense(3, 3, numbers[..9]);
            matrix *= 0.9 / Math.Max(1.0, matrix.L2Norm());
            var right = Vector<double>.Build.Dense(numbers[9..]);
            var system = Matrix<double>.Build.DenseIdentity(3) - matrix;
            var expected = system.Solve(right);
            var mixing = new FixedPointMixing(3, 5);
            var y = new double[3];
            for (var turn = 0; turn < 5; turn++)
            {
                mixing.Next(y, ((matrix * Vector<double>.Build.DenseOfArray(y)) + right).ToArray());
            }

            Assert.True((Vector<double>.Build.DenseOfArray(y) - expected).L2Norm() <= 1e-6 * (1.0 + expected.L2Norm()), $"{expected}");
        }, iter: 200);
    }

    [Fact]
    public void A_cosine_meets_its_fixed_point()
    {
        // The Dottie number, cos y = y: 0.739085133215160642 (OEIS A003957).
        var mixing = new FixedPointMixing(1, 3);
        double[] y = [0.0];
        for (var turn = 0; turn < 8; turn++)
        {
            mixing.Next(y, [Math.Cos(y[0])]);
        }

        Assert.Equal(0.739085133215160642, y[0], 1e-14);
    }
}
