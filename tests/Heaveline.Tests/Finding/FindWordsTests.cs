using Heaveline.Finding;
using Heaveline.Measures;

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
    [InlineData("front frequency at most 1,3 Hz, fern", "fern", "front-frequency ≤ 1.3")]
    [InlineData("Front Frequency At Most 1.3 Hz", "", "front-frequency ≤ 1.3")]
    [InlineData("saloon front travel left to the bump stop at least 60 mm", "saloon", "front-bump-left ≥ 60")]
    [InlineData("front height, change at least −5 mm; fern", "fern", "front-height ≥ -5")]
    public void Words_and_numbers_are_told_apart(string typed, string words, string bounds)
    {
        var (query, problem) = FindWords.Read(typed);
        Assert.Equal("", problem);
        Assert.Equal(words, string.Join(' ', query.Words));
        Assert.Equal(bounds, string.Join("; ", query.Bounds.Select(bound => FormattableString.Invariant(
            $"{bound.Measure.Key} {(bound.IsLeast ? '≥' : '≤')} {bound.Measure.Unit.Of(bound.Limit):0.###}"))));
    }

    // The command reads a bound by itself, the page finds it among words: both take whatever either prints.
    [Fact]
    public void Every_number_is_read_back_as_it_is_printed_by_the_command_and_by_the_page()
    {
        foreach (var measure in GarageIndex.Numbers)
        {
            foreach (var name in MeasureBoundText.NamesOf(measure).Append(measure.Key).Append(measure.Key.Replace('-', ' ')))
            {
                var limit = measure.Unit.ToSi(-12.5);
                var printed = $"{name} at least {new MeasureBound { Measure = measure, IsLeast = true, Limit = limit }.Print(limit)}";
                var (bound, problem) = MeasureBoundText.Read(printed, GarageIndex.Numbers);
                var (query, said) = FindWords.Read(printed);
                if (MeasureBoundText.Named(name, GarageIndex.Numbers).Count > 1)
                {
                    Assert.Contains("what several numbers are called", problem, StringComparison.Ordinal);
                    continue;
                }

                Assert.True(problem.Length == 0 && said.Length == 0, $"{printed}: {problem} {said}");
                Assert.Equal((measure.Key, -12.5), (bound!.Measure.Key, Math.Round(measure.Unit.Of(bound.Limit), 6)));
                Assert.Equal(bound, Assert.Single(query.Bounds));
                Assert.Empty(query.Words);
            }
        }
    }

    [Theory]
    [InlineData("its centre behind the front axle at least 1 m", "say which, centre")]
    [InlineData("ratoi at most 1", "Did you mean ratio?")]
    [InlineData("mass at least 1300", "write a number in kg")]
    [InlineData("ratio at most", "does not say what is at least or at most so much")]
    public void What_is_wrong_is_said_as_the_command_says_it(string typed, string said) =>
        Assert.Contains(said, FindWords.Read(typed).Problem, StringComparison.Ordinal);
}
