using CsCheck;
using Heaveline.Cars;
using Heaveline.Files;
using Heaveline.Files.Parts;
using Heaveline.Files.Yaml;
using Heaveline.Parts;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Files.Parts;

public class SpringSheetTests
{
    private const string Sound =
        """
        # a comment
        part, fits, rate [N/mm], free length [mm], block length [mm], price [EUR], stock
        one, front, 20 ± 3 %, 380 ± 2, 90, 80, shelf

        two, rear, 45 N/mm, 30 cm, , 84.50,
        three, , 250 lb/in ± 4 %, 11 in, 95, ,
        """;

    [Fact]
    public void A_row_is_the_spring_that_the_same_words_give_in_a_list()
    {
        var sheet = Read(Sound);
        Assert.True(sheet.Value is not null, sheet.Format());
        var list = PartsFile.Read(new SourceText(
            "list.yaml",
            """
            parts: sheet
            currency: EUR
            springs:
              - {part: one, fits: front, rate: 20 N/mm ± 3 %, free-length: 380 mm ± 2 mm, block-length: 90 mm, price: 80, stock: shelf}
              - {part: two, fits: rear, rate: 45 N/mm, free-length: 30 cm, price: 84.50}
              - {part: three, rate: 250 lb/in ± 4 %, free-length: 11 in, block-length: 95 mm}
            """)).Value!;
        Assert.Equal(list.Parts, sheet.Value.Parts);
        Assert.Equal(("sheet", "EUR"), (sheet.Value.Name, sheet.Value.Currency));
        Assert.Equal("three has no price: what a setup with it costs cannot be said.", Assert.Single(sheet.Warnings).Message);
        Assert.Equal(6, sheet.Warnings[0].Line);
    }

    [Fact]
    public void Labour_and_pieces_are_read_as_in_a_list()
    {
        var sheet = Read("part, rate [N/mm], pieces, labour [h]\none, 20, 1, 1.5\ntwo, 24, , 90 min\n");
        Assert.True(sheet.Value is not null, sheet.Format());
        Assert.All(sheet.Value.Parts, part => Assert.Equal(5400.0, part.Labour!.Value.Si));
        Assert.Equal([1, null], sheet.Value.Parts.Select(part => part.Pieces));
        var wrong = Read("part, rate [N/mm], pieces, labour [h]\none, 20, many, 1\ntwo, 20, 2, -1\nthree, 20, 2, 1 ± 10 %\n");
        Assert.Equal([(2, 10), (3, 13), (4, 15)], wrong.Refusals.Select(refusal => (refusal.Line, refusal.Column)));
    }

    [Fact]
    public void What_is_unusual_in_a_list_is_unusual_in_a_sheet()
    {
        var sheet = Read("part, fits, rate [N/mm], free length [mm], block length [mm], price [EUR]\nA, rear, 45000, 300 ± 400, 4, 84\n");
        var list = PartsFile.Read(new SourceText(
            "list.yaml",
            """
            parts: sheet
            currency: EUR
            springs:
              - {part: A, fits: rear, rate: 45000 N/mm, free-length: 300 mm ± 400 mm, block-length: 4 mm, price: 84}
            """));
        Assert.Equal(3, list.Warnings.Count);
        Assert.Equal(list.Warnings.Select(warning => warning.Advice), sheet.Warnings.Select(warning => warning.Advice));
        Assert.Equal([(2, 10), (2, 17), (2, 28)], sheet.Warnings.Select(warning => (warning.Line, warning.Column)));
    }

    [Theory]
    [InlineData("84.50", "99999999999999999999", "price is 99999999999999999999; it must be at most 1000000000.", 5, 30)]
    [InlineData("84.50", "0.0000001", "price is 0.0000001; it must be 0, or at least 0.01", 5, 30)]
    [InlineData("price [EUR]", "price [EURO-AND-CENT]", "\"EURO-AND-CENT\" is no currency; it must be at most 8 letters or signs.", 2, 63)]
    [InlineData("one, front", "one, middle", "fits is middle; it must be front, rear or both.", 3, 6)]
    [InlineData("20 ± 3 %", "20 mm", "rate is 20 mm", 3, 13)]
    [InlineData("20 ± 3 %", "-20", "rate is -20; it must be above 0.", 3, 13)]
    [InlineData("20 ± 3 %", "", "rate is empty", 3, 12)]
    [InlineData("20 ± 3 %", "20,7", "the row has 8 cells; it must have 7", 3, 1)]
    [InlineData("one, front", ", front", "part is empty", 3, 1)]
    [InlineData("two, rear", "one, rear", "one stands in the sheet already, in line 3", 5, 1)]
    [InlineData("84.50", "84.50 EUR", "price is 84.50 EUR; it must be a plain number.", 5, 30)]
    [InlineData("380 ± 2, 90", "80, 90", "block-length is 90; it must be below free-length, 80.", 3, 27)]
    [InlineData("price [EUR]", "price", "column 'price' has no currency", 2, 63)]
    [InlineData("rate [N/mm]", "rate [mm]", "unit of column 'rate' is 'mm'; it must be one of a spring rate", 2, 13)]
    [InlineData("rate [N/mm]", "raet [N/mm]", "column 'raet [N/mm]' is not known. Did you mean rate?", 2, 13)]
    [InlineData("rate [N/mm]", "fits", "column 'fits' stands twice", 2, 13)]
    [InlineData("stock\n", "stock [mm]\n", "unit of column 'stock' is 'mm'; it takes none.", 2, 76)]
    [InlineData("shelf", "\"shelf\"", "the row has a quote", 3, 40)]
    public void What_is_wrong_is_refused_with_row_and_column(string old, string slip, string message, int line, int column)
    {
        Assert.Contains(old, Sound, StringComparison.Ordinal);
        var at = Sound.IndexOf(old, StringComparison.Ordinal);
        var reading = Read(Sound[..at] + slip + Sound[(at + old.Length)..]);
        Assert.Null(reading.Value);
        var refusal = Assert.Single(reading.Refusals, one => one.Message.StartsWith(message, StringComparison.Ordinal));
        Assert.Equal((line, column), (refusal.Line, refusal.Column));
    }

    [Fact]
    public void Semicolons_and_empty_sheets_are_refused()
    {
        Assert.Contains("semicolons", Assert.Single(Read("part;rate [N/mm]\none;20").Refusals).Message, StringComparison.Ordinal);
        Assert.Equal("the sheet is empty.", Assert.Single(Read("# nothing\n").Refusals).Message);
        Assert.Equal("the sheet has no spring.", Assert.Single(Read("part, rate\n").Refusals).Message);
        Assert.Equal("there is no column 'rate'; there must be one.", Assert.Single(Read("part, fits\none, front").Refusals).Message);
    }

    [Fact]
    public void The_shed_costs_nothing_and_nothing_is_odd_in_it()
    {
        var sheet = PartsFile.Load(Path.Combine(Checkout.Root, "examples", "parts", "shed.csv"));
        Assert.True(sheet.Value is not null && sheet.Warnings.Count == 0, sheet.Format());
        Assert.Equal(("shed", 3), (sheet.Value.Name, sheet.Value.Parts.Count));
        Assert.All(sheet.Value.Parts, part => Assert.True(part.Price is { IsNone: true }));
        // 258 lbf/in: 258 times 4.4482216 N over 25.4 mm (NIST Special Publication 811, Appendix B).
        Assert.Equal(258.0 * 4.4482216152605 / 0.0254, Assert.IsType<LinearSpring>(((CoilPart)sheet.Value.Parts[2]).Law).Rate.Si, 1e-6);
    }

    [Fact]
    public void A_damaged_sheet_is_read_or_refused_inside_itself_and_never_throws() =>
        Gen.Select(Gen.Int[0, 500], Gen.Int[0, 30], Gen.String["[]±%,;#\"\n\r\t .-+0123456789eENmkglbin/pratsofc "])
            .Sample((at, cut, insert) =>
            {
                at %= Sound.Length;
                var text = Sound[..at] + insert + Sound[Math.Min(Sound.Length, at + cut)..];
                var reading = Read(text);
                Assert.Equal(reading.Value is null, reading.Refusals.Count > 0);
                foreach (var refusal in reading.Refusals)
                {
                    Assert.InRange(refusal.Line, 1, Math.Max(1, reading.Sources[0].LineCount));
                    Assert.InRange(refusal.Column, 1, reading.Sources[0].Line(refusal.Line).Length + 1);
                }

                Assert.NotNull(reading.Format());
            }, iter: 2000);

    [Fact]
    public void A_sheet_of_nothing_but_slips_is_given_up_and_said_shortly()
    {
        var text = "part, rate [N/mm]\n" + string.Concat(Enumerable.Range(0, 5000).Select(i => $"spring {i}, soft\n"));
        var reading = Read(text);
        Assert.Null(reading.Value);
        Assert.InRange(reading.Refusals.Count, 20, 300);
        Assert.Contains("more refused", reading.Format(), StringComparison.Ordinal);
    }

    private static Reading<PartsList> Read(string text) => SpringSheet.Read(new SourceText("sheet.csv", text));
}
