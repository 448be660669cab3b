using System.Globalization;
using Heaveline.Parts;
using Heaveline.Quantities;
using Heaveline.Search;
using Heaveline.Studies;

namespace Heaveline.Tests.Studies;

/// <summary>What fitting takes, in money and on the shopping list.</summary>
public class ChooseLabourTests
{
    private static readonly ChooseAsked Plain = VillageParts.Asked with
    {
        Open = [PartPlace.RearDamper, PartPlace.RearSpring],
        RideSpeeds = [],
        Draws = 10,
    };

    // Two hours a place at 45 EUR an hour.
    private static readonly PartsList Paid = VillageParts.List with
    {
        HourlyPrice = new Money(45m, "EUR"),
        Parts =
        [
            .. VillageParts.List.Parts.Select(part => part with
            {
                Labour = new Amount<Time>(7200.0), FittingPrice = new Money(90m, "EUR"),
            }),
        ],
    };

    private static readonly ChooseAnswer Without = Run(VillageParts.List);
    private static readonly ChooseAnswer With = Run(Paid);

    [Fact]
    public void Every_setup_costs_its_fitting_more_place_by_place()
    {
        var (without, with) = (Without.Findings.Parts.Space, With.Findings.Parts.Space);
        Assert.Equal(without.Count, with.Count);
        for (var setup = 0L; setup < with.Count; setup++)
        {
            Assert.Equal(without.Price(setup) + (90.0 * with.Changed(setup)), with.Price(setup), 1e-9);
        }
    }

    [Fact]
    public void A_budget_counts_the_fitting()
    {
        var most = new Money(2 * 120m, "EUR");
        Assert.Contains(Run(VillageParts.List, most).Findings.Found.Front, one => one.Setup != 0L);
        Assert.All(Run(Paid, most).Findings.Found.Driven.Where(one => one.IsAllowed && one.Setup != 0L), one =>
            Assert.True(With.Findings.Parts.Space.Price(one.Setup) <= 240.0));
    }

    [Fact]
    public void The_shopping_list_says_hours_and_money_and_adds_up_to_the_price()
    {
        Assert.All(With.Findings.List, told =>
        {
            var lines = ChooseShopping.Of(told, With.Findings.Asked);
            var changed = With.Findings.Parts.Space.Changed(told.Entry.Setup);
            Assert.All(lines.Take(changed), line => Assert.Contains(", 2 h to fit, 90 EUR", line.Text, StringComparison.Ordinal));
            if (changed > 1)
            {
                var fitting = (90 * changed).ToString(CultureInfo.InvariantCulture);
                var sum = With.Findings.Parts.Price(told.Entry.Setup);
                Assert.StartsWith($"Together {sum}, {fitting} EUR of it for fitting", lines[^1].Text, StringComparison.Ordinal);
                Assert.Contains("work that two places of one axle share is counted twice", lines[^1].Text, StringComparison.Ordinal);
            }
        });
        Assert.Contains(With.Sentences, s => s.Id == "fitting" && s.Text.Contains("'small list' (45 EUR an hour)", StringComparison.Ordinal));
        Assert.DoesNotContain(Without.Sentences, s => s.Id == "fitting");
    }

    [Fact]
    public void Nothing_is_plainly_the_cheapest_where_hours_of_fitting_have_no_price()
    {
        string[] Told(PartsList list)
        {
            var findings = Run(list).Findings;
            ChooseTold[] all = [.. findings.List.Select(one => one with { Entry = new ShortlistEntry(one.Entry.Tried, [ShortlistReason.Cheapest]) })];
            Assert.NotEmpty(all);
            return [.. new ChooseWords(findings with { List = [.. all] }).List.Select(s => s.Text)];
        }

        const string Said = "the hours of fitting not counted";
        Assert.All(
            Told(Paid with { HourlyPrice = null, Parts = [.. Paid.Parts.Select(part => part with { FittingPrice = null })] }),
            text => Assert.Contains(Said, text, StringComparison.Ordinal));
        Assert.All(Told(Paid), text => Assert.DoesNotContain(Said, text, StringComparison.Ordinal));
    }

    private static ChooseAnswer Run(PartsList list, Money? most = null) => ChooseStudy.Run(
        Plain with { Lists = [list], Limits = new ChooseLimits { Cost = most } }, new StudyRun { Degree = 2 });
}
