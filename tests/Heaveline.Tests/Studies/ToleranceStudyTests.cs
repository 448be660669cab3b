using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Studies;
using Heaveline.Tests.Cli;
using Heaveline.Tests.Doubts;
using Heaveline.Tests.House;
using Heaveline.Tests.Measures;
using Heaveline.Tuning;
using MathNet.Numerics.Distributions;

namespace Heaveline.Tests.Studies;

public class ToleranceStudyTests
{
    private const int Draws = 4000;

    private static readonly Car Body = BodyOnSprings.Of(1000.0, 20000.0);

    private static readonly string Cured = Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon-cured.yaml");

    // A height within ± 6 mm, 19 times out of 20, is more than 5 mm too low in 1 − Φ(5/3) of the cars; Φ by Math.NET.
    [Fact]
    public void Heights_alone_break_a_promise_as_often_as_their_normal_tail_says()
    {
        var kept = Of(Promise(RestCatalogue.Standing.Single(m => m.Key == "front-height"), true, -0.005), 0.3, 0.006).Kept;
        var expected = Normal.CDF(0.0, 1.0, 5.0 / 3.0);
        Assert.InRange(kept.Share, expected - (3.0 * Deviation(expected)), expected + (3.0 * Deviation(expected)));
    }

    // Frequencies go with the root of the rate: of rates within ± 8 % front and rear the ratio's logarithm has a deviation of √2/2 × 4 %, and is
    // above minus one deviation in Φ(1) of the cars.
    [Fact]
    public void Rates_move_the_ratio_by_half_of_themselves()
    {
        var kept = Of(Promise(AxleCatalogue.FrequencyRatio, true, Math.Exp(-0.04 / Math.Sqrt(2.0))), 0.08, 0.002).Kept;
        var expected = Normal.CDF(0.0, 1.0, 1.0);
        Assert.InRange(kept.Share, expected - (3.0 * Deviation(expected)), expected + (3.0 * Deviation(expected)));
        Assert.Equal((1.0, 1.0), (kept.Perfect, kept.Tight));
    }

    [Theory]
    [InlineData(true, "No price is counted: those of dampers and heights are not given")]
    [InlineData(false, null)]
    public void Prices_of_some_parts_alone_are_said_not_to_be_counted(bool hasSome, string? said)
    {
        string[] some = hasSome ? ["--springs", "1 %: 9, 3 %: 4"] : [];
        var spoken = Spoken.Of(["tolerance", Cured, "--promise", "ratio at least 1.01", "--samples", "100", .. some]);
        Assert.Equal(0, spoken.Code);
        Assert.Equal(said is not null, spoken.Results.Contains(said ?? "No price is counted", StringComparison.Ordinal));
    }

    [Fact]
    public void What_is_not_kept_by_the_design_no_tolerance_helps()
    {
        var answer = Run(Body, [Promise(AxleCatalogue.FrequencyRatio, true, 1.1)]);
        var said = Assert.Single(answer.Sentences);
        Assert.Equal("not-designed", said.Id);
        Assert.Contains("frequency ratio is 1.000, promised is rear/front frequency ratio at least 1.100", said.Text, StringComparison.Ordinal);
        var without = Assert.Single(Run(Body, [Promise(Named("lamp-drop"), true, 0.01)]).Sentences);
        Assert.Contains("it has no dipped beam drop", without.Text, StringComparison.Ordinal);
    }

    // Rates of 20.00 and 20.01 kN/m make a ratio of √1.0005 = 1.00025, printed as 1.000.
    [Theory]
    [InlineData(1.0, true)]
    [InlineData(1.0001, true)]
    [InlineData(1.0004, false)]
    public void No_number_is_said_to_miss_a_promise_of_the_same_digits(double least, bool isKept)
    {
        var car = Body with { Rear = Body.Rear with { Spring = Body.Rear.Spring with { Law = BodyOnSprings.Of(1000.0, 20010.0).Rear.Spring.Law } } };
        var answer = Run(car, [Promise(AxleCatalogue.FrequencyRatio, true, least)]);
        Assert.Equal(isKept, answer.IsDesigned);
        var below = Run(car, [Promise(AxleCatalogue.FrequencyRatio, false, 1.0)]);
        Assert.True(below.IsDesigned);
        var finer = Run(car, [Promise(AxleCatalogue.FrequencyRatio, false, 1.0001)]);
        Assert.Contains("ratio is 1.0002, promised is rear/front frequency ratio at most 1.0001", finer.Sentences[0].Text, StringComparison.Ordinal);
    }

    // A stop 20 mm away and solid 5 mm on: who comes down by more cannot stand, and would be read as standing where it was.
    [Fact]
    public void Cars_that_cannot_stand_are_said_and_nothing_is_read_off_them()
    {
        var stop = new Stop { Clearance = new(0.020), Rate = new(40000.0), SolidAfter = new(0.005) };
        var car = Body with { Rear = Body.Rear with { BumpStop = stop } };
        var asked = Asked(car, [Promise(Named("rear-height"), true, -0.010)]) with { Heights = [new(0.003), new(0.050)] };
        var answer = ToleranceStudy.Run(asked);
        Assert.InRange(answer.Fallen, 20, 500);
        Assert.Contains($"{answer.Fallen} of the 1000 cars", answer.Sentences.Single(s => s.Id == "fallen").Text, StringComparison.Ordinal);
        Assert.InRange(answer.Test!.Caught - answer.Test.Mistaken, 0.7, 1.0);
        Assert.DoesNotContain(Run(car, asked.Promises).Sentences, s => s.Id == "fallen");
    }

    [Fact]
    public void A_speed_without_a_road_is_objected_to() => Assert.Contains(
        "speed does nothing without a road: give --road",
        Spoken.Of("tolerance", Cured, "--promise", "ratio at least 1", "--speed", "40 km/h").Remarks,
        StringComparison.Ordinal);

    [Fact]
    public void Cars_that_differ_by_more_than_any_tolerance_are_said()
    {
        var measured = MeasuredCar.With(MeasuredCar.Saloon, 0.05, 0.03, 0.02);
        var ratio = AxleCatalogue.FrequencyRatio.Of(new CarAtRest(RideModel.Of(measured)));
        var answer = Run(measured, [Promise(AxleCatalogue.FrequencyRatio, true, 0.9999 * ratio)]);
        Assert.Equal("cars-differ", answer.Sentences[0].Id);
        Assert.Null(answer.Chosen);
    }

    [Fact]
    public void The_cheapest_mix_that_holds_is_named_and_none_looser_than_another_stands_in_the_table()
    {
        var asked = Asked(Body, [Promise(RestCatalogue.Standing.Single(m => m.Key == "front-height"), true, -0.005)]) with
        {
            Springs = [new(0.01, 9.0), new(0.05, 2.0)],
            Dampers = [new(0.05, 30.0), new(0.20, 1.0)],
            Heights = [new(0.003, 6.0), new(0.005, 3.0), new(0.020, 1.0)],
        };
        var answer = ToleranceStudy.Run(asked);
        Assert.Equal(new KitTolerance(0.05, 0.20, 0.005), answer.Chosen!.Tolerance);
        Assert.Equal(6.0, answer.Chosen.Price);
        Assert.Contains("it costs least, 6 a kit", answer.Sentences[0].Text, StringComparison.Ordinal);
        Assert.All(answer.Loosest, k => Assert.DoesNotContain(answer.Loosest, other => other.IsLooser(k)));
        Assert.Contains("heights ± 20 mm, ", answer.Sentences.Single(s => s.Id == "one-step-looser").Text, StringComparison.Ordinal);
    }

    // The test reads what the promise is about: cars that stand too low are found, but for the tape's error.
    [Fact]
    public void A_promise_of_heights_is_tested_by_heights()
    {
        var asked = Asked(Body, [Promise(RestCatalogue.Standing.Single(m => m.Key == "front-height"), true, -0.010)]) with
        {
            Heights = [new(0.003), new(0.020)],
            Springs = [new(0.001)],
            Dampers = [new(0.001)],
        };
        var test = ToleranceStudy.Run(asked).Test!;
        Assert.InRange(test.Caught - test.Mistaken, 0.7, 1.0);
        Assert.InRange(test.Windows.Single(w => w.Reading == WorkshopReading.FrontHeight).Low, -0.013, -0.007);
    }

    [Fact]
    public void A_stiffer_bought_spring_lifts_the_car_and_one_of_unknown_lengths_does_not()
    {
        double[] errors = [2.0, 2.0, 0.0, 0.0, 0.0, 0.0];
        var tolerance = new KitTolerance(0.1, 0.0, 0.0);
        Assert.Equal(0.0, RideModel.Of(FittedKit.On(Body, tolerance, errors)).Trim.FrontHeight, 1e-9);
        // Pressed together by 122.58 mm as before, 10 % more rate carries the body 11.1 mm higher.
        var known = Body.Front.Spring with { FreeLength = new(0.380) };
        var bought = known with { Swap = new SpringSwap { Before = known, StandsBy = known.Law } };
        var lifted = RideModel.Of(FittedKit.On(Body with { Front = Body.Front with { Spring = bought } }, tolerance, errors));
        Assert.Equal(2451.6625 * ((1.0 / 20000.0) - (1.0 / 22000.0)), lifted.Trim.FrontHeight, 1e-6);
    }

    [Fact]
    public void Any_number_of_processors_fits_the_same_kits()
    {
        var asked = Asked(MeasuredCar.With(MeasuredCar.Saloon, 0.05, 0.03, 0.02), [Promise(SettlingCatalogue.RmsPitch, false, 0.02)]) with
        {
            Draws = 100,
            Road = KnownThings.Hump,
            Speed = 12.0,
            Dampers = [new(0.05), new(0.2)],
        };
        string Json(int degree) => ToleranceStudy.Run(asked, new StudyRun { Degree = degree }).Json("0", "tolerance");
        Assert.Equal(Json(1), Json(3));
    }

    [Theory]
    [InlineData("rati at least 1", "Did you mean ratio?")]
    [InlineData("ratio over 1", "write it as \"ratio at least 1.05\"")]
    [InlineData("ratio at least 1 mm", "write a number without a unit")]
    [InlineData("front-height at least -8", "write a number in mm")]
    [InlineData("settling-rms-pitch at most 0.4 °", "Those of a pass need a road")]
    public void Promises_that_are_none_are_refused(string promise, string because) =>
        Assert.Contains(because, Spoken.Of("tolerance", Cured, "--promise", promise).Remarks, StringComparison.Ordinal);

    [Theory]
    [InlineData("0 %", "a tolerance is above 0 and at most 30 %")]
    [InlineData("2 %, 2 %", "stands there twice")]
    [InlineData("2 %: 3, 4 %", "every tolerance its price")]
    [InlineData("2 %: cheap", "is no price")]
    [InlineData("1 %, 2 %, 3 %, 4 %, 5 %, 6 %, 7 %, 8 %, 9 %", "9 tolerances are too many")]
    public void Levels_that_are_none_are_refused(string levels, string because) =>
        Assert.Contains(
            because, Spoken.Of("tolerance", Cured, "--promise", "ratio at least 1", "--springs", levels).Remarks, StringComparison.Ordinal);

    [Fact]
    public void A_promise_of_a_pass_is_kept_or_broken_by_the_pass()
    {
        var said = Spoken.Of(
            "tolerance", Cured, "--promise", "settling-rms-pitch at most 0.9 °", "--road", "village-hump", "--speed", "40 km/h", "--load",
            "four up with luggage", "--springs", "3 %", "--dampers", "10 %", "--heights", "5 mm", "--samples", "100");
        Assert.Equal(0, said.Code);
        Assert.Contains("over village hump at 40 km/h", said.Results, StringComparison.Ordinal);
        Assert.DoesNotContain("does not keep the promise itself", said.Results, StringComparison.Ordinal);
    }

    private static (double Share, double Perfect, double Tight, ToleranceAnswer Answer) Kept(ToleranceAnswer answer) =>
        (answer.All[^1].Share, answer.Perfect.Share, answer.All[0].Share, answer);

    private static ((double Share, double Perfect, double Tight, ToleranceAnswer Answer) Kept, int Draws) Of(
        MeasureBound promise, double springs, double heights) => (Kept(ToleranceStudy.Run(Asked(Body, [promise]) with
        {
            Springs = [new(0.001), new(springs)],
            Dampers = [new(0.01)],
            Heights = [new(heights)],
            Draws = Draws,
        })), Draws);

    private static ToleranceAnswer Run(Car car, IReadOnlyList<MeasureBound> promises) => ToleranceStudy.Run(Asked(car, promises));

    private static ToleranceAsked Asked(Car car, IReadOnlyList<MeasureBound> promises) => new()
    {
        Car = LoadedCar.Of(car),
        Promises = promises,
        Springs = [new(0.02)],
        Dampers = [new(0.05)],
        Heights = [new(0.003)],
        Draws = 1000,
    };

    private static Measure Named(string key) => RestCatalogue.All.Single(m => m.Key == key);

    private static MeasureBound Promise(Measure measure, bool isLeast, double limit) =>
        new() { Measure = measure, IsLeast = isLeast, Limit = limit };

    private static double Deviation(double share) => Math.Sqrt(share * (1.0 - share) / Draws);
}
