using Microsoft.AspNetCore.WebUtilities;
using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Tests.House;
using Heaveline.Tuning;
using Heaveline.Web.Pages.Rules;
using Heaveline.Web.Serving;

namespace Heaveline.Tests.Web;

public class RulePageLogicTests
{
    private static readonly GarageView Garage = new(new ServeOptions { Garage = Path.Combine(Checkout.Root, "examples", "garage") });

    private static RuleChoices Asked { get; } = new("fern-saloon", "driver", null, null, null, null, null);

    [Fact]
    public void Without_choices_the_first_car_and_its_first_load_are_mapped()
    {
        var question = RuleQuestion.Of(new RuleChoices(null, null, null, null, null, null, null), Garage);
        Assert.Empty(question.Refused);
        Assert.Equal(Garage.CarNames[0], question.CarName);
        Assert.Equal(question.Car!.LoadStates[0], question.Load);
    }

    [Fact]
    public void Every_choice_makes_another_question_and_the_same_choices_the_same()
    {
        RuleChoices[] all = [Asked, Asked with { Load = "as described" }, Asked with { Road = "short-bump" }, Asked with { Rule = "damping" }, Asked with { Measure = "hit" }, Asked with { From = "25" }, Asked with { To = "90" }, Asked with { Car = "fern-saloon-cured" }];
        Assert.Equal(all.Length, all.Select(c => RuleQuestion.Of(c, Garage).Key).Distinct().Count());
        Assert.Equal(RuleQuestion.Of(Asked, Garage).Key, RuleQuestion.Of(Asked with { Rule = "ratio" }, Garage).Key);
    }

    [Theory]
    [InlineData(0.9)]
    [InlineData(1.25)]
    public void A_trial_sets_the_springs_that_make_the_ratio_about_the_same_mean(double ratio)
    {
        var question = RuleQuestion.Of(Asked, Garage);
        var link = QueryHelpers.ParseQuery(TrialLink.Of(question, ratio, 45.0).Split('?')[1]);
        Assert.Equal("45", link["speed"]);
        var car = question.Car!;
        Axle Sprung(Axle axle, string end) => axle with { Spring = axle.Spring with { Law = ((LinearSpring)axle.Spring.Law) with { Rate = new(1000.0 * Number(link[end + "-spring"]!)) } } };
        var made = RideTuning.Of(RideModel.Of(car with { Front = Sprung(car.Front, "front"), Rear = Sprung(car.Rear, "rear") }, question.Load));
        Assert.Equal(ratio, made.Ratio, 1e-3);
        Assert.Equal(RideTuning.Of(question.Model(question.Load)).MeanFrequency, made.MeanFrequency, 1e-3);
    }

    [Fact]
    public void A_trial_of_damping_sets_both_ends_by_one_factor()
    {
        var question = RuleQuestion.Of(Asked with { Rule = "damping" }, Garage);
        var own = RideTuning.Of(question.Model(question.Load)).MeanDamping;
        var link = QueryHelpers.ParseQuery(TrialLink.Of(question, 1.5 * own, 45.0).Split('?')[1]);
        Assert.Equal(1.5, Number(link["front-damping"]!), 1e-3);
        Assert.Equal(1.5, Number(link["rear-damping"]!), 1e-3);
        Assert.False(link.ContainsKey("front-spring"));
    }

    [Fact]
    public void A_trial_of_the_wheelbase_says_whether_the_inertia_grows()
    {
        Assert.EndsWith("&wheelbase=2750&inertia=grows", TrialLink.Of(RuleQuestion.Of(Asked with { Rule = "wheelbase" }, Garage), 2.75, 45.0), StringComparison.Ordinal);
        Assert.EndsWith("&wheelbase=2750", TrialLink.Of(RuleQuestion.Of(Asked with { Rule = "wheelbase-same-body" }, Garage), 2.75, 45.0), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_coarse_answer_comes_before_the_fine_one_and_that_is_kept()
    {
        using var desk = new RuleDesk(fineValues: 16, fineSpeeds: 12);
        var question = RuleQuestion.Of(Asked with { Rule = "index", Measure = "hit", From = "60", To = "66" }, Garage);
        var shown = new List<RuleView>();
        var answer = await desk.Answer(question, shown.Add, null, TestContext.Current.CancellationToken);
        Assert.Equal([false, false, true], shown.Select(v => v.IsFine));
        Assert.True(shown[0].Answer.Map.Speeds.Count * shown[0].Answer.Map.Axis.Values.Count < 200);
        Assert.Equal(question.Car!.LoadStates.Count + 1, shown[1].Answer.Loads.Count);
        Assert.Same(answer, desk.Find(question));
        // Both maps meet in the places that they share.
        var (coarse, fine) = (shown[0].Answer.Map, answer.Answer.Map);
        Assert.Equal(coarse.Measured[0][0], fine.Measured[0][0], 1e-6 * coarse.Measured[0][0]);
        Assert.Equal(coarse.Measured[^1][^1], fine.Measured[^1][^1], 1e-6 * coarse.Measured[^1][^1]);
    }

    private static double Number(string? text) => double.Parse(text!, System.Globalization.CultureInfo.InvariantCulture);
}
