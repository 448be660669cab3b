using Heaveline.Quantities;

namespace Heaveline.Tests.Quantities;

public class NearestWordTests
{
    private static readonly string[] Known = ["rate", "motion ratio", "free length"];

    [Theory]
    [InlineData("rtae", "rate")]
    [InlineData("Rates", "rate")]
    [InlineData("motion-ratio", "motion ratio")]
    [InlineData("motoin_rato", "motion ratio")]
    public void A_slip_finds_its_word(string typed, string word) => Assert.Equal(word, NearestWord.Of(typed, Known));

    [Theory]
    [InlineData("colour")]
    [InlineData("")]
    [InlineData("x")]
    public void A_strange_word_finds_none(string typed) => Assert.Null(NearestWord.Of(typed, Known));
}
