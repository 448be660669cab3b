using System.Buffers.Binary;
using System.Globalization;
using System.Text;
using System.Xml.Linq;
using Heaveline.Figures;
using Heaveline.Press;
using Heaveline.Quantities;

namespace Heaveline.Tests.Press;

public sealed class FormatTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("heaveline-press-").FullName;

    public static TheoryData<string> Names => [.. Samples.All.Select(sample => sample.Name)];

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Theory, MemberData(nameof(Names))]
    public void The_same_figure_gives_the_same_bytes_in_every_format(string name)
    {
        Figure Make() => Samples.All.Single(sample => sample.Name == name).Figure;
        Assert.Equal(Svg.Of(Make()), Svg.Of(Make()));
        Assert.Equal(Pdf.Of(Make()), Pdf.Of(Make()));
        Assert.Equal(Png.Of(Make(), 96.0), Png.Of(Make(), 96.0));
    }

    [Theory, MemberData(nameof(Names))]
    public void An_svg_is_well_formed_titled_described_carries_its_font_and_stays_small(string name)
    {
        var figure = Samples.All.Single(sample => sample.Name == name).Figure;
        var bytes = Svg.Of(figure);
        Assert.InRange(bytes.Length, 1000, 400_000);
        var root = XDocument.Parse(Encoding.UTF8.GetString(bytes)).Root!;
        XNamespace svg = "http://www.w3.org/2000/svg";
        Assert.Equal(svg + "svg", root.Name);
        Assert.Equal("img", root.Attribute("role")!.Value);
        Assert.Equal(figure.Size == FigureSize.Page ? "174mm" : "84mm", root.Attribute("width")!.Value);
        Assert.Equal(figure.Title, root.Element(svg + "title")!.Value);
        Assert.Equal(figure.AltText, root.Element(svg + "desc")!.Value);
        var style = root.Element(svg + "style")!.Value;
        Assert.Contains("@font-face", style, StringComparison.Ordinal);

        // A TrueType file begins with 00 01 00 00 [OpenType specification, table directory].
        var font = Convert.FromBase64String(style.Split("base64,")[1].Split(')')[0]);
        Assert.Equal([0, 1, 0, 0], font[..4]);
        Assert.DoesNotContain(root.Descendants(), element => element.Attribute("id") is not null);
    }

    [Fact]
    public void The_texts_of_a_figure_are_texts_in_the_svg()
    {
        var root = XDocument.Parse(Encoding.UTF8.GetString(Svg.Of(Samples.Pass(FigureSize.Page)))).Root!;
        var texts = root.Descendants().Where(element => element.Name.LocalName == "text").Select(element => element.Value).ToHashSet();
        Assert.Superset(
            new HashSet<string>
            {
                "pitch (°)",
                "time after first contact (s)",
                "softer front",
                "bump stop",
                "hit",
                "settling",
                "peak −0.62°",
                "−0.5",
                "static position = 0",
            },
            texts);
    }

    [Fact]
    public void Texts_that_would_break_the_svg_are_escaped()
    {
        var figure = Samples.Dots() with { Title = "a < b & \"c\" \u0001", AltText = "<desc>" };
        var root = XDocument.Parse(Encoding.UTF8.GetString(Svg.Of(figure))).Root!;
        Assert.Equal("a < b & \"c\" \uFFFD", root.Elements().First().Value);
    }

    [Fact]
    public void A_long_noisy_curve_does_not_swell_the_svg()
    {
        var random = new Random(1);
        double[] t = [.. Enumerable.Range(0, 100_000).Select(i => i * 1e-3)];
        var figure = new Figure
        {
            Title = "noise", AltText = "Noise.", Size = FigureSize.Page,
            Panels = [new ChartPanel
            {
                X = new Axis { Label = "time", Unit = "s" },
                Y = new Axis { Label = "a" },
                Traces = [Trace.From("", t, [.. t.Select(_ => random.NextDouble())])],
            }],
        };
        Assert.InRange(Svg.Of(figure).Length, 100_000, 400_000);
    }

    [Theory]
    [InlineData(FigureSize.Column, 300.0, 992)]
    [InlineData(FigureSize.Page, 300.0, 2055)]
    [InlineData(FigureSize.Page, 96.0, 658)]
    public void A_png_is_as_many_pixels_wide_as_its_paper_and_says_so(FigureSize size, double dotsPerInch, int width)
    {
        // 84 mm and 174 mm over 25.4 mm per inch, times the resolution, to the nearest pixel.
        var png = Png.Of(Samples.Pass(size), dotsPerInch);
        Assert.Equal(width, BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(16)));
        var svg = XDocument.Parse(Encoding.UTF8.GetString(Svg.Of(Samples.Pass(size)))).Root!;
        var millimetres = double.Parse(svg.Attribute("height")!.Value[..^2], CultureInfo.InvariantCulture);
        Assert.Equal((int)Math.Round(millimetres / 25.4 * dotsPerInch), BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(20)));
        var size9 = png.AsSpan().IndexOf("pHYs"u8);
        Assert.Equal((uint)Math.Round(dotsPerInch / 0.0254), BinaryPrimitives.ReadUInt32BigEndian(png.AsSpan(size9 + 4)));
    }

    [Fact]
    public void A_png_with_its_added_chunks_can_be_read_back_and_is_not_blank()
    {
        using var bitmap = SkiaSharp.SKBitmap.Decode(Png.Of(Samples.Pass(FigureSize.Column), 96.0));
        var dark = bitmap.Pixels.Count(pixel => pixel.Red < 100);
        Assert.InRange(dark, bitmap.Pixels.Length / 200, bitmap.Pixels.Length / 4);
        Assert.Equal(new SkiaSharp.SKColor(255, 255, 255), bitmap.Pixels[0]);
    }

    /// <summary>
    /// 952b0e1b-32 of name and content, here "pHYs" and 96 dots per inch both ways [recomputed with another library].
    /// </summary>
    [Fact]
    public void Chunks_carry_the_standard_checksum()
    {
        var png = Png.Of(Samples.Dots(), 96.0);
        var chunk = png.AsSpan().IndexOf("pHYs"u8);
        Assert.Equal(0x952b0e1bu, BinaryPrimitives.ReadUInt32BigEndian(png.AsSpan(chunk + 13)));
    }

    [Fact]
    public void A_resolution_out_of_range_is_refused() => Assert.Throws<RefusedValueException>(() => Png.Of(Samples.Dots(), 20.0));

    [Fact]
    public void A_pdf_is_one_and_embeds_our_font_and_no_date()
    {
        var text = Encoding.Latin1.GetString(Pdf.Of(Samples.Pass(FigureSize.Page)));
        Assert.StartsWith("%PDF-", text, StringComparison.Ordinal);
        Assert.Contains("HeavelineSans-Regular", text, StringComparison.Ordinal);
        Assert.Contains("/FontFile2", text, StringComparison.Ordinal);
        Assert.DoesNotContain("/CreationDate", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("a.gif", ".gif")]
    [InlineData("figure", "missing")]
    public void An_ending_the_press_does_not_print_is_refused_by_name_and_nothing_is_written(string file, string named)
    {
        var said = Assert.Throws<RefusedValueException>(() => FigureFile.Write(Samples.Dots(), Path.Combine(folder, file))).Message;
        Assert.Contains(named, said, StringComparison.Ordinal);
        Assert.Contains(".svg, .png or .pdf", said, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFileSystemEntries(folder));
    }

    [Fact]
    public void A_figure_that_cannot_be_written_leaves_nothing_behind()
    {
        var path = Directory.CreateDirectory(Path.Combine(folder, "taken.pdf")).FullName;
        var thrown = Record.Exception(() => FigureFile.Write(Samples.Dots(), path));
        Assert.True(thrown is IOException or UnauthorizedAccessException, $"{thrown}");
        Assert.Equal([path], Directory.GetFileSystemEntries(folder));
    }

    [Fact]
    public void A_file_holds_the_bytes_of_its_format()
    {
        foreach (var (ending, bytes) in new[]
        {
            (".SVG", Svg.Of(Samples.Dots())),
            (".pdf", Pdf.Of(Samples.Dots())),
            (".png", Png.Of(Samples.Dots())),
        })
        {
            var path = Path.Combine(folder, "f" + ending);
            FigureFile.Write(Samples.Dots(), path);
            Assert.Equal(bytes, File.ReadAllBytes(path));
        }
    }
}
