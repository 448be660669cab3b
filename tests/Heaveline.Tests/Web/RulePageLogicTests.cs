using Microsoft.AspNetCore.WebUtilities;
using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Quantities;
using Heaveline.Rules;
using Heaveline.Studies;
using Heaveline.Tests.House;
using Heaveline.Tuning;
using Heaveline.Web.Pages.Rules;
using Heaveline.Web.Serving;
using Heaveline.Web.Studying;

namespace Heaveline.Tests.Web;

public class RulePageLogicTests
{
    private static readonly GarageView Garage = new(new ServeOptions { Garage = Path.Combine(Checkout.Root, "examples", "garage") });

    private const string Saloon = "car=fern-saloon&load=driver";

    [Fact]
    public void Without_choices_the_first_car_and_its_first_load_are_mapped()
    {
        var reading = Read("");
        Assert.Empty(reading.Objections);
        var first = ((IFinder)Garage).Car(Garage.CarNames[0]).Value!;
        Assert.Equal(first.Name, reading.Asked!.Car.Name);
        Assert.Equal(first.LoadStates[0].Name, reading.Asked.Car.Load.Name);
    }

    [Fact]
    public void Every_choice_makes_another_question_and_the_same_choices_the_same()
    {
        string[] all =
        [
            Saloon, "car=fern-saloon&load=empty",
            Saloon + "&road=short-bump", Saloon + "&rule=damping", Saloon + "&measure=hit", Saloon + "&from=25", Saloon + "&to=90",
            "car=fern-saloon-cured&load=driver",
        ];
        Assert.Equal(all.Length, all.Select(query => Read(query).Key).Distinct().Count());
        Assert.Equal(Read(Saloon).Key, Read(Saloon + "&rule=ratio").Key);
        Assert.Equal(Read(Saloon).Key, Read("car=fern-saloon").Key);
        Assert.Equal(Read(Saloon + "&from=20").Key, Read(Saloon).Key);
    }

    [Fact]
    public void All_that_an_address_says_wrongly_is_told_at_once_each_beside_its_control()
    {
        var reading = Read("car=fern-saloon&load=elephants&rule=luck&measure=luck&from=fast&to=900&road=sine-pitch");
        Assert.Null(reading.Asked);
        Assert.Equal(["from", "load", "measure", "road", "rule", "to"], reading.Objections.Select(o => o.Choice).Distinct().Order());
        Assert.Contains("between 1.8 and 432 km/h", reading.Refused("to"));
        Assert.Contains("has no single bump", reading.Refused("road"));
        Assert.Contains("it has: empty, driver, four up with luggage", reading.Refused("load"));
    }

    [Fact]
    public void A_number_of_a_box_is_read_in_its_unit_with_a_point_or_a_comma()
    {
        Assert.Equal(32.5 / 3.6, Read(Saloon + "&from=32,5").Asked!.Slowest, 1e-12);
        Assert.Equal(32.5 / 3.6, Read(Saloon + "&from=32.5").Asked!.Slowest, 1e-12);
    }

    [Theory]
    [InlineData(0.9)]
    [InlineData(1.25)]
    public void A_trial_sets_the_springs_that_make_the_ratio_about_the_same_mean(double ratio)
    {
        var asked = Read(Saloon).Asked!;
        var link = QueryHelpers.ParseQuery(Trial(asked, ratio).Split('?')[1]);
        Assert.Equal("45", link["speed"]);
        var car = asked.Car.Car;
        Axle Sprung(Axle axle, string end) => axle with
        {
            Spring = axle.Spring with { Law = ((LinearSpring)axle.Spring.Law) with { Rate = new(1000.0 * Number(link[end + "-spring"]!)) } },
        };
        var made = RideTuning.Of(RideModel.Of(car with { Front = Sprung(car.Front, "front"), Rear = Sprung(car.Rear, "rear") }, asked.Car.Load));
        Assert.Equal(ratio, made.Ratio, 1e-3);
        Assert.Equal(RideTuning.Of(asked.Car.Model).MeanFrequency, made.MeanFrequency, 1e-3);
    }

    [Fact]
    public void A_trial_of_damping_sets_both_ends_by_one_factor()
    {
        var asked = Read(Saloon + "&rule=damping").Asked!;
        var own = RideTuning.Of(asked.Car.Model).MeanDamping;
        var link = QueryHelpers.ParseQuery(Trial(asked, 1.5 * own).Split('?')[1]);
        Assert.Equal(1.5, Number(link["front-damping"]!), 1e-3);
        Assert.Equal(1.5, Number(link["rear-damping"]!), 1e-3);
        Assert.False(link.ContainsKey("front-spring"));
    }

    [Fact]
    public void A_trial_of_the_wheelbase_says_whether_the_inertia_grows()
    {
        Assert.EndsWith("&wheelbase=2750&inertia=grows", Trial(Read(Saloon + "&rule=wheelbase").Asked!, 2.75), StringComparison.Ordinal);
        Assert.EndsWith("&wheelbase=2750", Trial(Read(Saloon + "&rule=wheelbase-same-body").Asked!, 2.75), StringComparison.Ordinal);
    }

    // 9.5 ft = 2.8956 m and 116 in = 2.9464 m by the international foot and inch.
    [Theory]
    [InlineData("2.9", 2.9)]
    [InlineData("2.9 m", 2.9)]
    [InlineData("2900 mm", 2.9)]
    [InlineData("9.5 ft", 2.8956)]
    [InlineData("116 in", 2.9464)]
    public void A_wheelbase_to_try_may_be_typed_with_any_unit(string typed, double metres)
    {
        var (value, refusal) = TriedValue.Of(typed, RuleAxis.Wheelbase([2.4, 3.2], inertiaGrows: true), ReaderUnits.Metric);
        Assert.Null(refusal);
        Assert.Equal(metres, value, 1e-9);
    }

    [Fact]
    public void A_value_off_the_map_is_refused_as_it_was_typed_with_limits_in_the_readers_unit()
    {
        var axis = RuleAxis.Wheelbase([2.4, 3.2], inertiaGrows: true);
        Assert.Equal("“2 m” does not lie between 2.4 m and 3.2 m.", TriedValue.Of("2 m", axis, ReaderUnits.Metric).Refusal);
        Assert.Matches(@"^“2 m” does not lie between 7\.[89]\d* ft and 10\.5\d* ft\.$", TriedValue.Of("2 m", axis, ReaderUnits.Imperial).Refusal);
        Assert.Equal(
            "“7” does not lie between 0.8 and 1.4.", TriedValue.Of("7", RuleAxis.FrequencyRatio([0.8, 1.4]), ReaderUnits.Imperial).Refusal);
        Assert.NotNull(TriedValue.Of("2.9 kg", axis, ReaderUnits.Metric).Refusal);
    }

    [Fact]
    public async Task A_coarse_answer_comes_before_the_fine_one_and_that_is_kept()
    {
        using var queue = new StudyQueue();
        using var study = RuleView.StudyIn(queue);
        var reading = Read(Saloon + "&rule=index&measure=hit&from=60&to=66");
        reading = reading with { Asked = reading.Asked! with { Detail = RuleDetail.Stepwise with { Values = 16, Speeds = 12 } } };
        var shown = new List<RuleView>();
        var view = await study.Answer(reading, shown.Add, null, TestContext.Current.CancellationToken);
        Assert.Equal([true, true, false], shown.Append(view).Select(v => v.Answer.IsCoarse));
        Assert.True(shown[0].Answer.Map.Speeds.Count * shown[0].Answer.Map.Axis.Values.Count < 200);
        Assert.Equal(reading.Asked.Car.Car.LoadStates.Count + 1, shown[1].Answer.Loads.Count);
        Assert.Same(view, study.Find(reading.Key));
        // Both maps meet in the places that they share.
        var (coarse, fine) = (shown[0].Answer.Map, view.Answer.Map);
        Assert.Equal(coarse.Measured[0][0], fine.Measured[0][0], 1e-6 * coarse.Measured[0][0]);
        Assert.Equal(coarse.Measured[^1][^1], fine.Measured[^1][^1], 1e-6 * coarse.Measured[^1][^1]);
    }

    [Fact]
    public async Task Another_measure_is_no_other_question_of_the_passes_and_shows_another_map_of_the_same_answer()
    {
        string[] keys = [.. new[] { "", "&measure=hit", "&measure=late" }
            .Select(measure => RuleView.Read(PageChoices.Of(Saloon + measure, RuleStudy.OnPage.Choices, Garage).Given, Garage).Key)];
        Assert.Single(keys.Distinct());
        using var queue = new StudyQueue();
        using var study = RuleView.StudyIn(queue);
        var reading = RuleView.Read(PageChoices.Of(Saloon + "&from=60&to=66", RuleStudy.OnPage.Choices, Garage).Given, Garage);
        reading = reading with { Asked = reading.Asked! with { Detail = new RuleDetail { Values = 4, Speeds = 2 } } };
        var view = await study.Answer(reading, null, null, TestContext.Current.CancellationToken);
        foreach (var measure in Heaveline.Measures.PassCatalogue.Judges)
        {
            var judged = view.By(measure.Word!)!;
            Assert.Equal(measure.Word, judged.Answer.Map.Measure.Word);
            Assert.Same(judged, view.By(measure.Word!));
            Assert.Equal(measure.LooksFor <= 0.0 ? "settling" : "hit", judged.Beside!.Answer.Map.Measure.Word);
        }
    }

    [Fact]
    public void A_measure_that_the_car_has_not_has_no_map_and_the_page_says_why()
    {
        var asked = Read(Saloon).Asked! with { Car = LoadedCar.Of(PlainCar.Saloon), Detail = new RuleDetail { Values = 4, Speeds = 2 } };
        var (view, jerk) = (new RuleView(RuleStudy.Run(asked)), Heaveline.Measures.PassCatalogue.Judges.Single(m => m.Word == "jerk"));
        Assert.NotNull(view.By("late"));
        Assert.Null(view.By("jerk"));
        Assert.Contains(jerk.WhyNone(PlainCar.Saloon)!, view.NoNumber(jerk).Message, StringComparison.Ordinal);
    }

    private static AskedReading<RuleAsked> Read(string query) =>
        RuleStudy.OnPage.Read(PageChoices.Of(query, RuleStudy.OnPage.Choices, Garage).Given, Garage);

    private static string Trial(RuleAsked asked, double value) => TrialLink.Of(asked, "fern-saloon", "village-hump", value, 45.0);

    private static double Number(string? text) => double.Parse(text!, System.Globalization.CultureInfo.InvariantCulture);
}
