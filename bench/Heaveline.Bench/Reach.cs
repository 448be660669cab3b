using System.Globalization;
using Heaveline.Cars;
using Heaveline.Files.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Passes.Steps;
using Heaveline.Roads;
using Heaveline.Studies;

namespace Heaveline.Bench;

/// <summary>
/// A study from the car files' numbers to the measures: thousands of different cars, 10 s each at 60 km/h over a random road of class C in two tracks
/// with the bench's hump in it, 200 samples a second, two measures; every car's set-up, the road's reading and the measures are in it. Processor time
/// of one thread a run, the least and the middle of the rounds; and what of it is set-up.
/// </summary>
internal static class Reach
{
    private const int Rounds = 9;

    public static int Run(string garage, string[] args)
    {
        var runs = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 4096;
        var road = Road();
        (string Name, Car Car)[] kinds =
        [
            ("bench saloon", Saloon.Of()),
            ("bench saloon with friction", Saloon.Rubbing(60.0)),
            .. new[] { "fern-saloon", "plover-motorcycle", "tarn-off-roader" }.Select(name => (name, CarFile.Load($"{garage}/{name}.yaml").Value!)),
        ];
        // A word more asks for the cars whose names hold it.
        kinds = [.. kinds.Where(kind => args.Length < 2 || kind.Name.Contains(args[1], StringComparison.Ordinal))];
        Console.WriteLine(
            "| car | precision | step, ms | µs a run of 10 s: least | middle | 10 000 runs on two cores, s | model | slots | groups | packing |");
        Console.WriteLine("|---|---|--:|--:|--:|--:|--:|--:|--:|--:|");
        foreach (var (name, car) in kinds)
        {
            var load = name.StartsWith("bench", StringComparison.Ordinal) ? null : LoadedCar.UsualLoad(car);
            Car[] cars = [.. Enumerable.Range(0, runs).Select(i => Varied(car, 0.98 + (0.04 * i / runs)))];
            foreach (var single in new[] { false, true })
            {
                var options = new PassOptions
                {
                    Method = FixedStep.Once with { InSingle = single },
                    Record = new() { Duration = 10.0, SamplesPerSecond = 200.0 },
                };
                var whole = Timed(() => BatchedMeasures.Of(
                    [.. cars.Select(c => new PassRequest(RideModel.Of(c, load), road, Saloon.Speed))],
                    [SettlingCatalogue.RmsPitch, HitCatalogue.PeakPitchAcceleration],
                    options,
                    1,
                    CancellationToken.None));
                var (step, parts) = Parts([.. cars.Take(512)], load, road, options);
                var each = string.Join(" | ", parts.Select(part => (1e3 * part / 512).ToString("F2", CultureInfo.InvariantCulture)));
                Console.WriteLine(string.Create(
                    CultureInfo.InvariantCulture,
                    $"| {name} | {(single ? "single" : "double")} | {1e3 * step:F3} | {1e3 * whole.Least / runs:F1} | {1e3 * whole.Middle / runs:F1} "
                    + $"| {0.5e-3 * whole.Least / runs * 1e4:F2} | {each} |"));
            }
        }

        return 0;
    }

    private static (double Step, double[] Parts) Parts(Car[] cars, LoadState? load, Road road, PassOptions options)
    {
        RideModel[] models = [.. cars.Select(car => RideModel.Of(car, load))];
        PassRequest[] requests = [.. models.Select(model => new PassRequest(model, road, Saloon.Speed))];
        var groups = PassGroup.Of(requests, options, LaneWidth.Best, recorded: false);
        RideNumbers[][] packs = [.. groups.Select(group => group.Requests.Select(request => request.Model.Numbers).ToArray())];
        var clock = groups[0].Clocks[0];
        return (clock.Step,
        [
            Timed(() => Array.ForEach(cars, car => RideModel.Of(car, load))).Least,
            Timed(() => Array.ForEach(models, model => _ = new KernelSlots(model.Numbers))).Least,
            Timed(() => PassGroup.Of(requests, options, LaneWidth.Best, recorded: false)).Least,
            Timed(() => Array.ForEach(packs, Pack)).Least,
        ]);

        void Pack(RideNumbers[] numbers)
        {
            if (numbers.Length > Lane512.Count)
            {
                Stepper.Of<FloatLane512>(numbers, clock.StepsPerSample, clock.Step, Channel.BodyAccelerations).Dispose();
            }
            else
            {
                Stepper.Of<Lane512>(numbers, clock.StepsPerSample, clock.Step, Channel.BodyAccelerations).Dispose();
            }
        }
    }

    private static (double Least, double Middle) Timed(Action work)
    {
        work();
        work();
        double[] times = [.. Enumerable.Range(0, Rounds).Select(_ => ProcessorTime.Of(work)).Order()];
        return (times[0], times[Rounds / 2]);
    }

    /// <summary>The car with masses, bars, tyres and straight springs multiplied by a factor.</summary>
    public static Car Varied(Car car, double factor)
    {
        return car with { Front = Of(car.Front), Rear = Of(car.Rear) };

        Axle Of(Axle axle) => axle with
        {
            UnsprungMass = new(axle.UnsprungMass.Si * factor),
            AntiRollBar = new(axle.AntiRollBar.Si * factor),
            Tyre = axle.Tyre with { Rate = new(axle.Tyre.Rate.Si * factor) },
            Spring = axle.Spring with
            {
                Law = axle.Spring.Law is LinearSpring spring ? spring with { Rate = new(spring.Rate.Si * factor) } : axle.Spring.Law,
            },
        };
    }

    /// <summary>The road of the study.</summary>
    public static Road Road()
    {
        var (left, right) = new RandomRoad
        {
            Spectrum = RoadSpectrum.Of(RoadClass.C), Track = new(1.5), Length = new(200.0), LeadIn = new(5.0), Seed = 7,
        }.Draw();
        double[] at = [.. Enumerable.Range(0, 4000).Select(i => 0.05 * i)];
        return Heaveline.Roads.Road.FromMeasured("class C with a hump", at, [.. at.Select(x => At(left, x))], [.. at.Select(x => At(right, x))]);

        static double At(Profile profile, double x) => profile.Height(x) + Saloon.Hump.Left.Height(x - 60.0);
    }
}
