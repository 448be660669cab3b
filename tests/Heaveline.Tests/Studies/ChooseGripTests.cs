using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Rides;
using Heaveline.Roads;
using Heaveline.Search;
using Heaveline.Studies;

namespace Heaveline.Tests.Studies;

/// <summary>Grip as a wish and as a limit, by the definitions of ride and pass.</summary>
public class ChooseGripTests
{
    private static readonly ChooseAsked Asked = VillageParts.Asked with
    {
        Wishes = [ChooseWish.Settling, ChooseWish.Grip, ChooseWish.LoadLost],
        Draws = 10,
        Open = [Heaveline.Parts.PartPlace.RearDamper, Heaveline.Parts.PartPlace.RearSpring],
    };

    private static readonly ChooseAnswer Answer = ChooseStudy.Run(Asked, new StudyRun { Degree = 2 });

    [Fact]
    public void The_car_as_it_is_loses_what_ride_and_pass_say()
    {
        var (use, row) = (Answer.Findings.Use, Answer.Findings.Found.Present);
        var model = RideModel.Of(Asked.Car, Asked.Loads[0]);
        var grip = use.Columns.First(c => c.Kind == WishKind.Grip && c.Name.EndsWith(Asked.Loads[0].Name, StringComparison.Ordinal));
        var response = RandomResponse.Of(model, RoadSpectrum.Of(Asked.Class), Asked.RideSpeeds[0]);
        var worst = RideCatalogue.WorstLoadVariation.Of(new CarOnRoad(response));
        Assert.Equal(worst, row.Numbers[grip.At], 1e-9 * worst);
        var road = Asked.Roads[0];
        var lost = use.Columns.First(c => c.Kind == WishKind.LoadLost
            && c.Name == $"{road.Name}, {ChooseUse.Speed(road.Speeds[0])}, {Asked.Loads[0].Name}");
        var pass = Pass.Of(model, road.Road, road.Speeds[0]);
        var least = Enumerable.Range(0, 4).Min(i => WheelMeasures.Of(pass, i).LeastLoad / WheelMeasures.Of(pass, i).StaticLoad);
        Assert.Equal(1.0 - least, row.Numbers[lost.At], 1e-3);
    }

    [Fact]
    public void Both_are_wishes_beside_the_settling_and_stand_in_the_shortlist()
    {
        Assert.Equal([WishKind.Settling, WishKind.Grip, WishKind.LoadLost], Answer.Findings.Found.Wishes);
        Assert.All(Answer.Findings.Found.AsItIs.Wishes, wish => Assert.Equal(1.0, wish));
        Assert.NotEmpty(Answer.Findings.List);
        Assert.Contains(Answer.ShortTables[0].Rows, one => one.Key == "change-of-tyre-load");
        Assert.Contains(Answer.ShortTables[0].Rows, one => one.Key == "tyre-load-lost");
    }

    [Fact]
    public void A_limit_on_either_is_kept_by_every_setup_that_may_be_chosen()
    {
        var limits = Asked.Limits with { Grip = 0.0, LeastLoad = 0.3 };
        var answer = ChooseStudy.Run(Asked with { Wishes = [], Limits = limits }, new StudyRun { Degree = 2 });
        var (found, use) = (answer.Findings.Found, answer.Findings.Use);
        Assert.Equal([WishKind.WorstRoad, WishKind.Hit, WishKind.Grip, WishKind.LoadLost], found.Task.Limits.Select(limit => limit.Wish));
        foreach (var one in found.Driven.Where(one => one.IsAllowed))
        {
            Assert.True(found.Scores.Of(WishKind.Grip, one.Row, found.Present) <= 1.0 + 1e-12);
            Assert.All(use.LoadLost, at => Assert.True(one.Row.Numbers[at] <= Math.Max(0.7, found.Present.Numbers[at]) + 1e-12));
        }

        Assert.Contains(answer.Sentences, s => s.Id == "limits" && s.Text.Contains("change of tyre load", StringComparison.Ordinal));
    }

    // A mean over the use cases hid that one of them left a tyre a quarter of the load that it had.
    [Fact]
    public void A_setup_that_leaves_a_tyre_much_less_load_says_so_in_the_finding_and_on_the_shortlist()
    {
        var (findings, best) = (Answer.Findings, Answer.Findings.List[0]);
        Assert.Null(ChooseGrip.Fall(findings, best with { Grip = findings.Grip }));
        var fallen = best with
        {
            Grip = new ChooseGrip([findings.Grip.Axles[0], (findings.Grip.Axles[1].Least - 0.16, "hump, 40 km/h, driver")]),
            Harder = new ChooseHarder(null, null) { Lost = (1.215, "hump, 40 km/h, driver") },
        };
        var words = new ChooseWords(findings with { List = [fallen, .. findings.List.Skip(1)] });
        Assert.Contains(" But the least tyre load falls: rear", words.Finding.Text, StringComparison.Ordinal);
        Assert.Contains("; the least tyre load falls: rear", words.List[0].Text, StringComparison.Ordinal);
        Assert.Contains("but in 'hump, 40 km/h, driver' the tyre load lost is 21.5 % more", words.List[0].Text, StringComparison.Ordinal);
        Assert.All(findings.List, one => Assert.NotNull(one.Harder.Lost));
    }

    [Fact]
    public void Who_asks_for_neither_gets_the_rows_that_there_were() =>
        Assert.Equal(
            (2 * Answer.Findings.Use.Crossings.Length) + Answer.Findings.Use.Rides.Length,
            new ChooseUse(VillageParts.Asked).Numbers);
}
