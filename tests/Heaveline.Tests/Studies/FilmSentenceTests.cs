using Heaveline.Films;
using Heaveline.Studies;

namespace Heaveline.Tests.Studies;

/// <summary>What is said of numbers of films that lie at the edge of being told.</summary>
public class FilmSentenceTests
{
    [Theory]
    [InlineData(0.62, 0.55, 0.70, 1)]
    [InlineData(0.38, 0.30, 0.45, -1)]
    [InlineData(0.50, 0.42, 0.58, 0)]
    [InlineData(0.60, 0.45, 0.75, null)]
    [InlineData(0.50, 0.05, 0.95, null)]
    public void Heave_and_pitch_are_called_alike_only_where_the_interval_lies_about_a_half(double share, double low, double high, int? which) =>
        Assert.Equal(which, HeaveWords.Of(new FilmNumber(share, low, high)));

    [Fact]
    public void A_film_that_shows_less_than_a_second_is_told_of_by_what_it_shows()
    {
        var half = FilmSentence(0.94);
        Assert.Contains("of the motion in the 0.94 s that were seen after the rear wheels have left is level", half, StringComparison.Ordinal);
        Assert.DoesNotContain("first second", half, StringComparison.Ordinal);
        Assert.Contains("in the first second after the rear wheels have left", FilmSentence(1.0), StringComparison.Ordinal);
        Assert.StartsWith("Whether it heaves more than it pitches is not told: 60 % (45 % to 75 %)", half, StringComparison.Ordinal);
    }

    [Fact]
    public void Dampers_whose_ends_part_in_opposite_senses_are_not_called_stiffer_in_one()
    {
        string Of(double front, double rear) => FilmLawWords.Of(new LawOdds(5.0, 0.0, front, rear), 1);
        Assert.Contains("they are stiffer in rebound than in bump, ", Of(0.3, 0.2), StringComparison.Ordinal);
        Assert.Contains("they are stiffer in bump than in rebound, ", Of(-0.3, -0.2), StringComparison.Ordinal);
        Assert.Contains(
            "the front ones are stiffer in rebound than in bump, the rear ones stiffer in bump than in rebound",
            Of(0.4, -0.2),
            StringComparison.Ordinal);
        Assert.DoesNotContain("they are stiffer", Of(0.4, -0.2), StringComparison.Ordinal);
    }

    private static string FilmSentence(double reach) => HeaveWords.Says(new FilmNumbers
    {
        OfPitch = [], HeaveShare = new FilmNumber(0.60, 0.45, 0.75), Centre = default, AboutCentre = 0.9, PitchPerLift = default, IsStill = false,
        CyclesSeen = 1.0, Reach = reach,
    });
}
