using CsCheck;
using Heaveline.Cars;
using Heaveline.Passes;
using Heaveline.Rules;
using Heaveline.Studies;
using Heaveline.Tests.House;
using Heaveline.Tests.Studies;
using Heaveline.Web.Pages.Passes;
using Heaveline.Web.Pages.Rules;
using Heaveline.Web.Serving;

namespace Heaveline.Tests.Web;

/// <summary>
/// What the page of the rule says of another value than the car's own, two passes say as well, on the page and by the library. The wheelbase on the
/// page is another question: it keeps the inertia of the empty body, the rule that of the loaded one, and the page of the rule says so. So is a
/// bought spring: the rule keeps its heights, the page its lengths.
/// </summary>
public class RuleAgainstPassTests
{
    private static readonly GarageView Garage = new(new ServeOptions { Garage = Path.Combine(Checkout.Root, "examples", "garage") });
    private static readonly RuleDetail Few = new() { Values = 4, Speeds = 2 };

    // A trial is set in five digits, its damping in four, and the two doors step a little differently: half a per cent of the quotient. Where the
    // rule calls a value better or worse it is so by 3 % at least.
    private const double Rounding = 0.005;

    [Theory]
    [InlineData("ratio")]
    [InlineData("damping")]
    public void A_place_of_the_map_driven_on_the_page_of_the_pass_is_better_or_worse_than_the_car_as_the_map_says(string word)
    {
        var (trial, judged) = (new PassTrial(Garage), 0);
        foreach (var name in Garage.CarNames)
        {
            var car = Garage.Car(name)!.Value!;
            var asked = new RuleAsked
            {
                Car = LoadedCar.Of(car, LoadedCar.UsualLoad(car)),
                Road = ((IFinder)Garage).Road("village-hump").Value!,
                Rule = TradeRule.Of(word),
                Slowest = 30.0 / 3.6,
                Fastest = 70.0 / 3.6,
                Detail = Few,
                MapAlone = true,
            };
            var answer = RuleStudy.Run(asked);
            if (word == "ratio" && car.Axles.Any(axle => axle.Spring.IsPlaced()))
            {
                Assert.Contains("as a slider of the page", Assert.Single(answer.Sentences, sentence => sentence.Id == "heights-kept").Text);
                continue;
            }

            foreach (var (map, i, j, quotient) in Places(answer.Map))
            {
                var address = TrialLink.Of(asked, name, "village-hump", map.Axis.Values[j], 3.6 * map.Speeds[i]);
                var (view, objections) = trial.See(PassState.Of(address.Split('?')[1], name), full: false);
                Assert.Empty(objections);
                // At the car's own value nothing is set, and there is nothing to hold it against.
                if (view!.Former is { IsWhole: true } former && view.Now.IsWhole)
                {
                    Agree(quotient, map.Measure.Of(view.Now.Pass) / map.Measure.Of(former.Pass), $"{name}, {word} {map.Axis.Values[j]}");
                    judged++;
                }
            }
        }

        Assert.True(judged > 20, $"Only {judged} places were driven.");
    }

    [Fact]
    public void A_place_of_the_map_of_any_car_is_better_or_worse_than_the_car_as_two_passes_say() =>
        Gen.Select(AnyCar.FourWheeled, Gen.Int[0, 3].Select(i => new[] { "ratio", "damping", "index", "wheelbase" }[i])).Sample(
            (car, word) =>
            {
                var asked = new RuleAsked
                {
                    Car = LoadedCar.Of(car),
                    Road = KnownThings.Hump,
                    Rule = TradeRule.Of(word),
                    Slowest = 8.0,
                    Fastest = 20.0,
                    Detail = Few,
                    MapAlone = true,
                };
                RuleMap map;
                try
                {
                    map = RuleStudy.Run(asked).Map;
                }
                catch (RunFailedException)
                {
                    // A drawn car that gets over the hump at no value has no map to be held to.
                    return;
                }

                foreach (var (_, i, j, quotient) in Places(map))
                {
                    var turned = map.Axis.Change(map.Model, map.Axis.Values[j]);
                    LoadedCar[] both = [asked.Car, new LoadedCar("turned", turned.Car, turned.Load)];
                    var passes = PassStudy.Run(both, asked.Road, map.Speeds[i], TestContext.Current.CancellationToken);
                    if (passes.All(p => p.IsWhole))
                    {
                        Agree(quotient, map.Measure.Of(passes[1].Pass) / map.Measure.Of(passes[0].Pass), word);
                    }
                }
            },
            iter: 40,
            threads: 1);

    // Places that differ from the car's own value and have a measure there, with that measure over the car's own.
    private static IEnumerable<(RuleMap Map, int Speed, int Value, double Quotient)> Places(RuleMap map) =>
        from i in Enumerable.Range(0, map.Speeds.Count)
        from j in Enumerable.Range(0, map.Axis.Values.Count)
        let quotient = map.Measured[i][j] / map.OwnMeasured[i]
        where double.IsFinite(quotient)
        select (map, i, j, quotient);

    private static void Agree(double said, double driven, string which)
    {
        Assert.True(Math.Abs(driven - said) <= Rounding * said, $"{which}: the map says {said:F4} of the car's, two passes {driven:F4}.");
        if (Math.Abs(said - 1.0) >= RuleMap.Threshold)
        {
            Assert.Equal(Math.Sign(said - 1.0), Math.Sign(driven - 1.0));
        }
    }
}
