using Heaveline.Quantities;

namespace Heaveline.Tests.Quantities;

public class NumeralTests
{
    [Theory]
    [InlineData(-1.25, "F1", "−1.2")]
    [InlineData(-0.004, "F2", "0.00")]
    [InlineData(-0.0, "F0", "0")]
    [InlineData(-0.00004, "0.####", "0")]
    [InlineData(0.006, "F2", "0.01")]
    [InlineData(-1e-7, "G4", "−1E−07")]
    public void A_minus_is_a_true_minus_and_nothing_has_none(double value, string format, string text) =>
        Assert.Equal(text, Numeral.Of(value, format));

    [Theory]
    [InlineData(0.26, "+0.3")]
    [InlineData(-0.26, "−0.3")]
    [InlineData(0.04, "0.0")]
    public void A_change_has_its_sign_unless_it_is_none(double value, string text) => Assert.Equal(text, Numeral.Change(value, 1));

    // The units that texts are read in (NIST SP 811) against those that numbers are shown in: two tables, one meaning.
    [Theory]
    [InlineData(nameof(In.Degrees), "deg")]
    [InlineData(nameof(In.KilometresPerHour), "km/h")]
    [InlineData(nameof(In.Millimetres), "mm")]
    [InlineData(nameof(In.Bar), "bar")]
    [InlineData(nameof(In.Megapascals), "MPa")]
    [InlineData(nameof(In.NewtonsPerMillimetre), "N/mm")]
    [InlineData(nameof(In.NewtonMetresPerDegree), "N m/deg")]
    [InlineData(nameof(In.DegreesPerSecond), "deg/s")]
    [InlineData(nameof(In.Percent), "%")]
    public void A_number_is_shown_in_the_unit_that_it_could_be_read_in(string unit, string symbol)
    {
        var shown = (ShownUnit)typeof(In).GetProperty(unit)!.GetValue(null)!;
        Assert.Equal(1.0, shown.Of(Units.Of(symbol).Factor), 1e-15);
        Assert.Equal(Units.Of(symbol).Factor, shown.ToSi(1.0), 1e-12 * Units.Of(symbol).Factor);
    }

    [Fact]
    public void A_load_of_one_kilogram_is_what_standard_gravity_makes_of_it() =>
        Assert.Equal(1.0, In.KilogramsOfLoad.Of(Heaveline.Models.Gravity.Standard), 1e-15);
}
