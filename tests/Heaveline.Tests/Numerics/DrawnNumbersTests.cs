using Heaveline.Numerics;

namespace Heaveline.Tests.Numerics;

public class DrawnNumbersTests
{
    [Fact]
    public void A_quantile_is_straight_between_neighbours_from_the_least_to_the_greatest()
    {
        // Hyndman and Fan 1996, definition 6, by hand: h = 0.75·(5 + 1) = 4.5, between the fourth and the fifth; 0.9·6 = 5.4 is past the greatest.
        double[] values = [5.0, 1.0, 2.0, 4.0, 3.0];
        Assert.Equal(4.5, DrawnNumbers.Quantile(values, 0.75), 12);
        Assert.Equal(5.0, DrawnNumbers.Quantile(values, 0.9), 12);
        Assert.Equal(1.0, DrawnNumbers.Quantile(values, 0.0));
        Assert.Equal(5.0, DrawnNumbers.Quantile(values, 1.0));
        Assert.Equal(3.0, DrawnNumbers.Quantile(values, 0.5));
        Assert.Equal(7.0, DrawnNumbers.Quantile([7.0], 0.9));
    }

    [Fact]
    public void Mean_and_deviation_are_the_plain_ones()
    {
        Assert.Equal(3.0, DrawnNumbers.Mean([1.0, 2.0, 6.0]), 12);
        Assert.Equal(Math.Sqrt((4.0 + 1.0 + 9.0) / 2.0), DrawnNumbers.Deviation([1.0, 2.0, 6.0]), 12);
        Assert.Equal(0.0, DrawnNumbers.Deviation([4.0]));
    }

    [Fact]
    public void A_counted_share_has_an_interval_that_stays_within_nought_and_one()
    {
        // Wilson's score interval worked by hand for 9 of 10, z = 1.645: (0.9 + 0.1353)/1.2706 ± 1.645/1.2706·√(0.009 + 0.00676).
        var nine = WilsonInterval.Of(9, 10);
        Assert.Equal(0.6523, nine.Low, 3);
        Assert.Equal(0.9773, nine.High, 3);
        Assert.Equal(1.0, WilsonInterval.Of(20, 20).High);
        Assert.Equal(0.0, WilsonInterval.Of(0, 20).Low);
        Assert.InRange(WilsonInterval.Of(200, 200).Low, 0.98, 0.99);
    }

    [Fact]
    public void The_interval_of_a_share_holds_it_nine_times_in_ten()
    {
        // Counts of 60 draws jump, so that one share is held a little oftener and another less often: over many shares it is nine in ten.
        var held = 0;
        for (var trial = 0; trial < 8000; trial++)
        {
            var seed = SplitMix.At(11, (ulong)trial);
            var share = 0.5 + (0.45 * SplitMix.Uniform(seed, 1000UL));
            var count = Enumerable.Range(0, 60).Count(i => SplitMix.Uniform(seed, (ulong)i) < share);
            var interval = WilsonInterval.Of(count, 60);
            held += interval.Low <= share && share <= interval.High ? 1 : 0;
        }

        Assert.InRange(held / 8000.0, 0.885, 0.915);
    }
}
