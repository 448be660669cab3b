using Heaveline.Quantities;

namespace Heaveline.Tests.Quantities;

/// <summary>
/// Sizes of units. Exact ones: international yard and pound agreement of 1959 (yard 0.9144 m, pound 0.45359237 kg), standard gravity of the
/// 3rd CGPM 1901 (9.80665 m/s²), SI Brochure 9th edition tables 7 and 8 (min, h, deg, L, t, bar as 10^5 Pa).
/// Rounded ones: those of NIST SP 811 (2008) appendix B.8 to seven digits, worked out from the exact ones above.
/// </summary>
public class UnitFactorTests
{
    [Theory]
    [InlineData("in", 0.0254)]
    [InlineData("ft", 0.3048)]
    [InlineData("yd", 0.9144)]
    [InlineData("mile", 1609.344)]
    [InlineData("lb", 0.45359237)]
    [InlineData("oz", 0.028349523125)]
    [InlineData("lbf", 4.4482216152605)]
    [InlineData("kgf", 9.80665)]
    [InlineData("min", 60.0)]
    [InlineData("h", 3600.0)]
    [InlineData("L", 0.001)]
    [InlineData("cc", 1e-6)]
    [InlineData("t", 1000.0)]
    [InlineData("bar", 1e5)]
    [InlineData("P", 0.1)]
    [InlineData("mph", 0.44704)]
    [InlineData("N/mm", 1000.0)]
    [InlineData("mm³", 1e-9)]
    [InlineData("%", 0.01)]
    public void An_exact_factor_is_the_nearest_double(string symbol, double factor) => Assert.Equal(factor, Units.Of(symbol).Factor);

    [Theory]
    [InlineData("lbf/in", 1.751268e2)]
    [InlineData("psi", 6.894757e3)]
    [InlineData("slug", 1.459390e1)]
    [InlineData("lb ft²", 4.214011e-2)]
    [InlineData("lbf ft", 1.355818)]
    [InlineData("deg", 1.745329e-2)]
    public void A_printed_factor_is_met_to_its_seven_digits(string symbol, double printed) =>
        Assert.InRange(Units.Of(symbol).Factor / printed, 1.0 - 5e-7, 1.0 + 5e-7);

    [Fact]
    public void Pound_force_per_inch_is_the_pound_times_standard_gravity_per_inch()
    {
        // 140 × 0.45359237 × 9.80665 / 0.0254 = 24517.7569...
        Assert.Equal(140.0 * 0.45359237 * 9.80665 / 0.0254, QuantityText.Parse<Stiffness>("140 lbf/in").Amount.Si, 1e-9);
        Assert.Equal(24517.7569, QuantityText.Parse<Stiffness>("140 lb/in").Amount.Si, 5e-5);
    }

    [Fact]
    public void A_symbol_with_two_meanings_is_taken_as_the_dimension_asks()
    {
        Assert.Equal(0.45359237, Units.Of<Mass>("lb").Factor);
        Assert.Equal(4.4482216152605, Units.Of<Force>("lb").Factor);
        Assert.Equal(0.001, Units.Of<Mass>("g").Factor);
        Assert.Equal(9.80665, Units.Of<Acceleration>("g").Factor);
        Assert.Equal(1.0 / 60.0, Units.Of<Frequency>("rpm").Factor);
        // NIST SP 811 B.8: revolution per minute 1.047198 E-01 rad/s.
        Assert.Equal(0.1047198, Units.Of<AngularRate>("rpm").Factor, 5e-8);
    }

    [Fact]
    public void Every_fitting_unit_has_its_dimension()
    {
        Assert.All(Units.Fitting<Stiffness>(), symbol => Assert.Equal(Stiffness.Exponents, Units.Of<Stiffness>(symbol).Exponents));
        Assert.All(KnownDimensions.All, known => Assert.All(known.Symbols.Where(s => s.Length > 0), symbol =>
        {
            var cursor = new TextCursor(symbol);
            Assert.NotNull(UnitText.Read(cursor)!.Resolve(known.Exponents));
            Assert.True(cursor.AtEnd);
        }));
        Assert.Equal("N/mm", Units.Fitting<Stiffness>()[0]);
    }

    [Fact]
    public void Every_dimension_is_known_by_name_and_has_a_readable_si_symbol()
    {
        var dimensions = typeof(IDimension).Assembly.GetTypes().Where(t => t.IsValueType && t.IsAssignableTo(typeof(IDimension))).ToList();
        Assert.NotEmpty(dimensions);
        foreach (var type in dimensions)
        {
            string Text(string property) => (string)type.GetProperty(property)!.GetValue(null)!;
            var exponents = (Exponents)type.GetProperty("Exponents")!.GetValue(null)!;
            Assert.Contains(KnownDimensions.All, known => known.Name == Text("Name") && known.Exponents == exponents);
            if (Text("Symbol").Length > 0)
            {
                Assert.Equal(1.0, UnitText.Read(new TextCursor(Text("Symbol")))!.Resolve(exponents)!.Factor);
            }
        }
    }

    [Theory]
    [InlineData("furlong")]
    [InlineData("")]
    [InlineData("N/m s")]
    [InlineData("20 mm")]
    public void What_is_no_unit_is_an_argument_error(string symbol) => Assert.Throws<ArgumentException>(() => Units.Of(symbol));

    [Fact]
    public void A_unit_of_another_dimension_is_an_argument_error() => Assert.Throws<ArgumentException>(() => Units.Of<Mass>("mm"));
}
