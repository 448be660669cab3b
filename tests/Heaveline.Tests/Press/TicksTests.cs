using CsCheck;
using Heaveline.Figures;
using Heaveline.Press.Scales;

namespace Heaveline.Tests.Press;

public class TicksTests
{
    private static readonly Gen<(double Low, double High, int Most)> Ranges =
        from centre in Gen.Double[-1.0, 1.0]
        from size in Gen.Double[-8.0, 8.0]
        from width in Gen.Double[0.01, 10.0]
        from most in Gen.Int[2, 12]
        let scale = Math.Pow(10.0, size)
        select (centre * scale, centre * scale + width * scale, most);

    [Fact]
    public void Steps_are_one_two_or_five_times_a_power_of_ten() => Ranges.Sample(range =>
    {
        var step = Ticks.Of(range.Low, range.High, range.Most).Step;
        var mantissa = step / Math.Pow(10.0, Math.Floor(Math.Log10(step) + 1e-9));
        Assert.Contains(Math.Round(mantissa, 6), new[] { 1.0, 2.0, 5.0 });
    });

    [Fact]
    public void Ticks_are_whole_steps_inside_the_range_none_missing_and_not_too_many() => Ranges.Sample(range =>
    {
        var ticks = Ticks.Of(range.Low, range.High, range.Most);
        Assert.InRange(ticks.Values.Length, 0, range.Most);
        var grace = 1e-6 * ticks.Step;
        Assert.All(ticks.Values, value =>
        {
            Assert.InRange(value, range.Low - grace, range.High + grace);
            Assert.InRange(Math.Abs(value / ticks.Step - Math.Round(value / ticks.Step)), 0.0, 1e-6);
        });
        // A step that lies on an end of the range but for rounding may be drawn or not; one clearly inside must be, one clearly outside must not.
        double Within(double rounding) => Math.Floor(range.High / ticks.Step + rounding) - Math.Ceiling(range.Low / ticks.Step - rounding) + 1;
        Assert.InRange(ticks.Values.Length, Math.Max(0.0, Within(-1e-7)), Within(1e-7));
    });

    /// <summary>Zero lies 1.3e-9 of a step below this range: nearer than any eye sees, farther than rounding.</summary>
    [Fact]
    public void A_range_that_begins_a_hair_above_a_step_has_the_ticks_inside_it() =>
        Assert.Equal([500.0, 1000.0, 1500.0, 2000.0, 2500.0], Ticks.Of(6.6137e-7, 2887.6, 5).Values);

    [Fact]
    public void The_step_is_the_finest_that_fits() => Ranges.Sample(range =>
    {
        var step = Ticks.Of(range.Low, range.High, range.Most).Step;
        var finer = Math.Round(step / Math.Pow(10.0, Math.Floor(Math.Log10(step) + 1e-9))) == 5.0 ? step / 2.5 : step / 2.0;
        Assert.True(Math.Floor(range.High / finer + 1e-7) - Math.Ceiling(range.Low / finer - 1e-7) + 1 > range.Most);
    });

    [Fact]
    public void A_rounded_range_holds_the_range_and_ends_on_ticks() => Ranges.Sample(range =>
    {
        var (from, to) = Ticks.Rounded(range.Low, range.High, range.Most);
        var grace = 1e-8 * (range.High - range.Low);
        Assert.True(from <= range.Low + grace && to >= range.High - grace);
        Assert.True(to - from <= 25.0 * (range.High - range.Low));
    });

    [Fact]
    public void Three_steps_of_a_tenth_are_the_number_written_0_3() =>
        Assert.Equal([0.0, 0.1, 0.2, 0.3], Ticks.Of(0.0, 0.3, 5).Values);

    [Fact]
    public void A_logarithmic_axis_is_numbered_at_one_two_five_or_at_decades()
    {
        Assert.Equal([0.5, 1.0, 2.0, 5.0, 10.0, 20.0], Ticks.Of(0.3, 30.0, 8, AxisScale.Logarithmic).Values);
        Assert.Equal([1e-8, 1e-7, 1e-6, 1e-5], Ticks.Of(1e-8, 1e-5, 6, AxisScale.Logarithmic).Values);
    }

    [Fact]
    public void Numbers_carry_a_true_minus_a_point_and_the_decimals_of_their_step()
    {
        Assert.Equal(["−0.5", "0.0", "0.5"], Numeral.Of(Ticks.Of(-0.6, 0.6, 4)));
        Assert.Equal(["0", "10\u202f000", "20\u202f000"], Numeral.Of(Ticks.Of(0.0, 20_000.0, 3)));
        Assert.Equal(["0", "5×10⁵", "10⁶"], Numeral.Of(Ticks.Of(0.0, 1e6, 3)));
        Assert.Equal(["10⁻⁴", "10⁻³"], Numeral.Of(Ticks.Of(1e-4, 1e-3, 2, AxisScale.Logarithmic)));
        Assert.Equal("0.0", Numeral.Of(-1e-12, 0.1));
        Assert.Equal("1500", Numeral.Of(1500.0, 100.0));
    }
}
