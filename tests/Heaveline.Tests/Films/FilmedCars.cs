using System.Collections.Concurrent;
using Heaveline.Cars;
using Heaveline.Files.Cars;
using Heaveline.Files.Roads;
using Heaveline.Films;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Films;

/// <summary>Cars of the example garage that pass a camera, and films of them drawn by lot.</summary>
internal static class FilmedCars
{
    private static readonly ConcurrentDictionary<string, Car> Read = new();

    public static Car Car(string name) =>
        Read.GetOrAdd(name, static n => CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", n + ".yaml")).Value!);

    /// <summary>A pass, recorded from well before the bump.</summary>
    public static Pass Pass(Car car, string road, double kilometresPerHour) => Heaveline.Passes.Pass.Of(
        RideModel.Of(car),
        NamedRoads.All[road],
        kilometresPerHour / 3.6,
        new PassOptions { Record = new PassRecord { LeadTime = 0.8, SettlingTime = 3.0 } });

    /// <summary>The same car with its rear springs so that both ends have one frequency, times a ratio.</summary>
    public static Car WithRatio(Car car, double ratio)
    {
        var spring = (LinearSpring)car.Rear.Spring.Law;
        for (var round = 0; round < 4; round++)
        {
            var own = Ratio(car);
            spring = spring with { Rate = spring.Rate.Times(Math.Pow(ratio / own, 2.0)) };
            car = car with { Rear = car.Rear with { Spring = car.Rear.Spring with { Law = spring } } };
        }

        return car;
    }

    /// <summary>Rear over front frequency on rigid tyres.</summary>
    public static double Ratio(Car car)
    {
        var model = RideModel.Of(car);
        return AxleRide.Of(model, AxleEnd.Rear).Rates.FrequencyOnRigidTyres / AxleRide.Of(model, AxleEnd.Front).Rates.FrequencyOnRigidTyres;
    }

    /// <summary>What is known of a film of a car: its wheelbase.</summary>
    public static FilmGiven Given(Pass pass) => new() { Wheelbase = pass.Model.Car.Wheelbase with { Doubt = default } };

    /// <summary>A film by lot: which bump, which speed, from where, on a stand or by hand, how sharp.</summary>
    /// <param name="car">The car.</param>
    /// <param name="seed">The lot's number.</param>
    public static (Pass Pass, SeenPass Seen) Drawn(Car car, ulong seed)
    {
        double Any(ulong k) => SplitMix.Uniform((seed * 97) + 5, k);
        var pass = Pass(car, Any(1) < 0.5 ? "village-hump" : "speed-table", 12.0 + (26.0 * Any(2)));
        var film = new PlantedFilm
        {
            Pass = pass,
            Seed = seed + 1,
            Distance = 16.0 + (12.0 * Any(3)),
            LooksAt = 2.0 + (3.0 * Any(4)),
            FrameRate = new[] { 30.0, 60.0, 60.0, 120.0 }[(int)(4.0 * Any(5))],
            Shake = Any(6) < 0.5 ? 0.0 : 4.0,
            Yaw = 0.2 * (Any(7) - 0.5),
            HubNoise = 0.04 + (0.08 * Any(8)),
        };
        var said = pass.Model.Car.Wheelbase.Si * (1.0 + (0.004 * (Any(9) - 0.5)));
        return (pass, SeenPass.Of(film.Track(), new FilmGiven { Wheelbase = new Amount<Length>(said) }));
    }
}
