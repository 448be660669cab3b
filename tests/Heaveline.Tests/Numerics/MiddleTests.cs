using Heaveline.Numerics;

namespace Heaveline.Tests.Numerics;

public class MiddleTests
{
    // Sorted, as the median is defined; many values alike, few, all alike.
    [Theory]
    [InlineData(1, 100)]
    [InlineData(2, 100)]
    [InlineData(64, 3)]
    [InlineData(65, 100)]
    [InlineData(1000, 4)]
    [InlineData(1001, 1)]
    [InlineData(5000, 1_000_000)]
    public void The_median_is_that_of_the_sorted_values(int count, int different)
    {
        for (ulong seed = 1; seed <= 20; seed++)
        {
            double[] values = [.. Enumerable.Range(0, count).Select(i => Math.Floor(different * SplitMix.Uniform(seed, (ulong)i)))];
            double[] sorted = [.. values.Order()];
            Assert.Equal(0.5 * (sorted[(count - 1) / 2] + sorted[count / 2]), Middle.Of(values));
        }
    }
}
