using CsCheck;
using Heaveline.Files.Cars;
using Heaveline.Files.Forms;

namespace Heaveline.Tests.Files.Forms;

public class QuantityFormTests
{
    private static readonly QuantityForm Rate = CarFile.Form.At("front", "spring", "rate")!.Quantity!;
    private static readonly QuantityForm Length = CarFile.Form.At("wheelbase")!.Quantity!;
    private static readonly QuantityForm Plain = CarFile.Form.At("headlamp", "drop")!.Quantity!;

    [Theory]
    [InlineData("24.50 N/mm ± 5 %", "24.50", "N/mm", "5 %")]
    [InlineData(" 24.5N/mm+/-0.5 ", "24.5", "N/mm", "0.5")]
    [InlineData("24.5 ± 0.5 N/mm", "24.5", "N/mm", "0.5")]
    [InlineData("140 lbf/in", "140", "lbf/in", "")]
    [InlineData("2.5e1 N/mm +- 500 N/m", "2.5e1", "N/mm", "500 N/m")]
    [InlineData("−25 N/mm", "−25", "N/mm", "")]
    [InlineData("24,5 N/mm ± 0,5 %", "24,5", "N/mm", "0,5 %")]
    [InlineData("24,5 ± 0,5 N/mm", "24,5", "N/mm", "0,5")]
    public void A_rate_comes_apart_as_typed_and_together_again(string text, string number, string unit, string doubt)
    {
        var parts = Rate.Split(text);
        Assert.Equal((number, unit, doubt), (parts.Number, parts.Unit, parts.Doubt));
        var again = Rate.Split(parts.Text);
        Assert.Equal(parts, again);
        Assert.NotEqual(0.0, again.Si);
    }

    [Fact]
    public void Feet_and_inches_become_feet_and_a_bad_text_its_refusal()
    {
        Assert.Equal("5.25 ft ± 1 %", Length.Split("5 ft 3 in ± 1 %").Text);
        var bad = Length.Split("2.7");
        Assert.Equal("2.7 has no unit; a length is wanted, e.g. 2.7 mm.", bad.Refusal!.Message);
        Assert.Same(bad, Length.Convert(bad, "in"));
    }

    [Theory]
    [InlineData("140 lbf/in ± 5 %", "N/mm", "24.52 N/mm ± 5 %")]
    [InlineData("24.52 N/mm ± 0.5", "lbf/in", "140.01 lbf/in ± 2.9")]
    [InlineData("24.5 ± 0.5 N/mm", "N/m", "24500 N/m ± 500")]
    [InlineData("24,5 N/mm ± 0,5", "N/m", "24500 N/m ± 500")]
    [InlineData("20 N/mm ± 300 N/m", "kN/m", "20 kN/m ± 300 N/m")]
    public void A_rate_in_another_unit_keeps_its_digits_and_its_doubt(string text, string unit, string converted) =>
        Assert.Equal(converted, Rate.Convert(Rate.Split(text), unit).Text);

    [Theory]
    [InlineData("1 in", "mm", "25.4 mm")]
    [InlineData("2.700 m ± 5 mm", "ft", "8.8583 ft ± 5 mm")]
    [InlineData("2.7 m", "in", "106.3 in")]
    public void A_length_in_another_unit_keeps_its_digits_and_its_doubt(string text, string unit, string converted) =>
        Assert.Equal(converted, Length.Convert(Length.Split(text), unit).Text);

    [Theory]
    [InlineData("0.25 ± 8 %", "%", "25 % ± 2")]
    [InlineData("25 % ± 2", "", "0.25 ± 0.02")]
    [InlineData("0.012", "%", "1.2 %")]
    [InlineData("1.61 ± 0.02", "%", "161 % ± 2")]
    public void A_plain_number_becomes_per_cent_and_back(string text, string unit, string converted) =>
        Assert.Equal(converted, Plain.Convert(Plain.Split(text), unit).Text);

    [Fact]
    public void Any_quantity_in_any_unit_says_the_same_to_the_digits_that_were_written()
    {
        var quantities = CarFile.Form.All.Select(field => field.Quantity).OfType<QuantityForm>().Distinct().ToArray();
        Gen.Select(Gen.Int[0, quantities.Length - 1], Gen.Int[0, 9], Gen.Int[0, 9], Gen.Int[1, 999_999], Gen.Int[-6, 3], Gen.Int[0, 3])
            .Sample((which, from, to, digits, ten, doubt) =>
            {
                var form = quantities[which];
                var (first, second) = (form.Units[from % form.Units.Count], form.Units[to % form.Units.Count]);
                var number = ((decimal)digits * (decimal)Math.Pow(10, ten)).ToString(System.Globalization.CultureInfo.InvariantCulture);
                var text = $"{number} {first.Symbol}".TrimEnd() + doubt switch
                {
                    0 => "",
                    1
                    when first.Symbol != "%" => " ± 5 %",
                    2 => " ± 1",
                    _ => ""
                };
                var parts = form.Split(text);
                Assert.True(parts.Refusal is null, $"{text}: {parts.Refusal?.Message}");
                Assert.Equal(text, parts.Text);
                var other = form.Split(form.Convert(parts, second.Symbol).Text);
                Assert.True(other.Refusal is null, other.Text);

                // Half a digit after the last one written.
                var written = Math.Max(4, digits.ToString(System.Globalization.CultureInfo.InvariantCulture).Length + 1);
                Assert.True(Math.Abs(other.Si - parts.Si) <= 0.5 * Math.Pow(10, 1 - written) * parts.Si * (1 + 1e-9), $"{text} → {other.Text}");
                Assert.True(Math.Abs(other.HalfWidth - parts.HalfWidth) <= 0.06 * parts.HalfWidth + 1e-15, $"{text} → {other.Text}");
            });
    }
}
