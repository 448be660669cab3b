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

    [Theory]
    [InlineData(1.18234, 0.0612, 3, "1.182", "0.061")]
    [InlineData(1.18234, 0.0612, 1, "1.18", "0.06")]
    [InlineData(7277.4, 20.3, 0, "7277", "20")]
    [InlineData(-0.5, 0.25, 2, "−0.50", "0.25")]
    [InlineData(7277.4, 203.0, 0, "7277", "203")]
    [InlineData(1.18234, 0.0, 3, "1.182", null)]
    [InlineData(1.18234, 0.0004, 3, "1.182", null)]
    [InlineData(1.18234, double.NaN, 3, "1.182", null)]
    [InlineData(double.NaN, 0.1, 3, "–", null)]
    public void A_value_ends_where_its_doubt_ends(double value, double doubt, int digits, string printed, string? beside) =>
        Assert.Equal((printed, beside), Numeral.Of(value, doubt, digits));

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
        Assert.Equal(1.0, In.KilogramsOfLoad.Of(Heaveline.Elements.Gravity.Standard), 1e-15);

    [Theory]
    [InlineData("1.5E+04 kg", "15000 kg")]
    [InlineData("between 1 and 1E+09 m", "between 1 and 1000000000 m")]
    [InlineData("1E+300 m", "1E+300 m")]
    [InlineData("4.2 m", "4.2 m")]
    public void Powers_of_ten_are_written_as_the_numbers_beside_them(string text, string plain)
    {
        Assert.Equal(plain, Numeral.WithoutPowers(text));
        Assert.Equal(plain, new RefusedValueException("value", text, text, "No.").Value);
    }

    [Theory]
    [InlineData(0.0, "0.000")]
    [InlineData(0.00042, "< 0.001")]
    [InlineData(0.001, "0.001")]
    [InlineData(0.0312, "0.031")]
    public void A_chance_below_the_last_decimal_is_not_written_as_none(double value, string text) => Assert.Equal(text, Numeral.Of(value, "<F3"));
}
