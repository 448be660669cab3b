using Heaveline.Numerics;
using Heaveline.Quantities;
using MathNet.Numerics.LinearAlgebra;

namespace Heaveline.Tests.Numerics;

/// <summary>The matrix exponential on closed forms, at norms that use each degree and many halvings.</summary>
public class MatrixExponentialTests
{
    [Theory]
    [InlineData(0.01)]
    [InlineData(0.2)]
    [InlineData(0.9)]
    [InlineData(2.0)]
    [InlineData(5.0)]
    [InlineData(40.0)]
    public void A_turn_is_its_cosine_and_sine(double angle)
    {
        var turn = MatrixExponential.Of(Matrix<double>.Build.DenseOfArray(new[,] { { 0.0, -angle }, { angle, 0.0 } }));
        Assert.Equal(Math.Cos(angle), turn[0, 0], 2e-14);
        Assert.Equal(Math.Sin(angle), turn[1, 0], 2e-14);
        Assert.Equal(-Math.Sin(angle), turn[0, 1], 2e-14);
    }

    [Theory]
    [InlineData(-30.0)]
    [InlineData(-0.5)]
    [InlineData(0.0)]
    [InlineData(1e-9)]
    [InlineData(3.0)]
    [InlineData(25.0)]
    public void One_number_is_the_ordinary_exponential(double x) =>
        Assert.Equal(1.0, MatrixExponential.Of(Matrix<double>.Build.Dense(1, 1, x))[0, 0] / Math.Exp(x), 1e-13);

    [Fact]
    public void A_nilpotent_matrix_ends_its_series()
    {
        var a = Matrix<double>.Build.DenseOfArray(new[,] { { 0.0, 3.0, 7.0 }, { 0.0, 0.0, 5.0 }, { 0.0, 0.0, 0.0 } });
        var expected = Matrix<double>.Build.DenseIdentity(3) + a + (a * a / 2.0);
        Assert.Equal(0.0, (MatrixExponential.Of(a) - expected).L1Norm(), 1e-13);
    }

    /// <summary>
    /// Moler and Van Loan, Nineteen dubious ways to compute the exponential of a matrix, SIAM Rev. 20 (1978), example 1: eigenvalues −1 and −17.
    /// </summary>
    [Fact]
    public void The_dubious_example_keeps_its_digits()
    {
        var e = MatrixExponential.Of(Matrix<double>.Build.DenseOfArray(new[,] { { -49.0, 24.0 }, { -64.0, 31.0 } }));
        var (slow, fast) = (Math.Exp(-1.0), Math.Exp(-17.0));
        Assert.Equal((-2.0 * slow) + (3.0 * fast), e[0, 0], 1e-12);
        Assert.Equal(1.5 * (slow - fast), e[0, 1], 1e-12);
        Assert.Equal(-4.0 * (slow - fast), e[1, 0], 1e-12);
        Assert.Equal((3.0 * slow) - (2.0 * fast), e[1, 1], 1e-12);
    }

    [Fact]
    public void Only_a_square_matrix_of_finite_numbers_is_accepted()
    {
        Assert.Throws<RefusedValueException>(() => MatrixExponential.Of(Matrix<double>.Build.Dense(2, 3)));
        Assert.Throws<RefusedValueException>(() => MatrixExponential.Of(Matrix<double>.Build.Dense(2, 2, double.NaN)));
    }
}
