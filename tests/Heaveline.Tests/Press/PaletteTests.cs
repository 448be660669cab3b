using Heaveline.Figures;
using Heaveline.Press.Colours;
using Heaveline.Press.Type;

namespace Heaveline.Tests.Press;

public class PaletteTests
{
    /// <summary>
    /// The ends of the scale by definition [CIE 15]; sRGB 119 lies at L* 50.03 by the same formula, worked out apart.
    /// </summary>
    [Theory]
    [InlineData(0, 0.0)]
    [InlineData(119, 50.03)]
    [InlineData(255, 100.0)]
    public void Lightness_of_a_grey_is_that_of_the_standard(byte grey, double lightness) =>
        Assert.Equal(lightness, new Colour(grey, grey, grey).Lightness, 2);

    [Fact]
    public void Inks_keep_apart_from_one_another_and_from_paper_when_printed_in_grey()
    {
        double[] all = [.. Enum.GetValues<Ink>().Select(ink => Palette.Of(ink).Lightness), Colour.White.Lightness];
        Array.Sort(all);
        Assert.All(all.Zip(all.Skip(1)), pair => Assert.True(
            pair.Second - pair.First >= Palette.LeastLightnessApart, $"L* {pair.First:F1} and {pair.Second:F1} are too close"));
    }

    /// <summary>Contrast (L1 + 0.05)/(L2 + 0.05) of at least 4.5 for small text [W3C Web Content Accessibility Guidelines 2.1, 1.4.3].</summary>
    [Fact]
    public void Lettering_stands_out_from_paper_and_from_shaded_grounds()
    {
        foreach (var ground in new[] { Colour.White, Palette.LightGround, Palette.Ground })
        {
            foreach (var text in new[] { Palette.Text, Palette.QuietText })
            {
                Assert.True((ground.Luminance + 0.05) / (text.Luminance + 0.05) >= 4.5, $"{text.Hex} on {ground.Hex}");
            }
        }

        Assert.All(Enum.GetValues<Ink>(), ink => Assert.True(1.05 / (Palette.Of(ink).AsText.Luminance + 0.05) >= 4.5, $"{ink}"));
    }

    [Fact]
    public void Every_face_holds_the_signs_the_trade_writes()
    {
        const string Signs =
            "ABCabc0123456789 .,:;()[]/%+−±×·÷=<>≤≥≈≠√°′″µμΔαβγδεζηθλνξπρσςτφχψωΣΦΨΩ₀₁₂₃ₓ²³⁰¹⁴⁵⁶⁷⁸⁹⁻–—→←↑↓…“”‘’éèüößåøñçŁž\u00a0\u202f";
        Assert.All(Enum.GetValues<Face>(), face => Assert.Equal("", Typefaces.Missing(Signs, face)));
    }

    /// <summary>Within 0.02 of 10 points: fixing the weight of the variable face rounds each width to a unit of its own.</summary>
    [Fact]
    public void Figures_are_of_equal_width() => Assert.All(Enum.GetValues<Face>(), face =>
    {
        var widths = "0123456789".Select(digit => Typefaces.WidthOf(digit.ToString(), face, 10.0)).ToArray();
        Assert.InRange(widths.Max() - widths.Min(), 0.0, 0.02);
    });

    [Fact]
    public void Text_wraps_between_words_but_not_between_a_number_and_its_unit()
    {
        var caption = Lettering.Caption;
        var lines = Wrapped.Of("crossed at 40 km/h, slowly", caption, caption.WidthOf("crossed at 40 "));
        Assert.Equal(["crossed at", "40 km/h, slowly"], Wrapped.Of("crossed at 40 km/h, slowly", caption, caption.WidthOf("40 km/h, slowly") + 0.1));
        Assert.Equal("crossed at", lines[0]);
        Assert.Equal(["one", "two"], Wrapped.Of("one\ntwo", caption, 200.0));
        Assert.Empty(Wrapped.Of("", caption, 200.0));
    }
}
