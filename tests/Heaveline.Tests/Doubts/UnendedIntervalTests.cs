using Heaveline.Doubts;
using Heaveline.Measures;
using Heaveline.Studies;

namespace Heaveline.Tests.Doubts;

/// <summary>Intervals of numbers that pass through infinity or are looked for up to an end only.</summary>
public class UnendedIntervalTests
{
    private static readonly Measure Centre = RestCatalogue.All.Single(m => m.Key == "first-mode-centre");
    private static readonly Measure FirstStop = SideEffectCatalogue.Of([]).Single(m => m.Key == "braking-first-stop");

    // One over the centre runs evenly from 1/4 through 0 to −1/8 per metre: 5 and 95 % of that way are 1/0.23125 and −1/0.10625 m.
    [Fact]
    public void A_centre_on_both_sides_of_infinity_has_the_interval_of_one_over_it()
    {
        double[] values = [.. Enumerable.Range(0, 10001).Select(i => 1.0 / (0.25 - (0.375 * i / 10000.0))).Where(double.IsFinite)];
        var result = Result(Centre, values);
        Assert.Equal(1.0 / (0.25 - (0.05 * 0.375)), result.Central90.Low, 1e-2);
        Assert.Equal(1.0 / (0.25 - (0.95 * 0.375)), result.Central90.High, 1e-2);
        var words = Assert.Single(DoubtTables.Unended("Driver", [result]));
        Assert.Contains("passes through infinity", words, StringComparison.Ordinal);
        Assert.Contains("above 4.32 m and all below −9.41 m", words, StringComparison.Ordinal);

        // What lies between two cars is a plain number.
        Assert.True(result with { IsChange = true } is { Central90: var change } && change.Low < change.High);
    }

    [Fact]
    public void A_centre_under_the_car_or_on_one_side_has_a_plain_interval()
    {
        foreach (var values in new[] { Even(-0.4, 0.9), Even(2.0, 5.0), Even(-60.0, -3.0) })
        {
            var result = Result(Centre, values);
            Assert.Equal(values[0] + (0.05 * (values[^1] - values[0])), result.Central90.Low, 1e-2);
            Assert.Equal(values[0] + (0.95 * (values[^1] - values[0])), result.Central90.High, 1e-2);
            Assert.Empty(DoubtTables.Unended("Driver", [result]));
        }
    }

    // Evenly between 0.5 and 1.5 g, of which what is above 1 g is not looked for: the lower end is that of all draws, the upper one lies beyond.
    [Fact]
    public void A_stop_that_some_draws_do_not_meet_has_an_interval_that_ends_beyond_one_g()
    {
        const double g = 9.80665;
        double[] values = [.. Even(0.5 * g, 1.5 * g).Select(v => v < g ? v : double.NaN)];
        var result = Result(FirstStop, values);
        Assert.Equal(0.55 * g, result.Central90.Low, 1e-2);
        Assert.Equal(double.PositiveInfinity, result.Central90.High);
        Assert.Equal(5001, result.CountAbove);
        Assert.Equal(
            ["Plain: the braking at which the first stop is met lies beyond 1.00 g in 5001 of 10001 draws; the end of its interval that is left out "
                + "lies beyond 1.00 g."],
            DoubtTables.Unended("Plain", [result]));
        Assert.Empty(DoubtTables.Unended("Plain", [Result(FirstStop, Even(0.2 * g, 0.3 * g))]));
    }

    private static double[] Even(double from, double to) => [.. Enumerable.Range(0, 10001).Select(i => from + ((to - from) * i / 10000.0))];

    private static DoubtResult Result(Measure measure, double[] values) =>
        new() { Measure = measure, Symbol = measure.Unit.Si, Stated = values[0], Values = values, Shares = [] };
}
