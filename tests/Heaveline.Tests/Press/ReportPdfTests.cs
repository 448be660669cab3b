using System.Text;
using System.Text.RegularExpressions;
using Heaveline.Answers;
using Heaveline.Press;
using Heaveline.Press.Paper;
using Heaveline.Press.Sheets;
using Heaveline.Press.Type;

namespace Heaveline.Tests.Press;

public class ReportPdfTests
{
    private static readonly Lettering Small = Lettering.Label;

    [Theory]
    [InlineData(PaperSize.A4)]
    [InlineData(PaperSize.Letter)]
    public void The_same_report_gives_the_same_bytes(PaperSize paper) =>
        Assert.Equal(ReportPdf.Of(ReportSamples.Everywhere("text"), paper), ReportPdf.Of(ReportSamples.Everywhere("text"), paper));

    // ISO 216: 210 by 297 mm; Letter: 8.5 by 11 in.
    [Theory]
    [InlineData(PaperSize.A4, 595.28, 841.89)]
    [InlineData(PaperSize.Letter, 612.0, 792.0)]
    public void Pages_have_the_size_of_the_paper(PaperSize paper, double width, double height)
    {
        var box = Regex.Match(Raw(ReportPdf.Of(ReportSamples.Everywhere("text"), paper)), @"/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]");
        Assert.Equal(width, double.Parse(box.Groups[1].Value), 0.1);
        Assert.Equal(height, double.Parse(box.Groups[2].Value), 0.1);
    }

    [Fact]
    public void A_pdf_is_titled_and_carries_no_date()
    {
        var raw = Raw(ReportPdf.Of(ReportSamples.Everywhere("Words of a title")));
        Assert.Contains("/Title (Words of a title)", raw);
        Assert.DoesNotContain("CreationDate", raw);
        Assert.DoesNotContain("ModDate", raw);
    }

    [Fact]
    public void A_long_table_goes_on_over_pages()
    {
        var facts = new FactTable("Long", ["value"]);
        for (var i = 0; i < 200; i++)
        {
            facts.Add($"k{i}", $"row {i}", "m", "F0", [i]);
        }

        // 250 mm hold at most 60 lines of the table's letters, so that 200 rows ask for four pages at least.
        Assert.InRange(Pages(ReportPdf.Of(Of(Tabulated.Of(facts)))), 4, 6);
    }

    [Fact]
    public void A_figure_that_does_not_fit_lets_the_words_after_it_go_first()
    {
        var words = Enumerable.Range(0, 12).Select(i => Paragraph.Of(string.Concat(Enumerable.Repeat($"word{i} ", 100))));
        var figure = Illustration.Of(ReportSamples.Bars("figure"));
        int Count(params ReadOnlySpan<Block> blocks) => Pages(ReportPdf.Of(Of(blocks)));
        Assert.Equal(Count([.. words, figure]), Count([.. words.Take(6), figure, .. words.Skip(6)]));
    }

    [Fact]
    public void A_character_that_no_face_has_is_shown_as_a_box_and_breaks_nothing()
    {
        Assert.Equal("Tanaka □□, 3 µm ≤ 4", Glyphs.Shown("Tanaka 田中, 3 µm ≤ 4", Face.Regular));
        Assert.StartsWith("%PDF-", Raw(ReportPdf.Of(ReportSamples.Everywhere("田中 \U0001F697"))));
    }

    [Fact]
    public void A_broken_line_keeps_every_letter_and_fits()
    {
        foreach (var line in new[]
        {
            "",
            "    indented: {a: 1,  b: 2}   # with blanks",
            new string('x', 300),
            string.Join(' ', Enumerable.Repeat("word", 80)),
            new string(' ', 200) + "end",
        })
        {
            var broken = Glyphs.Broken(line, Small, 120.0).ToList();
            Assert.Equal(line, string.Concat(broken));
            Assert.All(broken, part => Assert.True(Small.WidthOf(part.TrimEnd()) <= 120.0 || part.Length == 1));
        }
    }

    [Fact]
    public void A_heading_too_long_for_a_foot_is_cut_with_an_ellipsis()
    {
        Assert.Equal("short", Glyphs.Fitted("short", Small, 100.0));
        var cut = Glyphs.Fitted(new string('w', 400), Small, 100.0);
        Assert.EndsWith("…", cut);
        Assert.InRange(Small.WidthOf(cut), 80.0, 100.0);
    }

    private static Report Of(params ReadOnlySpan<Block> blocks) =>
        new() { Title = "Test", Program = "Heaveline test", Parts = [new ReportPart { Heading = "Part", Blocks = [.. blocks] }] };

    private static int Pages(byte[] pdf) => Regex.Count(Raw(pdf), @"/Type /Page\b(?!s)");

    private static string Raw(byte[] pdf) => Encoding.Latin1.GetString(pdf);
}
