using Heaveline.Files.Cars;
using Heaveline.Files.Roads;
using Heaveline.Studies;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Studies;

/// <summary>Under which loads cures are driven.</summary>
public class CureLoadsTests
{
    [Fact]
    public void The_empty_car_is_driven_too_and_a_load_that_cannot_be_driven_is_named()
    {
        var saloon = CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon.yaml")).Value!;
        var full = saloon.LoadStates.Single(load => load.Name == "four up with luggage");
        var asked = new CureAsked
        {
            Car = LoadedCar.Of(saloon, full), Road = NamedRoads.Find("village-hump").Value!, Speed = 40.0 / 3.6, Draws = 24, Seed = 5,
        };
        var answer = CureStudy.Run(asked);
        Assert.Equal(["four up with luggage", "driver", "empty"], answer.Described.Select(pass => pass.Model.Load.Name));
        Assert.Null(answer.NotDriven);
        var tooMuch = full with { Name = "all of the street", Loads = [.. Enumerable.Repeat(full.Loads, 9).SelectMany(loads => loads)] };
        var crowded = CureStudy.Run(asked with { Car = LoadedCar.Of(saloon with { LoadStates = [.. saloon.LoadStates, tooMuch] }, full) });
        Assert.StartsWith("Under 'all of the street' the car as described cannot stand", crowded.NotDriven!.Text);
        Assert.Contains(crowded.NotDriven, crowded.Sentences);
        Assert.Equal(answer.Cures.Select(cure => cure.Words), crowded.Cures.Select(cure => cure.Words));
    }
}
