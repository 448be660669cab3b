using Heaveline.Rules;

namespace Heaveline.Tests.Rules;

/// <summary>What the points of one speed say together.</summary>
public class RuleTallyTests
{
    [Theory]
    [InlineData(1, 9, 0, 0, 0, 0, 3, SpeedVerdict.Holds)]
    [InlineData(0, 9, 1, 0, 0, 0, 3, SpeedVerdict.Fails)]
    [InlineData(1, 0, 1, 0, 0, 0, 0, SpeedVerdict.Depends)]
    [InlineData(0, 2, 0, 0, 0, 5, 0, SpeedVerdict.NoDifference)]
    [InlineData(0, 0, 0, 1, 0, 5, 0, SpeedVerdict.Holds)]
    [InlineData(0, 0, 0, 0, 1, 0, 0, SpeedVerdict.Fails)]
    [InlineData(3, 0, 0, 0, 1, 0, 0, SpeedVerdict.Depends)]
    [InlineData(0, 0, 0, 0, 0, 1, 4, SpeedVerdict.NeitherPasses)]
    [InlineData(0, 0, 0, 0, 0, 0, 4, SpeedVerdict.NotComputed)]
    public void A_speed_is_true_where_some_points_are_better_and_none_is_worse_whatever_could_not_be_computed(
        int better, int same, int worse, int onlyThis, int onlyReference, int neither, int none, SpeedVerdict together) =>
        Assert.Equal(together, new RuleTally(better, same, worse, onlyThis, onlyReference, neither, none).Together);
}
