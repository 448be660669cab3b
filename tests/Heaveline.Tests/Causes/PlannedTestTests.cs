using System.Globalization;
using System.Text.RegularExpressions;
using CsCheck;
using Heaveline.Cars;
using Heaveline.Causes;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Roads;
using Heaveline.Studies;
using Heaveline.Tuning;

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
            return (car, state, Road.From(new RoundTopHump { Height = new(height), Length = new(3.0) }), speed);
        });

    [Fact]
    public void A_planned_test_is_safe_and_what_it_predicts_is_what_the_passes_give()
    {
        var tests = 0;
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
                Assert.Equal(RideTuning.Of(RideModel.Of(asked.Car, test.Second)).Ratio, test.Ratio.Second, 1e-12);
                Assert.True(test.Expected.Low <= test.Doubts.Low && test.Doubts.High <= test.Expected.High && test.Expected.Holds(test.Change));
                // Said as computed.
                var said = Numbers().Match(TestWords.Of(why, test.Kind));
                Assert.True(said.Success, TestWords.Of(why, test.Kind));
                double Number(string group) => double.Parse(said.Groups[group].Value.Replace('−', '-'), CultureInfo.InvariantCulture);
                Assert.Equal(3.6 * test.Speed, Number("speed"), 0.051);
                Assert.Equal(test.Ratio.First, Number("r1"), 5.01e-4);
                Assert.Equal(test.Ratio.Second, Number("r2"), 5.01e-4);
                Assert.Equal(measure.Unit.Of(test.Change), Number("change"), 5.01e-4);
                Assert.InRange(Number("change"), Number("low"), Number("high"));
                Assert.Equal(test.Passes <= 30 ? $"{test.Passes}" : "It would take more than 30", said.Groups["passes"].Value);
            }
        }, iter: 25);
        Assert.True(tests > 5, $"{tests} tests in all.");
    }

    // 2·(1.96 + 0.84)² = 15.70: with a change of one standard deviation 16 passes each, with half of it 63 [two means of equal scatter].
    [Theory]
    [InlineData(1.0, 16)]
    [InlineData(-0.5, 63)]
    [InlineData(10.0, 3)]
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

    [GeneratedRegex(
        "^Test: at (?<speed>[0-9.]+) km/h over .+: first .+, then .+[.] The rear/front frequency ratio goes from (?<r1>[0-9.]+) to (?<r2>[0-9.]+), "
        + "and the .+ from [0-9.]+° to [0-9.]+°: [+]?(?<change>[−0-9.]+)° [(][+]?(?<low>[−0-9.]+)° to [+]?(?<high>[−0-9.]+)°[)][.] "
        + "(?<passes>[0-9]+|It would take more than 30) passes with each loading")]
    private static partial Regex Numbers();
}
