using Heaveline.Cars;
using Heaveline.Doubts;
using Heaveline.Files.Cars;
using Heaveline.Studies;
using Heaveline.Tests.House;
using Heaveline.Tuning;

namespace Heaveline.Tests.Tuning;

public class SettingsTests
{
    private static readonly Car Saloon = CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon.yaml")).Value!;

    [Fact]
    public void A_part_that_is_set_is_as_doubtful_in_proportion_as_the_one_before_it()
    {
        var (was, now) = (Rate(Saloon), Rate(Settings.Apply(Saloon, new Dictionary<string, double> { ["front-spring"] = 30.0 }, false)));
        Assert.Equal(30000.0, now.Si, 1e-9);
        Assert.True(was.Doubt.IsStated);
        Assert.Equal(was.Doubt.HalfWidth / was.Si, now.Doubt.HalfWidth / now.Si, 1e-12);
        Assert.Equal(was.Doubt.Shared, now.Doubt.Shared);

        // A table of dampers keeps its rig's doubt, which lies in its factor.
        var doubted = Saloon.Rear.Damper.Law is TableDamper table
            ? Saloon with { Rear = Saloon.Rear with { Damper = Saloon.Rear.Damper with { Law = table.Under(new(1.0, new(0.05))) } } }
            : throw new InvalidOperationException("The saloon's rear dampers are a table.");
        var set = Settings.Apply(doubted, new Dictionary<string, double> { ["rear-damping"] = 1.5 }, false);
        Assert.Equal(0.05, ((TableDamper)set.Rear.Damper.Law).Factor.Doubt.HalfWidth);

        // So that a car that is set and the file that says the same leave as much open.
        Assert.Equal(CarDoubts.Of(Saloon).Sources.Count, CarDoubts.Of(Settings.Apply(Saloon, All, false)).Sources.Count);
    }

    [Fact]
    public void A_setting_is_turned_in_even_steps_to_the_ends_of_its_slider_and_never_the_wheelbase()
    {
        var ways = CureTurn.Ways(Saloon);
        // Springs, dampers both ways; stops to more; an interconnection that is not there can only be added.
        Assert.Equal(12, ways.Count);
        Assert.Equal(ways.Select(way => way[0].Act).Distinct(), ways.Select(way => way[0].Act));
        Assert.DoesNotContain(ways, way => way[0].Setting is WheelbaseSetting);
        foreach (var way in ways)
        {
            Assert.Equal(Enumerable.Range(1, CureTurn.Steps), way.Select(turn => turn.Step));
            var (scale, values) = (way[0].Scale, way.Select(turn => turn.Value).ToList());
            Assert.Equal(way[0].IsUp ? scale.To : scale.From, values[^1], 1e-9);
            Assert.Equal(way[0].IsUp ? values.Order() : values.OrderDescending(), values);
            Assert.All(values, value => Assert.Equal(0.0, Math.IEEERemainder(value, scale.Step), 1e-9));
            if (way[0].Setting is SpringSetting or DampingSetting)
            {
                var ratio = Math.Pow(values[^1] / scale.Described, 1.0 / CureTurn.Steps);
                Assert.All(values.Zip(values.Skip(1)), pair => Assert.Equal(ratio, pair.Second / pair.First, 0.03));
            }
        }
    }

    private static Dictionary<string, double> All => Settings.All(false).Where(setting => setting is SpringSetting or DampingSetting or StopSetting)
        .ToDictionary(setting => setting.Key, setting => 1.1 * setting.ScaleOf(Saloon)!.Described);

    private static Heaveline.Quantities.Amount<Heaveline.Quantities.Stiffness> Rate(Car car) => ((LinearSpring)car.Front.Spring.Law).Rate;
}
