using CsCheck;
using Heaveline.Quantities;

namespace Heaveline.Tests.Quantities;

public class QuantityFormatTests
{
    private static readonly Gen<double> Numbers = Gen.Select(
        Gen.Double[-10.0, 10.0], Gen.Int[-30, 30], (mantissa, ten) => mantissa * Math.Pow(10.0, ten));

    [Theory]
    [InlineData(24517.7569, 0.0, "N/mm", 4, "24.52 N/mm")]
    [InlineData(24517.7569, 1200.0, "N/mm", 4, "24.52 ± 1.2 N/mm")]
    [InlineData(24517.7569, 0.0, "lbf/in", 4, "140 lbf/in")]
    [InlineData(24517.7569, 0.0, "N/m", 4, "24520 N/m")]
    [InlineData(24517.7569, 0.0, "N/m", 9, "24517.7569 N/m")]
    [InlineData(-0.00012, 0.0, "N/m", 4, "-0.00012 N/m")]
    [InlineData(1.5e-9, 0.0, "N/m", 4, "1.5e-9 N/m")]
    [InlineData(0.0, 0.0, "N/m", 4, "0 N/m")]
    public void A_spring_rate_is_written(double si, double doubt, string unit, int digits, string text) =>
        Assert.Equal(text, QuantityText.Format(new Amount<Stiffness>(si, new Doubt(doubt)), unit, digits));

    [Fact]
    public void A_plain_number_is_written_with_or_without_per_cent()
    {
        var amount = new Amount<Plain>(0.25, new Doubt(0.02));
        Assert.Equal("25 % ± 2", QuantityText.Format(amount, "%"));
        Assert.Equal("0.25 ± 0.02", QuantityText.Format(amount, ""));
    }

    [Fact]
    public void What_is_written_reads_back_to_the_digits_written() =>
        Gen.Select(Numbers, Numbers, Gen.Int[1, 17], OneOf("N/mm", "N/m", "kN/m", "kgf/mm", "lbf/in")).Sample((value, doubt, digits, unit) =>
        {
            var amount = new Amount<Stiffness>(value, new Doubt(Math.Abs(doubt)));
            var text = QuantityText.Format(amount, unit, digits);
            var read = QuantityText.Parse<Stiffness>(text);
            Assert.True(read.IsRead, text);

            // Half a step of the last digit, and a few roundings of the unit's factor.
            var tolerance = (5.0 * Math.Pow(10.0, -digits)) + 1e-15;
            Assert.True(Math.Abs(read.Amount.Si - value) <= tolerance * Math.Abs(value), text);
            Assert.True(Math.Abs(read.Amount.Doubt.HalfWidth - Math.Abs(doubt)) <= tolerance * Math.Abs(doubt), text);
        });

    [Fact]
    public void What_was_read_is_written_as_the_same_text_again() =>
        Gen.Select(Numbers, Numbers, Gen.Int[1, 14], OneOf("", "%")).Sample((value, doubt, digits, unit) =>
        {
            var text = QuantityText.Format(new Amount<Plain>(value, new Doubt(Math.Abs(doubt))), unit, digits);
            Assert.Equal(text, QuantityText.Format(QuantityText.Parse<Plain>(text).Amount, unit, digits));
        });

    [Fact]
    public void Any_text_is_read_or_refused_inside_itself_and_never_throws() =>
        Gen.OneOf(Gen.String, Gen.String["0123456789.,eE+-±%/ ()^²³⁻·*'\"mkgNsdfintlbrad"]).Sample(text =>
        {
            var parsed = QuantityText.Parse<Stiffness>(text);
            if (parsed.Refusal is { } refusal)
            {
                Assert.InRange(refusal.Start, 0, text.Length);
                Assert.InRange(refusal.Length, text.Length == 0 ? 0 : 1, Math.Max(1, text.Length));
                Assert.EndsWith(".", refusal.Message, StringComparison.Ordinal);
            }
            else
            {
                var (si, doubt) = (parsed.Amount.Si, parsed.Amount.Doubt.HalfWidth);
                Assert.True(double.IsFinite(si) && doubt >= 0.0 && double.IsFinite(doubt * doubt), text);
                Assert.True(si == 0.0 || double.IsFinite(In.Percent.Of(doubt / Math.Abs(si))), text);
            }
        });

    [Fact]
    public void What_cannot_be_written_is_an_argument_error()
    {
        Assert.Throws<ArgumentException>(() => QuantityText.Format(new Amount<Mass>(double.NaN), "kg"));
        Assert.Throws<ArgumentException>(() => QuantityText.Format(new Amount<Mass>(1.0), "mm"));
        Assert.Throws<ArgumentOutOfRangeException>(() => QuantityText.Format(new Amount<Mass>(1.0), "kg", 18));
    }

    private static Gen<string> OneOf(params string[] texts) => Gen.Int[0, texts.Length - 1].Select(i => texts[i]);
}
