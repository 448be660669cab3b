using Heaveline.Quantities;

namespace Heaveline.Tests.Quantities;

public class FractionTests
{
    [Theory]
    [InlineData("310", "mm", "310 mm")]
    [InlineData("310 ± 1", "mm", "310 mm ± 1")]
    [InlineData("310 +/- 1 %", "mm", "310 mm ± 1 %")]
    [InlineData("24.5 ± 0.5 N/mm", "lbf/in", "24.5 ± 0.5 N/mm")]
    [InlineData("2 3/4 ± 1/16", "in", "2.75 in ± 0.0625")]
    [InlineData("0.3 ± 0.1", "", "0.3 ± 0.1")]
    [InlineData("± 1", "mm", "± 1")]
    [InlineData("three ± 1", "mm", "three ± 1")]
    public void A_bare_number_with_a_doubt_is_in_the_unit_beside_its_box(string typed, string unit, string whole) =>
        Assert.Equal(whole, QuantityText.Whole(typed, unit));

    [Theory]
    [InlineData("2 3/4 in", "2.75 in")]
    [InlineData("2-3/4 in", "2.75 in")]
    [InlineData("2¾ in", "2.75 in")]
    [InlineData("5/8\"", "0.625\"")]
    [InlineData("-1 1/2 in ± 1/64 in", "-1.5 in ± 0.015625 in")]
    [InlineData("5 ft 2 3/8 in", "5 ft 2.375 in")]
    [InlineData("7 3/128 in", "7.0234375 in")]
    public void A_fraction_of_an_inch_is_a_decimal_number(string typed, string text) => Assert.Equal(text, Fraction.ToDecimal(typed));

    [Theory]
    [InlineData("24.5 N/mm")]
    [InlineData("0.5 1/m")]
    [InlineData("2 1/3 in")]
    [InlineData("2 4/3 in")]
    [InlineData("1/0 in")]
    [InlineData("1/2/3")]
    [InlineData("0.5/8 in")]
    [InlineData("3/4.5 in")]
    [InlineData("12 lbf s/in")]
    public void What_is_no_such_fraction_stays(string typed) => Assert.Equal(typed, Fraction.ToDecimal(typed));

    [Fact]
    public void Every_mark_of_a_tape_is_exact()
    {
        for (var under = 2; under <= 128; under *= 2)
        {
            for (var over = 1; over < under; over++)
            {
                Assert.Equal(
                    7.0 + ((double)over / under),
                    double.Parse(Fraction.ToDecimal($"7 {over}/{under}"), System.Globalization.CultureInfo.InvariantCulture));
            }
        }
    }
}
