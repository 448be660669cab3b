namespace Heaveline.Tests.Answers;

public class CsvCellTests
{
    /// <summary>RFC 4180 §2, rules 5 to 7; the mark before a formula is common practice (OWASP, CSV injection).</summary>
    [Theory]
    [InlineData("Fern saloon", "Fern saloon")]
    [InlineData("Fern saloon, cured", "\"Fern saloon, cured\"")]
    [InlineData("the \"cured\" one", "\"the \"\"cured\"\" one\"")]
    [InlineData("two\nlines", "\"two\nlines\"")]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("+1", "'+1")]
    [InlineData("-1+cmd", "'-1+cmd")]
    [InlineData("@SUM(1)", "'@SUM(1)")]
    [InlineData(" =1+1", "' =1+1")]
    [InlineData("\u00a0\t=1+1", "'\u00a0\t=1+1")]
    [InlineData("＝1+1", "'＝1+1")]
    [InlineData("＋1", "'＋1")]
    [InlineData("－1", "'－1")]
    [InlineData("＠a", "'＠a")]
    [InlineData("\ta", "'\ta")]
    [InlineData("\ra", "\"'\ra\"")]
    [InlineData("a=b", "a=b")]
    [InlineData("", "")]
    public void A_cell_reads_back_as_it_was_and_is_never_a_formula(string text, string cell) =>
        Assert.Equal(cell, Heaveline.Answers.CsvCell.Of(text));
}
