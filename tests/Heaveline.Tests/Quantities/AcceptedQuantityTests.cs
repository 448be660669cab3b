using Heaveline.Quantities;

namespace Heaveline.Tests.Quantities;

public class AcceptedQuantityTests
{
    [Theory]
    [InlineData("24.5 N/mm", 24500.0)]
    [InlineData("24.5N/mm", 24500.0)]
    [InlineData("  24.5   N / mm  ", 24500.0)]
    [InlineData("24.5\u00A0N/mm", 24500.0)]
    [InlineData("24 kN/m", 24000.0)]
    [InlineData("2.5 kgf/mm", 24516.625)]
    [InlineData("+.5 N/mm", 500.0)]
    [InlineData("-20 N/mm", -20000.0)]
    [InlineData("−20 N/mm", -20000.0)]
    [InlineData("2.45e4 N/m", 24500.0)]
    [InlineData("24500 kg/s^2", 24500.0)]
    [InlineData("24500 kg s⁻²", 24500.0)]
    [InlineData("24500 kg s^-2", 24500.0)]
    public void A_spring_rate_is_read(string text, double si)
    {
        var parsed = QuantityText.Parse<Stiffness>(text);
        Assert.Null(parsed.Refusal);
        Assert.Equal(si, parsed.Amount.Si, 1e-9);
        Assert.False(parsed.Amount.Doubt.IsStated);
    }

    [Theory]
    [InlineData("1.8e3 N s/m")]
    [InlineData("1800 N·s/m")]
    [InlineData("1800 N*s/m")]
    [InlineData("1.8 N s/mm")]
    [InlineData("1800 kg/s")]
    public void A_damping_rate_is_read(string text) => Assert.Equal(1800.0, QuantityText.Parse<DampingRate>(text).Amount.Si, 1e-9);

    [Theory]
    [InlineData("1800 kg m2")]
    [InlineData("1800 kg m^2")]
    [InlineData("1800 kg m²")]
    [InlineData("1800 kg·m²")]
    [InlineData("1800 N m s2")]
    public void A_moment_of_inertia_is_read(string text) => Assert.Equal(1800.0, QuantityText.Parse<Inertia>(text).Amount.Si);

    [Theory]
    [InlineData("5 ft 3 in", 1.6002)]
    [InlineData("5'3\"", 1.6002)]
    [InlineData("-5 ft 3 in", -1.6002)]
    [InlineData("3.5\"", 0.0889)]
    [InlineData("3.5 inch", 0.0889)]
    [InlineData("9 mm", 0.009)]
    [InlineData("2.6 m", 2.6)]
    public void A_length_is_read(string text, double si) => Assert.Equal(si, QuantityText.Parse<Length>(text).Amount.Si, 1e-15);

    [Fact]
    public void Other_dimensions_are_read()
    {
        Assert.Equal(300.0 * 180.0 / Math.PI, QuantityText.Parse<AngularStiffness>("300 Nm/deg").Amount.Si, 1e-9);
        Assert.Equal(3.0, QuantityText.Parse<Acceleration>("3 m/s2").Amount.Si);
        Assert.Equal(3.0, QuantityText.Parse<Acceleration>("3 m/s^2").Amount.Si);
        Assert.Equal(0.3 * 9.80665, QuantityText.Parse<Acceleration>("0.3 g").Amount.Si, 1e-15);
        Assert.Equal(0.002, QuantityText.Parse<RatioPerLength>("0.002 1/m").Amount.Si);
        Assert.Equal(1.0, QuantityText.Parse<RatioPerLength>("1/m").Amount.Si);
        Assert.Equal(0.1, QuantityText.Parse<SpatialFrequency>("0.1 cycles/m").Amount.Si);
        Assert.Equal(2e-11, QuantityText.Parse<Compliance>("2 cm³/bar").Amount.Si, 1e-25);
        Assert.Equal(1.2, QuantityText.Parse<Frequency>("72 cpm").Amount.Si, 1e-15);
        Assert.Equal(60.0 / 3.6, QuantityText.Parse<Velocity>("60 kph").Amount.Si, 1e-14);
        Assert.Equal(10.0, QuantityText.Parse<Velocity>("36 km/h").Amount.Si, 1e-14);
        Assert.Equal(0.0004, QuantityText.Parse<Volume>("0.4 L").Amount.Si, 1e-18);
        Assert.Equal(0.03, QuantityText.Parse<Viscosity>("30 mPa s").Amount.Si, 1e-17);
        Assert.Equal(317.5146590, QuantityText.Parse<Mass>("700 lb").Amount.Si, 1e-9);
        Assert.Equal(0.25, QuantityText.Parse<Plain>("25 %").Amount.Si);
        Assert.Equal(0.62, QuantityText.Parse<Plain>("0.62").Amount.Si);
        Assert.Equal(0.62, QuantityText.Parse<Plain>("0.62 mm/mm").Amount.Si, 1e-15);
        Assert.Equal(24517.75693, QuantityText.Parse<DampingRate>("140 lb s/in").Amount.Si, 1e-4);
    }

    [Theory]
    [InlineData("318 kg +/- 1", 1.0)]
    [InlineData("318 kg +- 1", 1.0)]
    [InlineData("318 kg ± 1 kg", 1.0)]
    [InlineData("318 ± 1 kg", 1.0)]
    [InlineData("318 kg ± 500 g", 0.5)]
    [InlineData("318 kg±5%", 15.9)]
    [InlineData("-318 kg ± 5 %", 15.9)]
    [InlineData("318 kg ± 0", 0.0)]
    public void A_doubt_is_read(string text, double halfWidth) =>
        Assert.Equal(halfWidth, QuantityText.Parse<Mass>(text).Amount.Doubt.HalfWidth, 1e-12);

    [Theory]
    [InlineData("0.25 ± 8 %", 0.02)]
    [InlineData("25 % ± 2", 0.02)]
    [InlineData("0.25 ± 0.02", 0.02)]
    public void A_doubt_of_a_plain_number_is_read(string text, double halfWidth) =>
        Assert.Equal(halfWidth, QuantityText.Parse<Plain>(text).Amount.Doubt.HalfWidth, 1e-15);

    [Theory]
    [InlineData("0,64 m", 0.64, 0.005)]
    [InlineData("0,640 m", 0.64, 0.0005)]
    [InlineData("-24,5 mm", -0.0245, 0.00005)]
    [InlineData("1,5e1 mm ± 0,5", 0.015, 0.0005)]
    [InlineData("12 mm", 0.012, 0.0005)]
    [InlineData("5 ft 3 in", 1.6002, 0.0127)]
    public void A_decimal_comma_is_a_point_and_a_value_has_a_last_digit(string text, double metres, double halfDigit)
    {
        var read = QuantityText.Parse<Length>(text);
        Assert.True(read.IsRead, read.Refusal?.Message);
        Assert.Equal(metres, read.Amount.Si, 1e-12);
        Assert.Equal(halfDigit, QuantityText.HalfLastDigit<Length>(text)!.Value, 1e-12);
    }
}
