using Heaveline.Doubts;
using Heaveline.Files.Cars;
using Heaveline.Files.Roads;
using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Studies;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Studies;

/// <summary>Under which loads cures are driven.</summary>
public class CureLoadsTests
{
    [Fact]
    public void The_empty_car_is_driven_too_and_a_load_that_cannot_be_driven_is_named()
    {
        var asked = Saloon();
        var (saloon, full) = (asked.Car.Car, asked.Car.Load);
        var answer = CureStudy.Run(asked);
        Assert.Equal(["four up with luggage", "driver", "empty"], answer.Described.Select(pass => pass.Model.Load.Name));
        Assert.Null(answer.NotDriven);
        var tooMuch = full with { Name = "all of the street", Loads = [.. Enumerable.Repeat(full.Loads, 9).SelectMany(loads => loads)] };
        var crowded = CureStudy.Run(asked with { Car = LoadedCar.Of(saloon with { LoadStates = [.. saloon.LoadStates, tooMuch] }, full) });
        Assert.StartsWith("Under 'all of the street' the car as described cannot stand", crowded.NotDriven!.Text);
        Assert.Contains(crowded.NotDriven, crowded.Sentences);
        Assert.Equal(answer.Cures.Select(cure => cure.Words), crowded.Cures.Select(cure => cure.Words));
    }

    [Fact]
    public void A_price_names_the_load_that_it_is_of_and_the_table_holds_what_gets_worse_under_every_load()
    {
        var answer = CureStudy.Run(Saloon());
        Assert.Equal(answer.Cures.Length, answer.Prices.Count);
        foreach (var (k, cure) in answer.Cures.Index())
        {
            var said = answer.Told[k].Single(s => s.Id == $"cure-{k + 1}-price").Text;
            Assert.Matches("^Price(: none found under 'four up with luggage', 'driver', 'empty'| under 'four up with luggage': )", said);
            Assert.Equal(said.Contains("none found", StringComparison.Ordinal), answer.Prices[k].Rows.Count == 0);
            // Where nothing that is weighed gets worse, what else does in the whole table is not denied.
            var isElsewhere = answer.Described.Zip(cure.Passes, (was, now) => PassCatalogue.For(now.Model, now.Pass.Road, MeasureUse.Table)
                .Where(measure => measure.Key != answer.Measure.Key)
                .Select(measure => new MeasureChange(measure, measure.ShownOf(was.Pass), measure.ShownOf(now.Pass))))
                .Any(changes => changes.Any(change => change is { IsFelt: true, IsBetter: false }));
            var isNone = said.Contains("none found", StringComparison.Ordinal);
            Assert.Equal(isNone && isElsewhere, said.Contains("of the others, under '", StringComparison.Ordinal));
            var rows = answer.Prices[k].Rows.ToDictionary(row => row.Key, row => row.Values);
            foreach (var (was, now) in answer.Described.Zip(cure.Passes))
            {
                var load = was.Model.Load.Name;
                // Over the road: every number of the tables of a crossing that is worse in print by three hundredths, and no other.
                foreach (var change in MeasureChange.Of(now, was).Where(change => change.Measure.Key != answer.Measure.Key))
                {
                    var key = $"{change.Measure.Key}-{load.Replace(' ', '-')}";
                    Assert.Equal(change is { IsFelt: true, IsBetter: false }, rows.ContainsKey(key));
                    if (rows.TryGetValue(key, out var values))
                    {
                        Assert.Equal([change.Before, change.After], values);
                    }
                }
            }
        }

        var named = answer.Tables.Select(table => table.Title).ToList();
        Assert.All(answer.Prices.Where(table => table.Rows.Count > 0), table => Assert.Contains(table.Title, named));
        Assert.Contains(answer.Prices, table => table.Rows.Select(row => row.Label.Split(':')[0]).Distinct().Count() > 1);
    }

    /// <summary>By a loop over draws, a pass at a time: the car as described breaks off in some of them.</summary>
    [Fact]
    public void A_draw_in_which_the_car_breaks_off_counts_for_a_cure_that_gets_across_and_against_none()
    {
        var asked = Saloon() with { Draws = 40 };
        var car = asked.Car.Car;
        var most = Pass.Of(asked.Car.Model, asked.Road, asked.Speed).Travel(2).Max();
        LoadedCar Solid(string name, double at, double doubt) => LoadedCar.Of(
            car with
            {
                Name = name,
                Rear = car.Rear with
                {
                    BumpStop = car.Rear.BumpStop! with { SolidAfter = new Amount<Length>(at - car.Rear.BumpStop!.Clearance.Si).WithDoubt(doubt) },
                },
            },
            asked.Car.Load);
        LoadedCar[] cures = [Solid("with room", most + 0.04, 0.001), Solid("without", most - 0.01, 0.001)];
        asked = asked with { Car = Solid("doubtful", most + 0.002, 0.01) };
        var guard = CureGuard.Of(asked.Car.Model, asked.Road, CureAim.Settling);
        var chances = CureChance.Of(asked, cures, guard, StudyRun.Plain)!;
        var doubts = JointDoubts.Of([.. cures.Prepend(asked.Car).Select(one => CarDoubts.Of(one.Car, one.Load))]);
        var (fails, rescued, kept, lost) = (0, 0, 0, 0);
        for (var draw = 0; draw < asked.Draws; draw++)
        {
            bool[] across =
            [
                .. JointDraw.Of(doubts, asked.Seed, draw).Models.Select(model =>
                    Pass.Of(model, asked.Road, asked.Speed, new() { Method = FixedStep.Once }).Outcome == PassOutcome.Completed),
            ];
            fails += across[0] ? 0 : 1;
            rescued += !across[0] && across[1] ? 1 : 0;
            kept += !across[0] && across[2] ? 1 : 0;
            lost += across[0] && !across[2] ? 1 : 0;
        }

        Assert.InRange(fails, 1, asked.Draws - 1);
        Assert.True(rescued > 0 && lost > 0, $"{rescued} rescued, {lost} lost");
        // More room presses no stop deeper where the car got across anyway: all that it helps is a car that did not.
        Assert.Equal(new CureChance(rescued, 0, asked.Draws), chances[0]);
        Assert.Equal(new CureChance(kept, lost, asked.Draws), chances[1]);
    }

    private static CureAsked Saloon()
    {
        var saloon = CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon.yaml")).Value!;
        return new CureAsked
        {
            Car = LoadedCar.Of(saloon, saloon.LoadStates.Single(load => load.Name == "four up with luggage")),
            Road = NamedRoads.Find("village-hump").Value!,
            Speed = 40.0 / 3.6,
            Draws = 24,
            Seed = 5,
        };
    }
}
