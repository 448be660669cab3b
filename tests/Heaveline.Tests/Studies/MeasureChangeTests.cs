using Heaveline.Measures;
using Heaveline.Studies;

namespace Heaveline.Tests.Studies;

public class MeasureChangeTests
{
    private static readonly Measure Margin =
        WheelCatalogue.Of(WheelPlace.Axles(true)[1]).Single(one => one.Key.EndsWith("-bump-margin", StringComparison.Ordinal));

    [Theory]
    [InlineData(-26.0, -24.0, "better: 2\u00a0mm more")]
    [InlineData(-25.6, -25.4, "better: 0.2\u00a0mm more")]
    [InlineData(-26.4, -24.6, "better: 1.8\u00a0mm more")]
    [InlineData(10.4, 7.6, "worse: 2.8\u00a0mm less")]
    [InlineData(-25.4, -25.3, "as before")]
    [InlineData(-25.501, -25.499, "as before")]
    public void A_change_is_what_lies_between_the_printed_values_or_has_a_digit_more(double before, double after, string words) =>
        Assert.Equal(words, new MeasureChange(Margin, before, after).Words);

    [Fact]
    public void Nothing_is_better_by_nothing()
    {
        for (var before = -30.0; before < 30.0; before += 0.37)
        {
            for (var difference = -3.0; difference < 3.0; difference += 0.07)
            {
                var words = new MeasureChange(Margin, before, before + difference).Words;
                Assert.True(words == "as before" || words.AsSpan().ContainsAnyInRange('1', '9'), $"{before} to {before + difference}: {words}");
            }
        }
    }
}
