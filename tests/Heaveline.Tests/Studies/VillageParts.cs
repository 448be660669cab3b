using Heaveline.Cars;
using Heaveline.Files.Cars;
using Heaveline.Files.Roads;
using Heaveline.Parts;
using Heaveline.Quantities;
using Heaveline.Studies;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Studies;

/// <summary>A small list of parts for the fern saloon, invented, and studies of it.</summary>
internal static class VillageParts
{
    public static Car Saloon { get; } = CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon.yaml")).Value!;

    /// <summary>Springs from soft to firm for each end, and a damper with three clicks for both.</summary>
    public static PartsList List { get; } = new()
    {
        Name = "small list",
        Currency = "EUR",
        Parts =
        [
            Spring("Alder F-17", 17_000.0, AxleEnd.Front, 70m), Spring("Alder F-19", 19_000.0, AxleEnd.Front, 70m),
            Spring("Alder F-23", 23_000.0, AxleEnd.Front, 75m), Spring("Alder R-42", 42_000.0, AxleEnd.Rear, 80m),
            Spring("Alder R-47", 47_000.0, AxleEnd.Rear, 80m), Spring("Alder R-53", 53_000.0, AxleEnd.Rear, 85m),
            Damper("Bunting B", 120m),
            new BarPart { Name = "Cress 12", Price = new Money(95m, "EUR"), Only = AxleEnd.Front, Holes = [new("only", new(12_000.0))] },
        ],
    };

    /// <summary>A study over two obstacles and one random road.</summary>
    public static ChooseAsked Asked { get; } = new()
    {
        Car = Saloon,
        Lists = [List],
        Roads =
        [
            new("village-hump", NamedRoads.Find("village-hump").Value!, [25.0 / 3.6, 40.0 / 3.6]),
            new("short-bump", NamedRoads.Find("short-bump").Value!, [50.0 / 3.6]),
        ],
        RideSpeeds = [80.0 / 3.6],
        Loads = [.. Saloon.LoadStates],
        Draws = 64,
        Seed = 2,
        DrivenWhole = long.MaxValue,
    };

    public static CoilPart Spring(string name, double rate, AxleEnd end, decimal price) => new()
    {
        Name = name,
        Price = new Money(price, "EUR"),
        Only = end,
        Law = new LinearSpring { Rate = new Amount<Stiffness>(rate, new Doubt(0.03 * rate)) },
    };

    public static DamperPart Damper(string name, decimal price) => new()
    {
        Name = name,
        Price = new Money(price, "EUR"),
        Clicks = [new(2, Table(0.8)), new(4, Table(1.3))],
        GasForce = new Amount<Force>(110.0),
    };

    private static TableDamper Table(double factor) => new(
        new ForceTable([0.1, 0.3, 0.6, 1.0], [.. new[] { 120.0, 280.0, 465.0, 670.0 }.Select(f => factor * f)]),
        new ForceTable([0.1, 0.3, 0.6, 1.0], [.. new[] { 255.0, 615.0, 1040.0, 1500.0 }.Select(f => factor * f)]));
}
