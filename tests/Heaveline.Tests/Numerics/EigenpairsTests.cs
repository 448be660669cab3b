using System.Numerics;
using CsCheck;
using Heaveline.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace Heaveline.Tests.Numerics;

public class EigenpairsTests
{
    [Fact]
    public void Eigenvalues_sum_to_the_trace_and_multiply_to_the_determinant()
    {
        Gen.Double[-10.0, 10.0].Array[36].Sample(entries =>
        {
            var a = Matrix<double>.Build.Dense(6, 6, entries);
            var values = Eigenpairs.Of(a).Values;
            var sum = values.Aggregate(Complex.Zero, (s, v) => s + v);
            var product = values.Aggregate(Complex.One, (s, v) => s * v);
            Assert.Equal(a.Trace(), sum.Real, 1e-9);
            Assert.Equal(0.0, sum.Imaginary, 1e-9);
            Assert.Equal(a.Determinant(), product.Real, 1e-8 * Math.Max(1.0, Math.Abs(a.Determinant())) * 100.0);
        }, iter: 200);
    }

    [Fact]
    public void A_matrix_in_mixed_units_has_the_eigenvalues_of_the_same_matrix_in_one_unit()
    {
        var a = Matrix<double>.Build.DenseOfArray(new[,] { { -1.0, 2.0, 0.5 }, { -3.0, -1.5, 1.0 }, { 0.2, -0.7, -4.0 } });
        double[] units = [1.0, 1e-9, 1e9];
        var mixed = Matrix<double>.Build.Dense(3, 3, (i, j) => a[i, j] * units[i] / units[j]);
        var (one, other) = (Eigenpairs.Of(a), Eigenpairs.Of(mixed));
        for (var k = 0; k < 3; k++)
        {
            Assert.Contains(other.Values, v => (v - one.Values[k]).Magnitude < 1e-10);
        }
    }

    [Fact]
    public void A_matrix_that_holds_no_number_is_refused_by_name()
    {
        var a = Matrix<double>.Build.DenseIdentity(4);
        a[1, 2] = double.NaN;
        Assert.Contains("not finite", Assert.Throws<ArithmeticException>(() => Eigenpairs.Of(a)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Repeated_roots_are_found_too()
    {
        // Critical damping: (λ + 3)² = 0.
        var a = Matrix<double>.Build.DenseOfArray(new[,] { { 0.0, 1.0 }, { -9.0, -6.0 } });
        Assert.All(Eigenpairs.Of(a).Values, v => Assert.True((v + 3.0).Magnitude < 1e-6));
    }
}
