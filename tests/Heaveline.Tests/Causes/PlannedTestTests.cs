using System.Globalization;
using System.Text.RegularExpressions;
using CsCheck;
using Heaveline.Cars;
using Heaveline.Causes;
using Heaveline.Drives.Planning;
using Heaveline.Files.Cars;
using Heaveline.Files.Roads;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;
using Heaveline.Studies;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Causes;

public partial class PlannedTestTests
{
    private static readonly PassOptions Options = new() { Method = FixedStep.Once, Record = new() { SettlingTime = 1.1 } };

    // A driver with or without a load, over a low or a high hump, slowly or fast.
    private static readonly Gen<(Car Car, LoadState Load, Road Road, double Speed)> Asked = Gen.Select(
        AnyCar.Any, AnyCar.Loads, Gen.Bool, Gen.Double[0.01, 0.06], Gen.Double[4.0, 25.0], (car, load, isAlone, height, speed) =>
        {
            var driver = new Load { Name = "driver", Mass = new(75.0), BehindFrontAxle = new(0.45 * car.Wheelbase.Si), Height = new(0.6) };
            var state = new LoadState { Name = "asked", Loads = isAlone ? [driver] : [driver, .. load.Loads] };
            var seat = new Seat { Name = "beside", BehindFrontAxle = new(0.45 * car.Wheelbase.Si), LeftOfMiddle = new(-0.7), Height = new(0.6) };
            return (car with { Seats = [seat] }, state, Road.From(new RoundTopHump { Height = new(height), Length = new(3.0) }), speed);
        });

    [Fact]
    public void A_planned_test_is_safe_and_what_it_predicts_is_what_the_passes_give()
    {
        var (tests, untested) = (0, 0);
        Asked.Sample(asked =>
        {
            var model = RideModel.Of(asked.Car, asked.Load);
            if (Pass.Of(model, asked.Road, asked.Speed, Options).Outcome != PassOutcome.Completed)
            {
                return;
            }

            // Few drawn orders, so that a ranking costs little; the tests are those of any ranking.
            var why = Why.Of(model, asked.Road, asked.Speed, WhyOptions.Default with { MostExact = 1, Permutations = 2 }).WithTests(0.0);
            foreach (var test in why.Tests)
            {
                Interlocked.Increment(ref tests);
                Assert.InRange(test.Speed, 0.0, Math.Min(asked.Speed, 30.0 / 3.6) + 1e-9);
                Assert.All([test.First, test.Second], load => Assert.Contains(load.Loads, l => l.Name == "driver"));
                var measure = (Measure<Pass>)test.Measure;
                double Driven(LoadState load)
                {
                    var loaded = RideModel.Of(asked.Car, load);
                    var pass = Pass.Of(loaded, asked.Road, test.Speed, Options);
                    Assert.Equal(PassOutcome.Completed, pass.Outcome);
                    for (var i = 0; i < 4; i++)
                    {
                        Assert.True(pass.TyreLoad(i).Min() > 0.0);
                        Assert.True(pass.Travel(i).Max() < loaded.BumpTouch[i] - 0.005 && pass.Travel(i).Min() > loaded.ReboundTouch[i] + 0.005);
                    }

                    return measure.Of(pass);
                }

                Assert.Equal(Driven(test.First), test.Before, 1e-12);
                Assert.Equal(Driven(test.Second), test.After, 1e-12);
                Assert.True(test.Expected.Low <= test.Doubts.Low && test.Doubts.High <= test.Expected.High && test.Expected.Holds(test.Change));
                Assert.InRange(test.Passes, 3, 30);
                // What the cause makes of it: the second loading less the same with nothing but the cause as under the first.
                if (test.Kind != PitchCauseKind.Load)
                {
                    var (first, second) = (RideModel.Of(asked.Car, test.First), RideModel.Of(asked.Car, test.Second));
                    var back = CauseValue.Set(second, test.Kind, CauseValue.Of(first, test.Kind));
                    Assert.All(CauseValue.Kinds, kind => Assert.Equal(
                        CauseValue.Of(kind == test.Kind ? first : second, kind), CauseValue.Of(back, kind), 1e-3));
                    Assert.Equal(
                        measure.Of(Pass.Of(second, asked.Road, test.Speed, Options)) - measure.Of(Pass.Of(back, asked.Road, test.Speed, Options)),
                        test.Part, 1e-9);
                    Assert.True(Math.Abs(test.Part) >= Math.Abs(test.Change - test.Part) - 1e-12);
                    Assert.Equal(PlannedTest.PassesFor(Math.Min(Math.Abs(test.Part), Math.Abs(test.Change)), test.Scatter), test.Passes);
                }

                // Said as computed.
                var said = Numbers().Match(TestWords.Of(why, test.Kind));
                Assert.True(said.Success, TestWords.Of(why, test.Kind));
                double Number(string group) => double.Parse(said.Groups[group].Value.Replace('−', '-'), CultureInfo.InvariantCulture);
                Assert.Equal(3.6 * test.Speed, Number("speed"), 0.051);
                Assert.Equal(measure.Unit.Of(test.Change), Number("change"), 5.01e-4);
                Assert.InRange(Number("change"), Number("low"), Number("high"));
                Assert.Equal(test.Passes, Number("passes"));
                if (said.Groups["part"].Success)
                {
                    Assert.Equal(test.Moved.Single(m => m.Kind == test.Kind).First, Number("v1"), 5.01e-4);
                    Assert.Equal(test.Moved.Single(m => m.Kind == test.Kind).Second, Number("v2"), 5.01e-4);
                    Assert.Equal(measure.Unit.Of(test.Part), Number("part"), 5.01e-4);
                }

                Assert.Equal(test.Kind != PitchCauseKind.Load, said.Groups["part"].Success);
            }

            foreach (var none in why.Untested)
            {
                var said = TestWords.Of(why, none.Kind);
                Assert.StartsWith("No road test: ", said, StringComparison.Ordinal);
                var isSlow = said.Contains("does it stay on the ground", StringComparison.Ordinal)
                    || said.Contains("it does not stay on the ground", StringComparison.Ordinal);
                Assert.Equal(none.Reason == NoTestReason.NoSafeSpeed, isSlow);
                Assert.Equal(isSlow, said.Contains("Take a lower obstacle.", StringComparison.Ordinal));
                if (none.Nearest is { } near)
                {
                    // No cause is said to be moved too little that moves well and makes most of what can be seen.
                    Assert.False(near.IsTheCausesOwn && near.IsWorthDriving, said);
                    Assert.Equal(none.Reason == NoTestReason.OthersMore, said.Contains(" more. At ", StringComparison.Ordinal));
                    Assert.True(none.Reason != NoTestReason.OthersMore || near.Moved.Any(m => Math.Abs(m.Part) > Math.Abs(near.Part)), said);
                }

                Interlocked.Increment(ref untested);
            }
        }, iter: 40);
        Assert.True(tests > 1 && untested > 5, $"{tests} tests and {untested} causes without in all.");
    }

    [Fact]
    public void One_pass_scatters_in_a_road_test_by_what_a_test_day_reckons()
    {
        var car = CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", "plover-motorcycle.yaml")).Value!;
        var model = RideModel.Of(car, LoadedCar.LoadNamed(car, "two up")!);
        var hump = NamedRoads.Find("village-hump").Value!;
        var test = Why.Of(model, hump, 40.0 / 3.6).WithTests(0.01).Tests[0];
        var day = TestDay.Of(new TestDayWish
        {
            Model = RideModel.Of(car, test.First), Humps = [new() { Name = "hump", Road = hump }], HalfWidth = 1.0,
        });
        // Three speeds there, one here, and the second loading besides.
        Assert.InRange(test.OwnScatter!.Value / day.Drives[0].Scatter, 0.6, 1.6);
        Assert.Equal(test.OwnScatter.Value * 0.5 * (Math.Abs(test.Before) + Math.Abs(test.After)), test.Scatter, 1e-12);
    }

    // 2·(1.96 + 0.84)² = 15.70: with a change of one standard deviation 16 passes each, with half of it 63 [two means of equal scatter].
    [Theory]
    [InlineData(1.0, 16)]
    [InlineData(-0.5, 63)]
    [InlineData(10.0, 4)]
    public void Passes_follow_the_formula_for_two_means(double change, int passes) => Assert.Equal(passes, PlannedTest.PassesFor(change, 1.0));

    [Fact]
    public void The_neutral_ratio_falls_evenly_with_speed_and_never_jumps() => AnyCar.Any.Sample(car =>
    {
        var model = RideModel.Of(car);
        double[] ratios = [.. Enumerable.Range(5, 150).Select(v => new NeutralCar(model, v / 3.6, WhyOptions.Default).Ratio)];
        Assert.All(ratios.Zip(ratios.Skip(1)), p => Assert.InRange(p.First - p.Second, 0.0, 0.03));
        Assert.Equal(1.3, ratios[0]);
    }, iter: 30);

    [Fact]
    public void The_neutral_load_is_the_driver_alone_and_the_driver_is_no_cause()
    {
        Load Of(string name, double mass) => new() { Name = name, Mass = new(mass), BehindFrontAxle = new(1.3), Height = new(0.6) };
        var driver = new LoadState { Name = "driver", Loads = [Of("driver", 75.0)] };
        var full = new LoadState { Name = "full", Loads = [Of("driver", 75.0), Of("luggage", 100.0)] };
        var car = PlainCar.Saloon with { LoadStates = [driver, full] };
        Assert.Same(driver, NeutralLoad.Of(car, driver));
        Assert.Equal(("driver alone", 75.0), (NeutralLoad.Of(car, full).Name, NeutralLoad.Mass(NeutralLoad.Of(car, full))));
        var nameless = new LoadState { Name = "sacks", Loads = [Of("sacks", 200.0)] };
        Assert.Same(driver, NeutralLoad.Of(car, nameless));
        Assert.Same(LoadState.Reference, NeutralLoad.Of(PlainCar.Saloon, nameless));
        var hump = Road.From(new RoundTopHump { Height = new(0.04), Length = new(3.7) });
        Assert.DoesNotContain(Why.Of(RideModel.Of(car, driver), hump, 10.0).Settling.Causes, c => c.Kind == PitchCauseKind.Load);
        Assert.Contains(Why.Of(RideModel.Of(car, full), hump, 10.0).Settling.Causes, c => c.Kind == PitchCauseKind.Load);
    }

    // The saloon with the plain driver: a sack moves the index more than the ratio, and what is tested is what moves the pitch.
    [Fact]
    public void A_test_is_of_the_cause_that_makes_most_of_its_change()
    {
        var file = Example("fern-saloon");
        var hump = Road.From(new RoundTopHump { Height = new(0.075), Length = new(3.7) });
        var why = Why.Of(RideModel.Of(file, file.LoadStates.Single(l => l.Name == "driver")), hump, 80.0 / 3.6).WithTests(0.0);
        var index = Assert.Single(why.Tests, t => t.Kind == PitchCauseKind.DynamicIndex);
        Assert.True(index.IsTheCausesOwn);
        Assert.DoesNotContain(why.Tests, t => t.Kind == PitchCauseKind.FrequencyRatio && t.First == index.First && t.Second == index.Second);
        var ratio = index with { Kind = PitchCauseKind.FrequencyRatio };
        Assert.False(ratio.IsTheCausesOwn);
        Assert.InRange(index.Part / index.Change, 0.7, 0.8);
        Assert.StartsWith("Test: at 15 km/h", TestWords.Of(why, PitchCauseKind.DynamicIndex), StringComparison.Ordinal);
        Assert.StartsWith("No road test: ", TestWords.Of(why, PitchCauseKind.FrequencyRatio), StringComparison.Ordinal);
    }

    [Fact]
    public void Why_there_is_no_test_is_said_as_it_is()
    {
        var driver = new Load { Name = "driver", Mass = new(75.0), BehindFrontAxle = new(1.2), Height = new(0.6) };
        LoadState Full(double mass) =>
            new() { Name = "full", Loads = [driver, driver with { Name = "sacks", Mass = new(mass), BehindFrontAxle = new(2.4) }] };
        var hump = Road.From(new RoundTopHump { Height = new(0.04), Length = new(3.7) });
        string Said(Car car, LoadState load, PitchCauseKind kind) =>
            TestWords.Of(
                Why.Of(RideModel.Of(car, load), hump, 10.0, WhyOptions.Default with { MostExact = 1, Permutations = 2 }).WithTests(0.0), kind);
        // Stands within 2 mm of its bump stop: no obstacle is low enough.
        var full = Full(150.0);
        var free = RideModel.Of(PlainCar.Saloon, full);
        var sunk = Enumerable.Range(2, 2).Max(i => Pass.Of(free, hump, 5.0, Options).Travel(i)[0]);
        var tight = PlainCar.Saloon with
        {
            Rear = PlainCar.RearAxle with { BumpStop = new Stop { Clearance = new(sunk + 0.002), Rate = new Amount<Stiffness>(80e3) } },
        };
        Assert.Equal(
            "No road test: under such loads it stands less than 5 mm from a stop or off the ground before it moves.",
            Said(tight, full, PitchCauseKind.Load));
        // Room enough at rest and too little for the hump.
        var low = tight with { Rear = tight.Rear with { BumpStop = tight.Rear.BumpStop! with { Clearance = new(sunk + 0.0055) } } };
        Assert.Equal(
            "No road test: at no speed from 10 km/h to 30 km/h does it stay on the ground and 5 mm off its stops over this obstacle under both "
            + "loads. Take a lower obstacle.",
            Said(low, full, PitchCauseKind.Load));
        // A rider without a seat behind.
        var cycle = Example("plover-motorcycle") with { Seats = [] };
        var seatless = Said(cycle, cycle.LoadStates.Single(l => l.Name == "rider"), PitchCauseKind.DynamicIndex);
        Assert.StartsWith(
            "No road test: there is no seat for the load. Measure the pitch inertia, or drive with rider: 12 passes over this obstacle at ", seatless,
            StringComparison.Ordinal);
        Assert.Matches(
            "with a phone on the floor tell the dynamic index to ± [0-9.]+ % [(]± [0-9.]+ % by the car file[)], nine times of ten "
            + "[(]'heaveline plan' for that load[)][.]$", seatless);
    }

    private static Car Example(string name) => CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", $"{name}.yaml")).Value!;

    [GeneratedRegex(
        "^Test: at (?<speed>[0-9.]+) km/h over .+: first .+, then .+[.] (?:The [a-z/ ]+ [(](?<v1>[0-9.]+) to (?<v2>[0-9.]+)[)] makes "
        + "[+]?(?<part>[−0-9.]+)° of the change of the .+, from|The .+ goes from) [0-9.]+° to [0-9.]+°: [+]?(?<change>[−0-9.]+)° "
        + "[(][+]?(?<low>[−0-9.]+)° to [+]?(?<high>[−0-9.]+)°[)][.].* (?<passes>[0-9]+) passes with each loading "
        + "(?:[(]one scatters by [0-9]+ %[)] )?show ")]
    private static partial Regex Numbers();
}
