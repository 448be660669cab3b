using Heaveline.Measures;
using Heaveline.Studies;

namespace Heaveline.Tests.Studies;

/// <summary>The two-minute test, on cars whose readings are plain numbers.</summary>
public class ToleranceTestTests
{
    private const int Cars = 400;

    private static readonly double[][] Readings =
        [.. Enumerable.Range(0, 5).Select(k => Enumerable.Range(0, Cars).Select(i => (double)(i * (17 + (4 * k)) % Cars) / Cars).ToArray())];

    [Fact]
    public void What_one_reading_says_is_told_by_one_window_with_one_end()
    {
        var test = ToleranceTest.Of(Readings, [.. Readings[1].Select(r => r < 0.25)])!;
        var window = Assert.Single(test.Windows);
        Assert.Equal((WorkshopReading.RearHeight, double.PositiveInfinity), (window.Reading, window.High));
        Assert.InRange(window.Low, 0.24, 0.28);
        Assert.InRange(test.Caught, 0.98, 1.0);
        Assert.InRange(test.Mistaken, 0.0, 0.04);
    }

    [Fact]
    public void Both_ends_of_a_window_and_a_second_reading_are_found()
    {
        var test = ToleranceTest.Of(Readings, [.. Enumerable.Range(0, Cars).Select(i => Readings[0][i] is < 0.2 or > 0.8 || Readings[3][i] > 0.75)])!;
        Assert.Equal([WorkshopReading.FrontHeight, WorkshopReading.FrontSwings], test.Windows.Select(w => w.Reading));
        Assert.All([test.Windows[0].Low, test.Windows[0].High, test.Windows[1].High], end => Assert.True(double.IsFinite(end)));
        Assert.InRange(test.Caught, 0.97, 1.0);
        Assert.InRange(test.Mistaken, 0.0, 0.1);
        Assert.InRange(test.Passed, 0.95, 1.0);
    }

    // Of chance alone what was learned on half of the cars says nothing of the others.
    [Fact]
    public void A_promise_that_no_reading_knows_of_is_not_told()
    {
        var random = new Random(5);
        var test = ToleranceTest.Of(Readings, [.. Enumerable.Range(0, Cars).Select(_ => random.NextDouble() < 0.3)])!;
        Assert.InRange(test.Caught - test.Mistaken, -0.25, 0.25);
    }

    [Fact]
    public void Too_few_of_either_kind_make_no_test()
    {
        Assert.Null(ToleranceTest.Of(Readings, [.. Readings[0].Select(r => r < 0.03)]));
        Assert.Null(ToleranceTest.Of(Readings, [.. Readings[0].Select(r => r < 0.97)]));
    }
}
