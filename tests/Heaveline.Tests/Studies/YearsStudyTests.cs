using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Quantities;
using Heaveline.Studies;
using Heaveline.Tests.Cli;
using Heaveline.Tests.Doubts;
using Heaveline.Tests.House;
using Heaveline.Tests.Measures;
using Heaveline.Tuning;

namespace Heaveline.Tests.Studies;

public class YearsStudyTests
{
    private static readonly Car Measured = MeasuredCar.With(MeasuredCar.Saloon, 0.05, 0.03, 0.02) with { Name = "measured" };

    private static readonly string Cured = Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon-cured.yaml");

    // A body on springs of 20 N/mm, its rear 3 mm lower a year, 40 mm from its stop: 39 mm in year 13, 42 mm in year 14.
    [Fact]
    public void Without_a_doubt_the_stop_is_met_when_it_is_sunk_that_far()
    {
        var car = BodyOnSprings.Of(1000.0, 20000.0);
        var stopped = car with { Rear = car.Rear with { BumpStop = new Stop { Clearance = new(0.040), Rate = new(40000.0) } } };
        var chance = Assert.Single(Of(stopped, 0.003).Chances, c => c.Event == YearsEvent.StandsOnStop);
        Assert.Equal([.. Enumerable.Repeat(0.0, 14), 1.0, 1.0], chance.Shares);
        Assert.Equal(40.0 / 3.0, chance.YearOf(0.5)!.Value, 0.02);
        Assert.Equal(chance.YearOf(0.1), chance.YearOf(0.9));
    }

    // 1.2 % less 3 mm over 2.7 m a year: 0.53 % in year 6, 0.42 % in year 7, where UN Regulation 48 up to the 08 series asks for 0.5 % at least.
    [Fact]
    public void A_nose_that_rises_lifts_the_beam_above_its_range()
    {
        var car = BodyOnSprings.Of(1000.0, 20000.0);
        Assert.Equal(2.7, car.Wheelbase.Si);
        var lit = car with { Headlamp = new Headlamp { Height = new(0.66), Drop = new(0.012), Rule = HeadlampRule.UnRegulation48Series08 } };
        var answer = Of(lit, 0.003);
        Assert.Equal([.. Enumerable.Repeat(0.0, 7), .. Enumerable.Repeat(1.0, 9)], answer.Chances.Single(c => c.Event == YearsEvent.HighBeam).Shares);
        Assert.StartsWith(
            "Under 'empty' it is best before year 6.3: from then on it is more likely than not that the dipped beam points above its range.",
            answer.Sentences[0].Text,
            StringComparison.Ordinal);
        Assert.Contains(answer.Sentences, s => s.Id == "lamp-kept");
    }

    // ζ₀ of both ends falls by a tenth a year: 0.25·0.9² is 0.2025, 0.25·0.9³ is 0.182.
    [Fact]
    public void Dampers_that_lose_force_bring_an_axle_below_what_is_common_without_a_road()
    {
        var car = BodyOnSprings.Of(1000.0, 20000.0);
        var damper = new Damper { Law = new RatioDamper { Ratio = new(0.25) } };
        var damped = car with { Front = car.Front with { Damper = damper }, Rear = car.Rear with { Damper = damper } };
        var asked = new YearsAsked { Car = LoadedCar.Of(damped), Wear = new YearlyWear { DamperLoss = new(0.1) }, Draws = 50, Years = 6 };
        Assert.Equal(0.25, new CarAtRest(asked.Car.Model).DampingRatio(AxleEnd.Front), 1e-6);
        var answer = YearsStudy.Run(asked);
        Assert.Equal([0.0, 0.0, 0.0, 1.0, 1.0, 1.0, 1.0], answer.Chances.Single(c => c.Event == YearsEvent.WeakDamping).Shares);
        Assert.Contains("an axle's damping ratio is below 0.20", answer.Sentences[0].Text, StringComparison.Ordinal);
        Assert.DoesNotContain(Of(damped, 0.001).Chances, c => c.Event == YearsEvent.WeakDamping);
    }

    // A rear as stiff again as the front; the front comes down upon a stop that is ten times as stiff as its spring.
    [Fact]
    public void A_front_that_stands_on_its_stop_makes_no_softer_rear()
    {
        var car = BodyOnSprings.Of(1000.0, 20000.0);
        var law = ScaledLaws.Stiffer(car.Rear.Spring.Law, 1.5);
        var flat = car with
        {
            Front = car.Front with { BumpStop = new Stop { Clearance = new(0.020), Rate = new(200000.0) } },
            Rear = car.Rear with { Spring = car.Rear.Spring with { Law = law } },
        };
        var answer = YearsStudy.Run(new YearsAsked
        {
            Car = LoadedCar.Of(flat), Wear = new YearlyWear { FrontSag = new(0.004) }, Draws = 50, Years = 15,
        });
        var sagged = RideModel.Of(AgedCar.After(flat, new YearlyWear { FrontSag = new(0.004) }, 15.0));
        Assert.True(AxleCatalogue.FrequencyRatio.Of(new CarAtRest(sagged)) < 1.0);
        Assert.Equal(1.0, answer.Chances.Single(c => c.Event == YearsEvent.StandsOnStop).Shares[^1]);
        Assert.All(answer.Chances.Single(c => c.Event == YearsEvent.SofterRear).Shares, share => Assert.Equal(0.0, share));
        Assert.Contains("told of its springs alone", answer.Sentences.Single(s => s.Id == "on-bump-stops").Text, StringComparison.Ordinal);
    }

    // Springs of constant rate sag without another rate: the chance is that of the doubts, of the same drawn cars.
    [Fact]
    public void The_chance_of_a_softer_rear_today_is_what_the_doubts_say()
    {
        var ratio0 = AxleCatalogue.FrequencyRatio.Of(new CarAtRest(LoadedCar.Of(Measured).Model));
        var law = ScaledLaws.Stiffer(Measured.Rear.Spring.Law, 1.0 / (ratio0 * ratio0));
        var near = Measured with { Rear = Measured.Rear with { Spring = Measured.Rear.Spring with { Law = law } } };
        var asked = new YearsAsked { Car = LoadedCar.Of(near), Wear = new YearlyWear { RearSag = new(0.001) }, Draws = 200, Seed = 5, Years = 2 };
        var doubt = DoubtStudy.Run(new DoubtAsked { Car = asked.Car, Draws = 200, Seed = 5 });
        var ratio = doubt.AtRest.Cars[0].Single(r => r.Measure.Key == "ratio");
        var shares = YearsStudy.Run(asked).Chances.Single(c => c.Event == YearsEvent.SofterRear).Shares;
        Assert.InRange(ratio.ChanceBelow(1.0), 0.02, 0.98);
        Assert.All(shares, share => Assert.Equal(ratio.ChanceBelow(1.0), share));
    }

    [Fact]
    public void The_same_seed_meets_the_same_years_on_any_number_of_processors_and_a_longer_look_changes_none()
    {
        var asked = Asked(Measured, 0.002, 0.002) with { Draws = 60, Road = KnownThings.Hump, Speed = 12.0, Years = 4 };
        string Json(int degree) => YearsStudy.Run(asked, new StudyRun { Degree = degree }).Json("0", "years");
        Assert.Equal(Json(1), Json(3));
        var (shorter, longer) = (YearsStudy.Run(asked), YearsStudy.Run(asked with { Years = 6 }));
        Assert.All(shorter.Chances.Zip(longer.Chances), c => Assert.Equal(c.First.Shares, c.Second.Shares[..5]));
    }

    [Fact]
    public void Over_a_road_the_stops_are_those_of_the_pass()
    {
        var stopped = Measured with
        {
            Front = Measured.Front with { BumpStop = new Stop { Clearance = new(0.060), Rate = new(40000.0) } },
            Rear = Measured.Rear with { BumpStop = new Stop { Clearance = new(0.060), Rate = new(40000.0) } },
        };
        var asked = Asked(stopped, 0.004) with { Road = KnownThings.Hump, Speed = 12.0, Years = 12, Draws = 50 };
        var touches = YearsStudy.Run(asked).Chances.Single(c => c.Event == YearsEvent.TouchesStop).Shares;
        var pass = PassStudy.Run(new PassAsked { Car = LoadedCar.Of(stopped), Road = KnownThings.Hump, Speed = 12.0 });
        var margins = pass.WholeTables.SelectMany(t => t.Rows).Where(r => r.Key.EndsWith("bump-margin", StringComparison.Ordinal)).ToArray();
        Assert.NotEmpty(margins);
        Assert.Equal(margins.Any(row => row.Values[0] < 0.0), touches[0] > 0.5);
        Assert.True(touches[^1] >= touches[0]);
        Assert.Equal(1.0, touches[^1]);
    }

    [Fact]
    public void Cars_that_come_down_to_where_they_cannot_stand_are_said_and_count_as_on_their_stops()
    {
        var car = BodyOnSprings.Of(1000.0, 20000.0);
        var stop = new Stop { Clearance = new(0.040), Rate = new(40000.0), SolidAfter = new(0.02) };
        var stopped = car with { Rear = car.Rear with { BumpStop = stop } };
        var answer = Of(stopped, 0.05);
        Assert.Equal(1.0, answer.Chances.Single(c => c.Event == YearsEvent.StandsOnStop).Shares[^1]);
        Assert.Equal(answer.Fallen > 0, answer.Sentences.Any(s => s.Id == "fallen"));
    }

    [Fact]
    public void A_reading_is_parted_where_most_are_told_right()
    {
        bool[] happened = [false, false, false, true, false, true, true, true];
        var reading = YearsReading.Of(WorkshopReading.RearSinking, [1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0], happened)!;
        // Above 5.5: three of four with it, none without; above 3.5: all four with it, one of four without. The greater difference is first.
        Assert.Equal((5.5, 0.75, 0.0), (reading.Limit, reading.Found, reading.Mistaken));
        Assert.Null(YearsReading.Of(WorkshopReading.RearSinking, [1.0, 2.0], [false, false]));
    }

    [Fact]
    public void What_a_year_takes_must_be_given_and_be_possible()
    {
        Assert.Contains("nothing ages the car", Spoken.Of("years", Cured).Remarks, StringComparison.Ordinal);
        string Of(params string[] words) => Spoken.Of(["years", Cured, .. words]).Remarks;
        Assert.Contains("rear-sag '80 mm': it must be between 0 and 50 mm", Of("--rear-sag", "80 mm"), StringComparison.Ordinal);
        Assert.Contains("damper-loss '60 %': it must be between 0 and 50 %", Of("--damper-loss", "60 %"), StringComparison.Ordinal);
        Assert.Contains("bush-creep '-1 mm': it must be between 0 and 50 mm", Of("--bush-creep=-1 mm"), StringComparison.Ordinal);
        Assert.Contains("with a doubt no larger than itself", Of("--rear-sag", "1 mm ± 100 mm"), StringComparison.Ordinal);
        Assert.Contains("speed does nothing without a road", Of("--rear-sag", "1 mm", "--speed", "40 km/h"), StringComparison.Ordinal);
    }

    // A stop 40 mm away, 3 ± 1 mm a year: the median car is there in year 13.3; sets of draws scatter about it within what each says.
    [Fact]
    public void Other_draws_tell_a_year_within_what_is_said_of_it()
    {
        var car = BodyOnSprings.Of(1000.0, 20000.0);
        var stopped = car with { Rear = car.Rear with { BumpStop = new Stop { Clearance = new(0.040), Rate = new(40000.0) } } };
        var told = Enumerable.Range(1, 10).Select(seed => YearsStudy.Run(Asked(stopped, 0.003, 0.001) with { Seed = (ulong)seed, Years = 20 }))
            .Select(answer => answer.Chances.Single(c => c.Event == YearsEvent.StandsOnStop)).ToArray();
        Assert.InRange(told.Count(c => c.Half.From <= 40.0 / 3.0 && 40.0 / 3.0 <= c.Half.To), 7, 10);
        Assert.All(told, c => Assert.InRange(c.YearOf(0.5)!.Value, c.Half.From!.Value, c.Half.To!.Value));
        Assert.True(told.Select(c => c.YearOf(0.5)).Distinct().Count() > 5);
    }

    [Fact]
    public void Where_the_chance_creeps_about_one_half_no_year_is_named()
    {
        var creeping = new YearsChance(
            YearsEvent.SofterRear,
            [0.45, 0.49, 0.51, 0.52],
            [.. Enumerable.Repeat((0.0, 1), 180), .. Enumerable.Range(1, 28).Select(k => (k / 9.0, 1))],
            400,
            null);
        Assert.NotNull(creeping.YearOf(0.5));
        Assert.Null(creeping.Half.To);
        Assert.False(creeping.IsTold);
        var answer = Of(BodyOnSprings.Of(1000.0, 20000.0), 0.003) with { Chances = [creeping] };
        Assert.Contains("no one year can be named: that the rear is the softer end is about as likely as not from year", answer.Sentences[0].Text,
            StringComparison.Ordinal);
    }

    [Fact]
    public void What_few_cars_have_is_counted_and_reads_no_smaller_than_what_none_has()
    {
        var few = new YearsChance(YearsEvent.SofterRear, [0.0, 0.02], [(0.7, 1)], 50, null);
        var answer = Of(BodyOnSprings.Of(1000.0, 20000.0), 0.003) with { Chances = [few] };
        Assert.Contains("below 6 % today, 1 of 50 cars in year", answer.Sentences[1].Text, StringComparison.Ordinal);
        Assert.Equal("F1", YearsTable.Of([few], [0, 1]).Rows[0].Format);
    }

    [Fact]
    public void Without_a_load_it_is_the_heaviest()
    {
        var said = Spoken.Of("years", Cured, "--rear-sag", "1.5 mm ± 1 mm", "--samples", "50", "--years", "3");
        Assert.Equal(0, said.Code);
        Assert.StartsWith("Fern saloon, cured, four up with luggage: 50 cars drawn", said.Results, StringComparison.Ordinal);
        Assert.Contains("by 1.5 ± 1 mm", said.Results, StringComparison.Ordinal);
        Assert.Contains("A compressed spring stores enough energy to kill", said.Results, StringComparison.Ordinal);
    }

    [Fact]
    public void Few_columns_hold_the_first_and_the_last_year()
    {
        Assert.Equal([0, 3, 6, 9, 12, 15], YearsTable.Few(15));
        Assert.Equal([0, 1], YearsTable.Few(1));
        Assert.All(Enumerable.Range(1, 50), years => Assert.Equal((0, years), (YearsTable.Few(years)[0], YearsTable.Few(years)[^1])));
    }

    private static YearsAnswer Of(Car car, double rearSag) => YearsStudy.Run(Asked(car, rearSag));

    private static YearsAsked Asked(Car car, double rearSag, double doubt = 0.0) =>
        new() { Car = LoadedCar.Of(car), Wear = new YearlyWear { RearSag = new(rearSag, new Doubt(doubt)) }, Draws = 50 };
}
