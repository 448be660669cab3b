using System.Numerics;
using Heaveline.Numerics;

namespace Heaveline.Tests.Numerics;

/// <summary>Against the sum that defines the transform.</summary>
public class RealFourierTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(7)]
    [InlineData(12)]
    [InlineData(64)]
    [InlineData(97)]
    [InlineData(1000)]
    [InlineData(2048)]
    [InlineData(4099)]
    public void The_transform_is_the_sum_that_defines_it(int n)
    {
        var values = Values(n);
        var of = RealFourier.Of(values, TestContext.Current.CancellationToken);
        Assert.Equal((n / 2) + 1, of.Length);
        // All terms are below 1: their sum is known to n roundings, and the root of that is usual.
        var allowed = 1e-14 * Math.Sqrt(n) * Math.Log2(n + 2.0);
        for (var k = 0; k < of.Length; k += Math.Max(1, of.Length / 50))
        {
            Assert.InRange((of[k] - Sum(values, k)).Magnitude, 0.0, allowed);
        }
    }

    // Longer than the parts between two looks at the token, an odd count and twice a prime.
    [Theory]
    [InlineData(100_003)]
    [InlineData(200_006)]
    public void So_is_that_of_many(int n)
    {
        var values = Values(n);
        var of = RealFourier.Of(values, TestContext.Current.CancellationToken);
        foreach (var k in new[] { 0, 1, 2, 777, n / 4, (n / 2) - 1, n / 2 })
        {
            Assert.InRange((of[k] - Sum(values, k)).Magnitude, 0.0, 1e-10);
        }
    }

    [Fact]
    public void It_stops_when_it_is_told_to()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.Throws<OperationCanceledException>(() => RealFourier.Of(Values(300_000), stop.Token));
    }

    private static double[] Values(int n) => [.. Enumerable.Range(0, n).Select(j => Math.Sin(1.7 * j * j % 5.0))];

    private static Complex Sum(double[] values, int k)
    {
        // What each addition loses is carried on (Kahan): plain sums of so many numbers lose more than the transform.
        var (sum, lost) = (Complex.Zero, Complex.Zero);
        for (var j = 0; j < values.Length; j++)
        {
            var (sine, cosine) = Math.SinCos(-2.0 * Math.PI * ((long)j * k % values.Length) / values.Length);
            var term = (values[j] * new Complex(cosine, sine)) - lost;
            var next = sum + term;
            lost = next - sum - term;
            sum = next;
        }

        return sum;
    }
}
