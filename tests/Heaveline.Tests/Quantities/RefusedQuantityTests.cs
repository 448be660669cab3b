using Heaveline.Quantities;

namespace Heaveline.Tests.Quantities;

public class RefusedQuantityTests
{
    [Fact]
    public void A_likely_unit_gives_the_example_of_a_refusal_and_changes_nothing_that_is_read()
    {
        Assert.Equal("1.45 has no unit; a length is wanted, e.g. 1.45 m.", QuantityText.Parse<Length>("1.45", "m").Refusal!.Message);
        Assert.Equal("1.45 has no unit; a length is wanted, e.g. 1.45 mm.", QuantityText.Parse<Length>("1.45").Refusal!.Message);
        Assert.Equal("2 kg is a mass; a length is wanted, e.g. 2 m.", QuantityText.Parse<Length>("2 kg", "m").Refusal!.Message);
        Assert.Equal(QuantityText.Parse<Length>("57 in ± 2 cm"), QuantityText.Parse<Length>("57 in ± 2 cm", "m"));
    }

    [Theory]
    [InlineData(
        "1,320 N/m",
        0,
        5,
        "1,320 is not a number here.",
        "A comma before three digits may be a decimal point or mark thousands: write 1320 or 1.320.")]
    [InlineData("1,320,5 N/mm", 0, 7, "1,320,5 is not a number here.", "Write one decimal point and no other mark in the number.")]
    [InlineData("1 320 N/m", 0, 5, "1 320 has a gap in it.", "Write the digits together: 1320.")]
    [InlineData("1_320 N/m", 0, 5, "1_320 is not a number here.", "Write the digits together: 1320.")]
    [InlineData("1.2.3 N/m", 0, 5, "1.2.3 is not a number here.", "Use one decimal point, with a digit after it.")]
    [InlineData("5. N/m", 0, 2, "5. is not a number here.", "Use one decimal point, with a digit after it.")]
    [InlineData("0x10 N/m", 0, 4, "0x10 is not a decimal number.", "Write the number in decimal digits.")]
    [InlineData("1 1/2 N/mm", 0, 5, "1 1/2 is a fraction.", "Write it as a decimal number, 1.5 for one and a half.")]
    [InlineData("1/2 N/mm", 0, 3, "1/2 is a fraction.", "Write it as a decimal number, 1.5 for one and a half.")]
    [InlineData("NaN N/m", 0, 3, "NaN is not a finite number.", "Begin with a number in digits, with a decimal point if it needs one: 24.5.")]
    [InlineData("-.inf N/m", 0, 5, "-.inf is not a finite number.", "Begin with a number in digits, with a decimal point if it needs one: 24.5.")]
    [InlineData("stiff", 0, 5, "\"stiff\" is not a number.", "Begin with a number in digits, with a decimal point if it needs one: 24.5.")]
    [InlineData("", 0, 0, "there is no number.", "Begin with a number in digits, with a decimal point if it needs one: 24.5.")]
    [InlineData("1e999 N/m", 0, 5, "1e999 is beyond what a number can hold here.", "Check the exponent.")]
    [InlineData("1e-999 N/m", 0, 6, "1e-999 is beyond what a number can hold here.", "Check the exponent.")]
    [InlineData("1e308 N/mm", 0, 10, "1e308 N/mm is beyond what a number can hold here.", "Check the exponent.")]
    [InlineData("24.5", 0, 4, "24.5 has no unit; a spring rate is wanted, e.g. 24.5 N/mm.", "Units that fit: N/mm, N/m, kN/m, kgf/mm, lbf/in.")]
    [InlineData("24.5 ± 5 %", 0, 4, "24.5 has no unit; a spring rate is wanted, e.g. 24.5 N/mm.", "Units that fit: N/mm, N/m, kN/m, kgf/mm, lbf/in.")]
    [InlineData("20 mm", 0, 5, "20 mm is a length; a spring rate is wanted, e.g. 20 N/mm.", "Units that fit: N/mm, N/m, kN/m, kgf/mm, lbf/in.")]
    [InlineData(
        " 20 mm ± 5 %", 1, 5, "20 mm is a length; a spring rate is wanted, e.g. 20 N/mm.", "Units that fit: N/mm, N/m, kN/m, kgf/mm, lbf/in.")]
    [InlineData(
        "2 kg/mm",
        0,
        7,
        "2 kg/mm is a mass per length; a spring rate is wanted, e.g. 2 N/mm.",
        "Kilograms per travel are meant as force: write kgf/mm.")]
    [InlineData("20 Q/mm", 3, 1, "Q is not a unit known here.", "Use unit symbols such as mm, kg, N/mm, N s/m, lbf/in.")]
    [InlineData("20 n/mm", 3, 1, "n is not a unit known here.", "Did you mean N?")]
    [InlineData("20 N/mn", 5, 2, "mn is not a unit known here.", "Use unit symbols such as mm, kg, N/mm, N s/m, lbf/in.")]
    [InlineData("20 newtons/mm", 3, 7, "newtons is not a unit known here.", "Did you mean N?")]
    [InlineData(
        "20 N/mm s",
        5,
        4,
        "only one unit may follow the slash.",
        "Put the units under the slash in brackets, N/(m s), or write those above it first, N s/m.")]
    [InlineData(
        "20 N/m/s",
        5,
        3,
        "only one unit may follow the slash.",
        "Put the units under the slash in brackets, N/(m s), or write those above it first, N s/m.")]
    [InlineData("20 N/", 5, 1, "a unit should follow the slash.", "Write for instance N/mm or N/(m s).")]
    [InlineData("20 N·", 4, 1, "a unit should stand on both sides of a product sign.", "Write for instance N·s/m.")]
    [InlineData("20 N/mm^0", 7, 2, "^0 is not an exponent.", "Write a whole exponent from 1 to 9, for instance kg m^2.")]
    [InlineData(
        "20 N/mm front",
        8,
        5,
        "\"front\" is not understood after 20 N/mm.",
        "Write a number, its unit and, if it has one, its doubt: 24.5 N/mm ± 5 %.")]
    [InlineData(
        "20 N/mm (front)",
        8,
        7,
        "\"(front)\" is not understood after 20 N/mm.",
        "Write a number, its unit and, if it has one, its doubt: 24.5 N/mm ± 5 %.")]
    [InlineData("20 N/mm ± -1", 10, 2, "the doubt is -1; it must be 0 or above.", "Give the doubt as a positive half-width.")]
    [InlineData(
        "20 N/mm ± 1 mm", 10, 4, "the doubt 1 mm is a length; the value is a spring rate.", "Give the doubt in a unit of the value or in per cent.")]
    [InlineData("20 N/mm ± few", 10, 3, "\"few\" is not a number.", "Begin with a number in digits, with a decimal point if it needs one: 24.5.")]
    [InlineData("20 N/mm ± 5 % or so", 14, 2, "or is not a unit known here.", "Use unit symbols such as mm, kg, N/mm, N s/m, lbf/in.")]
    [InlineData("20 N/mm ± 5 % ± 1", 14, 3, "\"± 1\" is not understood after the doubt.", "End the text after the doubt: 24.5 N/mm ± 5 %.")]
    [InlineData("0 N/mm ± 5 %", 9, 3, "a per cent of zero is zero.", "Give the doubt in N/mm.")]
    public void A_spring_rate_is_refused_with_place_reason_and_advice(string text, int start, int length, string message, string advice) =>
        Assert.Equal(new QuantityRefusal(start, length, message, advice), QuantityText.Parse<Stiffness>(text).Refusal);

    [Fact]
    public void Likely_slips_get_their_own_advice()
    {
        Assert.Equal("Give the mass, as a scale shows it, in kg or lb.", QuantityText.Parse<Mass>("3100 N").Refusal!.Advice);
        Assert.Equal("For the weight of a mass write kgf or lbf.", QuantityText.Parse<Force>("318 kg").Refusal!.Advice);
        Assert.Equal("Name the angle: N m/deg or N m/rad.", QuantityText.Parse<AngularStiffness>("300 Nm").Refusal!.Advice);
        Assert.StartsWith("A damping rate is force per speed", QuantityText.Parse<DampingRate>("20 N/mm").Refusal!.Advice, StringComparison.Ordinal);
        Assert.StartsWith("A frequency counts cycles", QuantityText.Parse<Frequency>("6 rad/s").Refusal!.Advice, StringComparison.Ordinal);
        Assert.StartsWith("Multiply by the density", QuantityText.Parse<Viscosity>("30 cSt").Refusal!.Advice, StringComparison.Ordinal);
        Assert.Equal("Write the number without a unit, or as per cent with %.", QuantityText.Parse<Plain>("20 mm").Refusal!.Advice);
        Assert.Equal("Did you mean Nm?", QuantityText.Parse<AngularStiffness>("300 nm/deg").Refusal!.Advice);
    }

    [Theory]
    [InlineData("15 cwt", "Use unit symbols such as mm, kg, N/mm, N s/m, lbf/in.")]
    [InlineData("15 kgs", "Did you mean kg?")]
    [InlineData("15 KG ± 2 %", "Did you mean kg?")]
    public void A_slip_in_a_unit_is_never_guessed_to_be_of_another_dimension(string text, string advice) =>
        Assert.Equal(advice, QuantityText.Parse<Mass>(text).Refusal!.Advice);

    [Fact]
    public void Per_cent_of_per_cent_is_refused_because_it_can_be_read_in_two_ways()
    {
        var refusal = QuantityText.Parse<Plain>("25 % ± 2 %").Refusal!;
        Assert.Equal((7, 3), (refusal.Start, refusal.Length));
        Assert.Equal("± 2 % can be read as points or as a part of the value.", refusal.Message);
    }

    [Theory]
    [InlineData("5 ft 13 in", 5, 5)]
    [InlineData("5.5 ft 3 in", 7, 4)]
    [InlineData("5 ft 3 mm", 5, 4)]
    public void Feet_and_inches_must_be_whole_feet_and_inches_below_twelve(string text, int start, int length)
    {
        var refusal = QuantityText.Parse<Length>(text).Refusal!;
        Assert.Equal((start, length), (refusal.Start, refusal.Length));
    }
}
