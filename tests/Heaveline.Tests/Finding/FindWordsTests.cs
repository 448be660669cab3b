using Heaveline.Finding;

namespace Heaveline.Tests.Finding;

/// <summary>What is typed into the one box of the garage.</summary>
public sealed class FindWordsTests
{
    [Theory]
    [InlineData("fern", "fern", "")]
    [InlineData("fiat at home", "fiat at home", "")]
    [InlineData("ratio at most 1", "", "ratio ≤ 1")]
    [InlineData("saloon, ratio at most 1, mass at least 1300 kg", "saloon", "ratio ≤ 1; mass ≥ 1300")]
    [InlineData("fern ratio at least 1.1", "fern", "ratio ≥ 1.1")]
    [InlineData("front frequency at most 1.3 Hz", "", "front-frequency ≤ 1.3")]
    public void Words_and_numbers_are_told_apart(string typed, string words, string bounds)
    {
        var (query, problem) = FindWords.Read(typed);
        Assert.Equal("", problem);
        Assert.Equal(words, string.Join(' ', query.Words));
        Assert.Equal(bounds, string.Join("; ", query.Bounds.Select(bound => FormattableString.Invariant(
            $"{bound.Measure.Key} {(bound.IsLeast ? '≥' : '≤')} {bound.Measure.Unit.Of(bound.Limit):0.###}"))));
    }

    [Theory]
    [InlineData("ratoi at most 1", "Did you mean ratio?")]
    [InlineData("mass at least 1300", "write a number in kg")]
    [InlineData("ratio at most", "does not say what is at least or at most so much")]
    public void What_is_wrong_is_said_as_the_command_says_it(string typed, string said) =>
        Assert.Contains(said, FindWords.Read(typed).Problem, StringComparison.Ordinal);
}
