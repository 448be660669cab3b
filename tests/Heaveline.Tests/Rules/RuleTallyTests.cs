using Heaveline.Rules;

namespace Heaveline.Tests.Rules;

/// <summary>What a rule is in most places: more than half of those that could be computed.</summary>
public class RuleTallyTests
{
    [Fact]
    public void Most_is_more_than_half_of_what_could_be_computed()
    {
        Assert.Equal(RuleVerdict.Holds, new RuleTally(6, 3, 2, 100).Most);
        Assert.Equal(RuleVerdict.Fails, new RuleTally(3, 2, 6, 0).Most);
        Assert.Equal(RuleVerdict.NoDifference, new RuleTally(2, 6, 3, 0).Most);
        // Half is not most, nor is the most of three less than half.
        Assert.Null(new RuleTally(5, 3, 2, 0).Most);
        Assert.Null(new RuleTally(2, 3, 5, 0).Most);
        Assert.Null(new RuleTally(2, 5, 3, 0).Most);
        Assert.Null(new RuleTally(4, 3, 3, 0).Most);
        Assert.Null(new RuleTally(0, 0, 0, 9).Most);
    }
}
