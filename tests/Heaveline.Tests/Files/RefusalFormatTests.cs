using Heaveline.Files;

namespace Heaveline.Tests.Files;

public class RefusalFormatTests
{
    [Fact]
    public void A_refused_value_is_shown_with_its_line_marked()
    {
        var reading = Sample.Read("title: A\nsprings:\n  - free-length: 310 mm\n    rate: -25 N/mm\n");
        Assert.Equal(
            """
            bench.yaml:4:11: refused: springs item 1 rate is -25 N/mm; it must be above 0 N/mm.
             4 |     rate: -25 N/mm
               |           ^^^^^^^^
               = Give the rate of one spring as a positive number, or give the wire's dimensions instead.
            """.ReplaceLineEndings("\n"),
            reading.Format());
    }

    [Fact]
    public void Two_refusals_stand_apart()
    {
        var reading = Sample.Read("title: A\nsprings:\n  - free-length: 310 mm\n    rate: 20 N/mm\n    att: wheel\nwarm: yes\n");
        Assert.Equal(
            """
            bench.yaml:5:5: refused: "att" is not a key of springs item 1.
             5 |     att: wheel
               |     ^^^
               = Did you mean at? Known here: rate, free-length, at.

            bench.yaml:6:7: refused: warm is "yes"; it must be true or false.
             6 | warm: yes
               |       ^^^
               = Write true.
            """.ReplaceLineEndings("\n"),
            reading.Format());
    }

    [Fact]
    public void A_line_number_of_two_digits_keeps_the_bars_in_line()
    {
        var reading = Sample.Read(string.Concat(Enumerable.Repeat("# note\n", 10)) + "title: A\n");
        Assert.Equal(
            """
            bench.yaml:11:1: refused: the file has no springs.
             11 | title: A
                | ^^^^^
                = Add springs, a list, each item a group of keys (rate, free-length, at) (The springs).
            """.ReplaceLineEndings("\n"),
            reading.Format());
    }

    [Fact]
    public void A_long_line_is_cut_around_the_mark_and_control_characters_do_not_reach_the_terminal()
    {
        var source = new SourceText("a.yaml", new string('x', 500) + "\u001b[2J" + new string('y', 500));
        var lines = new Refusal("a.yaml", 1, 501, 4, "m.", "a.").Format(source).Split('\n');
        Assert.DoesNotContain('\u001b', string.Concat(lines));
        Assert.Equal(" 1 | " + new string('x', 20) + "\uFFFD[2J" + new string('y', 96), lines[1]);
        Assert.Equal("   | " + new string(' ', 20) + "^^^^", lines[2]);
    }

    [Fact]
    public void A_mark_never_runs_past_its_line()
    {
        var lines = new Refusal("a.yaml", 1, 3, 99, "m.", "a.").Format(new SourceText("a.yaml", "abcd\nefgh")).Split('\n');
        Assert.Equal("   |   ^^", lines[2]);
    }
}
