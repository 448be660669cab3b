using Heaveline.Numerics;

namespace Heaveline.Tests.Numerics;

public class PartingLimitTests
{
    // Above 5.5: three of four of the kind, none of the others; above 3.5: all four, and one of the others.
    [Fact]
    public void The_limit_lies_where_most_are_told_right()
    {
        bool[] isOfKind = [false, false, false, true, false, true, true, true];
        Assert.Equal(new PartingLimit(5.5, 0.75, 0.0), PartingLimit.Of([1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0], isOfKind));
    }

    [Fact]
    public void Equal_readings_are_not_parted()
    {
        Assert.Null(PartingLimit.Of([1.0, 1.0, 1.0, 1.0], [true, false, true, false]));
        Assert.Equal(new PartingLimit(1.5, 1.0, 0.5), PartingLimit.Of([2.0, 2.0, 2.0, 1.0], [true, false, true, false]));
    }

    [Fact]
    public void Fewer_than_one_in_twenty_of_either_kind_tell_nothing()
    {
        double[] readings = [.. Enumerable.Range(0, 41).Select(i => (double)i)];
        Assert.Null(PartingLimit.Of(readings, [.. readings.Select(r => r > 38.0)]));
        Assert.NotNull(PartingLimit.Of(readings, [.. readings.Select(r => r > 37.0)]));
    }
}
