using Heaveline.Files;
using Heaveline.Files.Yaml;

namespace Heaveline.Tests.Files;

public class YamlRefusalTests
{
    private const string Head = "title: One\nsprings:\n  - free-length: 310 mm\n";

    [Theory]
    // Amounts: the place is inside the text.
    [InlineData(Head + "    rate: 20 mm", 4, 11, 5, "springs item 1 rate: 20 mm is a length; a spring rate is wanted, e.g. 20 N/mm.")]
    [InlineData(Head + "    rate: 20 N/mm ± 1 mm", 4, 21, 4, "springs item 1 rate: the doubt 1 mm is a length; the value is a spring rate.")]
    [InlineData(Head + "    rate: '20 Q/mm'", 4, 15, 1, "springs item 1 rate: Q is not a unit known here.")]
    [InlineData(Head + "    rate: 1,320 N/m", 4, 11, 5, "springs item 1 rate: 1,320 is not a number here.")]
    [InlineData(Head + "    rate: 24.5", 4, 11, 4, "springs item 1 rate: 24.5 has no unit; a spring rate is wanted, e.g. 24.5 N/mm.")]
    [InlineData(Head + "    rate: \"20 \\x51\"", 4, 11, 9, "springs item 1 rate: Q is not a unit known here.")]
    // Records' own limits, in the words and the unit of the file.
    [InlineData(Head + "    rate: -25 N/mm", 4, 11, 8, "springs item 1 rate is -25 N/mm; it must be above 0 N/mm.")]
    [InlineData(
        "title: A\nspringss: 1\nsprings: [{rate: 2 N/m, free-length: 5 m}]",
        3,
        38,
        3,
        "springs item 1 free length is 5 m; it must be between 0.01 and 2 m.",
        1)]
    // Keys.
    [InlineData(Head + "    rtae: 20 N/mm\n    rate: 20 N/mm", 4, 5, 4, "\"rtae\" is not a key of springs item 1.")]
    [InlineData(Head + "    rate: 20 N/mm\n    rate: 21 N/mm", 5, 5, 4, "springs item 1 has \"rate\" twice; it stands on line 4 already.")]
    [InlineData(Head, 3, 5, 11, "springs item 1 has no rate.")]
    [InlineData("springs: [{rate: 20 N/mm, free-length: 1 m}]", 1, 1, 7, "the file has no title.")]
    [InlineData(Head + "    rate:", 4, 5, 4, "springs item 1 rate has no value; a spring rate with its unit is wanted.")]
    [InlineData(Head + "    rate: ~", 4, 11, 1, "springs item 1 rate has no value; a spring rate with its unit is wanted.")]
    // Kinds.
    [InlineData("title: [a]\nsprings: [{rate: 20 N/mm, free-length: 1 m}]", 1, 1, 5, "title is a list; some text is wanted.")]
    [InlineData("title: \"  \"\nsprings: [{rate: 20 N/mm, free-length: 1 m}]", 1, 8, 4, "title is blank; some text is wanted.")]
    [InlineData(
        "title: A\nsprings: 20 N/mm", 2, 10, 7, "springs is a single value; a list, each item a group of keys (rate, free-length, at) is wanted.")]
    [InlineData("title: A\nsprings: []", 2, 1, 7, "springs has 0 items; it must have 1 or more.")]
    [InlineData("- a", 1, 1, 1, "the file is a list; a group of keys (title, springs, spare, warm, turns, table, loads, friction) is wanted.")]
    [InlineData(
        "title: A\nsprings: [{rate: 20 N/mm, free-length: 1 m, at: whel}]",
        2,
        49,
        4,
        "springs item 1 at is \"whel\"; it must be one of spring, wheel.")]
    [InlineData("title: A\nsprings: [{rate: 20 N/mm, free-length: 1 m}]\nwarm: yes", 3, 7, 3, "warm is \"yes\"; it must be true or false.")]
    [InlineData(
        "title: A\nsprings: [{rate: 20 N/mm, free-length: 1 m}]\nturns: 1.5", 3, 8, 3, "turns is 1.5; it must be a whole number from 1 to 99.")]
    [InlineData(
        "title: A\nsprings: [{rate: 20 N/mm, free-length: 1 m}]\ntable:\n  - [1 m/s, 5 N]\n  - [1 m/s]",
        5,
        5,
        1,
        "table item 2 has 1 value; it must have 2.")]
    // A refusal of the reader's own.
    [InlineData(
        "title: A\nsprings: [{rate: 2 N/m, free-length: 1 m}, {rate: 2 N/m, free-length: 1 m}, {rate: 2 N/m, free-length: 1 m}, {rate: "
        + "2 N/m, free-length: 1 m}]",
        2,
        1,
        7,
        "springs are too many for the bench; it holds 3.")]
    // YAML that is not taken.
    [InlineData("title: &a One\nsprings: [{rate: 20 N/mm, free-length: 1 m}]", 1, 8, 2, "an anchor (&) is not taken here.")]
    [InlineData("title: !!str One\nsprings: [{rate: 20 N/mm, free-length: 1 m}]", 1, 8, 5, "a tag (!) is not taken here.")]
    [InlineData("title: A\nsprings: [{rate: 20 N/mm, free-length: 1 m}]\n<<: {warm: true}", 3, 1, 2, "a merge key (<<) is not taken here.")]
    [InlineData("title: A\nsprings: [{rate: 20 N/mm, free-length: 1 m}]\n[a, b]: 1", 3, 1, 1, "a key must be a word or some words.")]
    [InlineData("title: A\nsprings: [{rate: 20 N/mm, free-length: 1 m}]\n---\ntitle: B", 3, 1, 3, "a second document begins here.")]
    [InlineData("", 1, 1, 1, "the file is empty.")]
    [InlineData("# nothing but a comment\n", 1, 1, 1, "the file is empty.")]
    [InlineData("title: A\nsprings: [[[[[[[[[[[[[[[[[[1]]]]]]]]]]]]]]]]]]", 2, 25, 1, "groups and lists are nested more than 16 deep.")]
    public void A_refusal_has_its_place_and_its_reason(string text, int line, int column, int length, string message, int others = 0)
    {
        var reading = Sample.Read(text);
        Assert.Null(reading.Value);
        Assert.Equal(1 + others, reading.Refusals.Count);
        var refusal = reading.Refusals[others];
        Assert.Equal(("bench.yaml", line, column, length, message), (refusal.File, refusal.Line, refusal.Column, refusal.Length, refusal.Message));
        Assert.Matches(@"[.?]$", refusal.Advice);
    }

    [Fact]
    public void An_alias_is_refused_beside_its_anchor()
    {
        var reading = Sample.Read("title: &a One\nsprings: *a\n");
        Assert.Equal([(1, 8, 2), (2, 10, 2)], reading.Refusals.Select(r => (r.Line, r.Column, r.Length)));
    }

    [Theory]
    [InlineData("title: A\n\twarm: true", 2, 1, "this line is indented with a tab.")]
    [InlineData("a:\n\tb: 1", 2, 1, "this line is indented with a tab.")]
    [InlineData("title: \"A", 1, 8, "this quote is not closed.")]
    [InlineData("title: A: B", 1, 9, "a second colon stands in one value.")]
    [InlineData("a:\n  b: 1\n c: 2", 3, 2, "this line does not fit the lines above it.")]
    [InlineData("a: `x`", 1, 4, "a value cannot begin with this character.")]
    [InlineData("a: 1\nb", 2, 1, "a key without a colon stands here.")]
    [InlineData("title: A\nsprings: [\n", 2, 10, "this is not YAML: While parsing a node, did not find expected node content.")]
    public void Text_that_is_not_YAML_gives_one_refusal_with_a_place(string text, int line, int column, string message)
    {
        var reading = Sample.Read(text);
        var refusal = Assert.Single(reading.Refusals);
        Assert.Equal((line, column, 1, message), (refusal.Line, refusal.Column, refusal.Length, refusal.Message));
        Assert.Null(reading.Root);
    }

    [Theory]
    [InlineData("title: A\nwarm: \0", 2, 7, "a character that text files do not hold stands here, U+0000.")]
    [InlineData("a: b\u0085c", 1, 5, "a character that text files do not hold stands here, U+0085.")]
    [InlineData("\uFEFFa: b\uFEFF", 1, 5, "a character that text files do not hold stands here, U+FEFF.")]
    public void A_character_that_no_text_holds_is_refused_before_the_text_is_parsed(string text, int line, int column, string message)
    {
        var refusal = Assert.Single(Sample.Read(text).Refusals);
        Assert.Equal((line, column, 1, message), (refusal.Line, refusal.Column, refusal.Length, refusal.Message));
    }

    [Fact]
    public void Half_a_surrogate_pair_is_refused_and_a_whole_one_is_text()
    {
        Assert.Equal(4, Assert.Single(Sample.Read($"a: {(char)0xD83D}.").Refusals).Column);
        Assert.Equal("\U0001F697", Sample.Read("title: \U0001F697").Root!.At("title")!.Text);
    }

    [Fact]
    public void A_text_that_is_too_long_is_refused_before_it_is_parsed() =>
        Assert.Equal(
            "the text has 262145 characters; it must have 262144 or fewer.",
            Assert.Single(Sample.Read(new string(' ', (256 * 1024) + 1)).Refusals).Message);

    [Theory]
    [InlineData("wire: 2 mm\nstrip: 3 mm", 2, 1, 5, "the file has wire and strip; it must have one of wire, strip.")]
    [InlineData("{}", 1, 1, 1, "the file has none of wire, strip; it must have one.")]
    public void Exactly_one_of_some_keys_is_taken(string text, int line, int column, int length, string message)
    {
        var refusal = Assert.Single(YamlReading.Read(new SourceText("stock.yaml", text), Sample.Stock).Refusals);
        Assert.Equal((line, column, length, message), (refusal.Line, refusal.Column, refusal.Length, refusal.Message));
    }

    [Fact]
    public void A_very_long_value_is_quoted_at_its_ends_only()
    {
        var refusal = Assert.Single(Sample.Read($"title: A\nsprings: [{{rate: 2 N/m, free-length: 1 m}}]\nwarm: {new string('y', 9000)}").Refusals);
        Assert.Equal(9000, refusal.Length);
        Assert.Matches("^warm is \"y+ … y+\"; it must be true or false.$", refusal.Message);
        Assert.InRange(refusal.Message.Length, 400, 410);
    }

    [Fact]
    public void All_refusals_come_at_once_in_the_order_of_the_text()
    {
        var reading = Sample.Read("""
            titel: Two
            springs:
              - rate: -25 N/mm
                free-length: -310 mm
              - rate: 20 mm
                free-length: 0 in
                at: weel
            warm: on
            """);
        Assert.Equal(
            [
                "\"titel\" is not a key of the file.",
                "the file has no title.",
                "springs item 1 rate is -25 N/mm; it must be above 0 N/mm.",
                "springs item 1 free length is -310 mm; it must be above 0 mm.",
                "springs item 2 rate: 20 mm is a length; a spring rate is wanted, e.g. 20 N/mm.",
                "springs item 2 free length is 0 in; it must be above 0 in.",
                "springs item 2 at is \"weel\"; it must be one of spring, wheel.",
                "warm is \"on\"; it must be true or false.",
            ],
            reading.Refusals.Select(r => r.Message).ToArray());
    }
}
