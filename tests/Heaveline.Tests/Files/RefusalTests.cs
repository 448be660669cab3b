using Heaveline.Files;

namespace Heaveline.Tests.Files;

public class RefusalTests
{
    [Fact]
    public void A_refusal_marks_the_value_below_its_line()
    {
        const string line = "    rate: -25 N/mm";
        var refusal = new Refusal(
            "fern-estate.yaml",
            14,
            line.IndexOf('-', StringComparison.Ordinal) + 1,
            "-25 N/mm".Length,
            "front spring rate is -25 N/mm; it must be above 0 N/mm.",
            "Give the rate of one spring as a positive number, or give the wire's dimensions instead.");
        const string expected = """
            fern-estate.yaml:14:11: refused: front spring rate is -25 N/mm; it must be above 0 N/mm.
             14 |     rate: -25 N/mm
                |           ^^^^^^^^
                = Give the rate of one spring as a positive number, or give the wire's dimensions instead.
            """;
        Assert.Equal(expected, refusal.Format(line));
    }

    [Fact]
    public void A_tab_before_the_value_stays_a_tab_before_the_mark() =>
        Assert.Contains("\n   | \t^^\n", new Refusal("a.csv", 3, 2, 2, "it is 12.", "Give less.").Format("\t12"), StringComparison.Ordinal);
}
