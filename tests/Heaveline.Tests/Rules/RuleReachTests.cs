using CsCheck;
using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Rules;
using Heaveline.Studies;
using Heaveline.Tests.House;
using Heaveline.Web.Serving;

namespace Heaveline.Tests.Rules;

/// <summary>
/// At the end of what was tried nothing is known of what lies beyond: no load of a car stands there, and nothing is said beyond it. That the values
/// reach 15 % past the car is common practice, no source.
/// </summary>
public class RuleReachTests
{
    private static readonly GarageView Garage = new(new ServeOptions { Garage = Path.Combine(Checkout.Root, "examples", "garage") });

    [Fact]
    public void Values_reach_past_the_car_rise_evenly_and_are_at_most_about_twice_as_many() =>
        Gen.Select(Gen.Int[0, 5].Select(i => new[] { 4, 13, 16, 25, 49, 61 }[i]), Gen.Double[0.01, 5.0].Array[1, 4]).Sample((count, owns) =>
        {
            var values = RuleReach.Even((0.8, 1.4), count, owns);
            Assert.InRange(values.Count, Math.Min(count, 2), (2 * count) + 2);
            Assert.True(values[0] <= (0.85 * owns.Min()) + 1e-9 && values[0] <= 0.8 + 1e-9);
            Assert.True(values[0] > 0.0 && values[^1] >= (1.15 * owns.Max()) - 1e-9 && values[^1] >= 1.4 - 1e-9);
            // All but the first step, which may be cut short above zero, are one step.
            var steps = values.Zip(values.Skip(1), (a, b) => b - a).Skip(1).ToList();
            Assert.All(steps, step => Assert.Equal(steps[0], step, 1e-9));
        });

    [Theory]
    [InlineData(13)]
    [InlineData(25)]
    [InlineData(61)]
    public void The_reference_stays_among_the_values_and_coarse_and_fine_end_alike(int count)
    {
        double[] owns = [1.34, 1.48];
        var values = RuleReach.Even((0.8, 1.4), count, owns);
        Assert.Contains(values, v => Math.Abs(v - 1.0) < 1e-9);
        Assert.Equal((0.8, 1.75), (values[0], Math.Round(values[^1], 9)));
        Assert.Equal(
            Enumerable.Range(0, count).Select(i => 0.8 + (0.6 * i / (count - 1))),
            RuleReach.Even((0.8, 1.4), count, [1.0]),
            (a, b) => Math.Abs(a - b) < 1e-9);
    }

    [Fact]
    public void No_load_of_any_car_of_the_garage_stands_near_the_end_of_a_map_and_all_are_drawn_on_it()
    {
        var road = ((IFinder)Garage).Road("village-hump").Value!;
        foreach (var name in Garage.CarNames)
        {
            var car = Garage.Car(name)!.Value!;
            foreach (var rule in TradeRule.All.Where(r => r.Kind is RuleKind.FrequencyRatio or RuleKind.Damping or RuleKind.DynamicIndex))
            {
                var answer = RuleStudy.Run(new RuleAsked
                {
                    Car = LoadedCar.Of(car, LoadedCar.UsualLoad(car)),
                    Road = road,
                    Rule = rule,
                    Slowest = 10.0,
                    Fastest = 12.0,
                    Detail = new RuleDetail { Values = 4, Speeds = 2 },
                });
                var values = answer.Map.Axis.Values;
                Assert.All(answer.Loads, load => Assert.InRange(load.Own, values[0] / 0.8500001, values[^1] / 1.1499999));
                var drawn = ((Heaveline.Figures.MapPanel)answer.Figure(RuleAnswer.WithEveryLoad).Panels[0]).Traces.Select(t => t.Name).ToList();
                Assert.All(answer.Loads, load => Assert.Contains(drawn, line => line == "this car" || line.Split(", ").Contains(load.Name)));
            }
        }
    }

    // The measure of the car itself is that of a pass at its very own value, so that over itself it is one.
    [Fact]
    public void Judged_against_the_car_as_it_is_the_measure_of_this_car_is_one_at_every_speed()
    {
        foreach (var kind in new[] { "damping", "wheelbase", "wheelbase-same-body" })
        {
            var map = Mapped("drover-van", "driver", TradeRule.Of(kind), [8.0, 12.0, 20.0]);
            Assert.Equal(map.Reference, map.OwnMeasured);
            Assert.All(map.OwnMeasured, measured => Assert.True(measured > 0.0));
        }
    }

    [Fact]
    public void Where_the_best_lies_at_the_end_it_is_said_that_nothing_is_known_beyond()
    {
        var map = Mapped("drover-van", "driver", TradeRule.Of("ratio"), [30.0 / 3.6, 60.0 / 3.6]);
        Assert.Equal([30.0 / 3.6], map.BestAtLargest);
        Assert.Empty(map.BestAtSmallest);
        var said = string.Join(' ', RuleSentences.Rule(map, null).Concat(RuleSentences.Loads(map, [RuleLoad.Of(map)])).Select(s => s.Text));
        Assert.Contains("what lies above 1.75 is not known.", said, StringComparison.Ordinal);
        Assert.Contains("more would be better at 30 km/h; not known above 1.75 at 30 km/h", said, StringComparison.Ordinal);
        Assert.DoesNotContain("less would be better", said, StringComparison.Ordinal);
    }

    private static RuleMap Mapped(string name, string load, TradeRule rule, double[] speeds)
    {
        var car = Garage.Car(name)!.Value!;
        var model = LoadedCar.Of(car, LoadedCar.LoadNamed(car, load)).Model;
        var owns = car.LoadStates.Prepend(LoadState.Reference).Select(l => rule.Axis(model, 2).Own(LoadedCar.Of(car, l).Model)).ToList();
        return RuleMap.Of(
            model, ((IFinder)Garage).Road("village-hump").Value!, rule.Axis(model, 13, owns), speeds, [SettlingCatalogue.RmsPitch])[0];
    }
}
