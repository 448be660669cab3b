using Heaveline.Tests.House;
using Heaveline.Web.Serving;

namespace Heaveline.Tests.Web;

/// <summary>What lists of cars call them.</summary>
public class CarTitleTests
{
    [Fact]
    public void A_list_calls_every_car_of_the_demo_as_the_car_calls_itself()
    {
        using var demo = new GarageView(new ServeOptions { Garage = Path.Combine(Checkout.Root, "examples", "garage") });
        Assert.Equal(demo.CarNames.Order(), demo.CarTitles.Select(car => car.Name).Order());
        Assert.All(demo.CarTitles, car => Assert.Equal(demo.Car(car.Name)!.Value!.Name, car.Words));
        Assert.Equal(demo.CarTitles.OrderBy(car => car.Words, StringComparer.OrdinalIgnoreCase), demo.CarTitles);
    }

    [Fact]
    public void Variants_that_change_one_another_are_called_each_behind_the_other()
    {
        var folder = Directory.CreateTempSubdirectory("heaveline-");
        try
        {
            File.WriteAllText(Path.Combine(folder.FullName, "one.yaml"), "variant: one\nof: two.yaml\n");
            File.WriteAllText(Path.Combine(folder.FullName, "two.yaml"), "variant: two\nof: one.yaml\n");
            File.WriteAllText(Path.Combine(folder.FullName, "alone.yaml"), "variant: alone\nof: gone.yaml\n");
            using var garage = new GarageView(new ServeOptions { Garage = folder.FullName });
            Assert.Equal(["alone", "one, two", "two, one"], garage.CarTitles.Select(car => car.Words));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
