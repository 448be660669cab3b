using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Heaveline.Press;
using Heaveline.Press.Paper;
using Heaveline.Press.Type;

namespace Heaveline.Tests.Press;

/// <summary>An SVG whose letters are outlines needs no font: what a drawing program shows of it is what stands in the file.</summary>
public class LetterOutlinesTests
{
    public static TheoryData<string> Names => [.. Samples.All.Select(sample => sample.Name)];

    [Theory, MemberData(nameof(Names))]
    public void No_text_and_no_font_is_left_and_a_path_stands_for_every_line_of_text_in_its_place(string name)
    {
        var figure = Samples.All.Single(sample => sample.Name == name).Figure;
        var (plain, outlined) = (Read(Svg.Of(figure)), Read(Svg.Of(figure, outlines: true)));
        Assert.Equal(Svg.Of(figure, outlines: true), Svg.Of(figure, outlines: true));
        Assert.DoesNotContain(outlined.Descendants(), e => e.Name.LocalName is "text" or "style");
        Assert.Null(outlined.Attribute("font-family"));
        Assert.Equal(figure.AltText, outlined.Elements().Single(e => e.Name.LocalName == "desc").Value);
        var (before, after) = (Drawn(plain), Drawn(outlined));
        Assert.Equal(before.Count, after.Count);
        foreach (var (text, path) in before.Zip(after).Where(pair => pair.First.Name.LocalName == "text" && pair.First.Value.Trim().Length > 0))
        {
            Assert.Equal(text.Attribute("fill")!.Value, path.Attribute("fill")!.Value);
            var (size, letters) = (Number(text, "font-size"), text.Value);
            var face = text.Attribute("font-weight") is not null ? Face.Bold : text.Attribute("font-style") is not null ? Face.Italic : Face.Regular;
            var width = Typefaces.WidthOf(letters, face, size);
            var left = Number(text, "x") - (width * (text.Attribute("text-anchor")?.Value switch { "middle" => 0.5, "end" => 1.0, _ => 0.0 }));
            var places = Numbers(path.Attribute("d")!.Value, @"(-?[\d.]+)");
            var (xs, ys) = (places.Where((_, i) => i % 2 == 0).ToList(), places.Where((_, i) => i % 2 == 1).ToList());
            // A glyph keeps within its advance but for a little of its own bearing, and within the height of its letters.
            Assert.InRange(xs.Min(), left - (0.15 * size), left + width);
            Assert.InRange(xs.Max(), left, left + width + (0.15 * size));
            Assert.InRange(ys.Min(), Number(text, "y") - (1.1 * size), Number(text, "y") + (0.1 * size));
            Assert.InRange(ys.Max(), Number(text, "y") - size, Number(text, "y") + (0.4 * size));
        }
    }

    // A square letter of the face in known places: the capital I of a face without serifs is one rectangle, two uprights and two levels.
    [Fact]
    public void A_letter_without_curves_is_one_closed_polygon_as_high_as_a_capital()
    {
        var data = new StringBuilder();
        LetterOutlines.Write(data, "I", new Spot(10.0, 100.0), Lettering.Caption with { Size = 100.0 }, TextAlign.Start);
        Assert.Matches(@"^M[^MZ]*Z$", data.ToString());
        Assert.DoesNotContain("Q", data.ToString(), StringComparison.Ordinal);
        var heights = Numbers(data.ToString(), @"[ML]\S+ (\S+?)(?=[LZ])");
        // 0.727 em: the cap height of the face, as its own table says (OS/2 sCapHeight).
        Assert.Equal(100.0 - 72.7, heights.Min(), 0.5);
        Assert.Equal(100.0, heights.Max(), 0.01);
    }

    [Fact]
    public void A_file_whose_name_asks_for_outlines_holds_them() =>
        Assert.Equal(Svg.Of(Samples.Dots(), outlines: true), FigureFile.Of(Samples.Dots(), "dots.Outlines.SVG"));

    private static XElement Read(byte[] file) => XDocument.Parse(Encoding.UTF8.GetString(file)).Root!;

    private static List<XElement> Drawn(XElement root) => [.. root.Elements().Where(e => e.Name.LocalName is not ("title" or "desc" or "style"))];

    private static List<double> Numbers(string data, string pattern) =>
        [.. Regex.Matches(data, pattern).Select(m => double.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture))];

    private static double Number(XElement element, string name) => double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);
}
