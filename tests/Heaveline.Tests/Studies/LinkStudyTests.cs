using Heaveline.Cars;
using Heaveline.Quantities;
using Heaveline.Studies;

namespace Heaveline.Tests.Studies;

public class LinkStudyTests
{
    private static readonly Car Joined = PlainCar.Saloon with { Name = "joined", Interconnection = new ElasticLink { Rate = new(4000.0) } };

    [Fact]
    public void All_that_is_wrong_is_said_at_once()
    {
        var known = new KnownThings(PlainCar.Saloon, Joined);
        var reading = LinkStudy.Question.Read(KnownThings.Words("car", "joined", "load", "five up"), known);
        Assert.Equal(["load"], reading.Objections.Select(o => o.Choice));
        var objection = Assert.Single(LinkStudy.Question.Read(KnownThings.Words("car", "plain saloon"), known).Objections);
        Assert.Equal(("car", false), (objection.Choice, objection.IsUsage));
        Assert.Contains("plain saloon has no interconnection", objection.Sentence, StringComparison.Ordinal);
        Assert.Throws<RefusedValueException>(() => new LinkAsked { Car = LoadedCar.Of(PlainCar.Saloon) });
    }

    // A common spring k a side adds 4·k to heave and nothing to pitch: of 90 N/mm for all springs and 2·16 N/mm of the links.
    [Fact]
    public void The_answer_tells_the_links_shares()
    {
        var answer = LinkStudy.Run(new LinkAsked { Car = LoadedCar.Of(Joined) });
        var heave = answer.Tables[0].Rows.Single(r => r.Key == "heave-rate").Values;
        Assert.Equal(2.0 * 4.0 * 4.0, heave[1]!.Value - heave[0]!.Value, 1e-9);
        var shares = Assert.Single(answer.Sentences);
        Assert.Equal("shares", shares.Id);
        // 32/122 is 26.2 %.
        Assert.StartsWith("The link carries 26 % of the stiffness in heave", shares.Text, StringComparison.Ordinal);
        Assert.Empty(answer.Cautions);
    }
}
