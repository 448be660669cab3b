using System.Diagnostics;
using System.Globalization;
using Heaveline.Cars;
using Heaveline.Doubts;
using Heaveline.Files.Cars;
using Heaveline.Measures;
using Heaveline.Measures.Comfort;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Rides;
using Heaveline.Roads;
using Heaveline.Studies;

namespace Heaveline.Bench;

/// <summary>
/// The random response of every demo car on a road of class C at 80 km/h beside the plain saloon, with and without friction: processor time of one
/// response, its parts, and 200 draws of its doubts; the numbers themselves beside, so that two builds can be held against each other.
/// </summary>
internal static class RideRace
{
    private const double Speed = 80.0 / 3.6;
    private const int Rounds = 30;
    private const int Warm = 400;
    private const int Draws = 200;

    public static int Run(string garage)
    {
        var road = RoadSpectrum.Of(RoadClass.C);
        var cars = Directory.EnumerateFiles(garage, "*.yaml").Order(StringComparer.Ordinal)
            .Select(file => (Name: Path.GetFileNameWithoutExtension(file), Car: CarFile.Load(file).Value))
            .Where(c => c.Car is not null)
            .Select(c => (c.Name, Car: c.Car!, Load: LoadedCar.UsualLoad(c.Car!)))
            .Prepend(("saloon with 60 N of friction", Saloon.Rubbing(60.0), LoadState.Reference))
            .Prepend(("plain saloon", Saloon.Of(), LoadState.Reference)).ToList();
        // The first car of a program pays for compiling what all run.
        var first = RideModel.Of(Saloon.Rubbing(30.0));
        for (var round = 0; round < 4; round++)
        {
            Middle(() => RandomResponse.Of(first, road, Speed));
        }

        Console.WriteLine("| car | response, ms | at trim alone, ms | model, ms | passes | frequencies | heave rms, m/s² | front travel rms, mm |");
        Console.WriteLine("|---|--:|--:|--:|--:|--:|--:|--:|");
        foreach (var (name, car, load) in cars)
        {
            var model = RideModel.Of(car, load);
            var response = RandomResponse.Of(model, road, Speed);
            var whole = Middle(() => RandomResponse.Of(model, road, Speed));
            var trim = Middle(() => RandomResponse.Of(model, road, Speed, RandomOptions.Default with { AtOwnLevel = false }));
            var made = Middle(() => RideModel.Of(car, load));
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"| {name} | {whole:F3} | {trim:F3} | {made:F3} | {response.Passes} | {response.Frequencies.Count} "
                + $"| {response.Rms(RideSignal.HeaveAcceleration):F9} | {1e3 * response.Rms(RideSignal.Travel(model, 0)):F9} |"));
        }

        Console.WriteLine();
        Console.WriteLine($"| {Draws} draws | sources | threads | wall, s | processor, s | one seat number of the first output: mean |");
        Console.WriteLine("|---|--:|--:|--:|--:|--:|");
        foreach (var (name, car, load) in cars)
        {
            var doubts = CarDoubts.Of(car, load);
            var outputs = RideCatalogue.Of(car);
            JointStudy OfRides() => JointStudy.OfRides([doubts], road, Speed, outputs, Draws, 1UL, degree: 2);
            OfRides();
            using var process = Process.GetCurrentProcess();
            var (cpu, start) = (process.TotalProcessorTime, Stopwatch.GetTimestamp());
            var study = OfRides();
            var wall = Stopwatch.GetElapsedTime(start).TotalSeconds;
            process.Refresh();
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"| {name} | {doubts.Sources.Count} | 2 | {wall:F3} | {(process.TotalProcessorTime - cpu).TotalSeconds:F3} "
                + $"| {study.Cars[0][0].Mean:F9} |"));
        }

        Parts(RideModel.Of(Saloon.Of()), road);
        return 0;
    }

    // One frequency by the dense solution and side by side; one design of 80 frequencies in registers of 256 and 512 bits.
    private static void Parts(RideModel model, RoadSpectrum road)
    {
        var grid = new Rides.RideRoad(road, Speed, null).In(16);
        var (ride, lines, count) = (LinearRide.Of(model), RandomLines.Of(model, grid), grid.Omegas.Length);
        double[] row = [.. RideSignal.Travel(model, 0).Place[..7]], place = [0.0], speed = [0.0];
        var dense = Middle(() =>
        {
            foreach (var omega in grid.Omegas)
            {
                ride.Answer(omega);
            }
        });
        Console.WriteLine();
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"one frequency, dense: {1e6 * dense / count:F0} ns"));
        foreach (var width in LaneWidth.All)
        {
            var numbers = RandomLines.Numbers(width);
            var many = Middle(() =>
            {
                for (var turn = 0; turn < 10; turn++)
                {
                    lines.Squares(numbers, ride, row, place, speed);
                }
            });
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture, $"one frequency, {width} side by side, with a mean square: {1e5 * many / count:F0} ns"));
        }

        var (seat, design) = (RideSpectrum.Vertical(model, road, Speed, 1.3, 0.35, Weightings.Wk.Factor).Table, SymmetricRide.From(model)!.Value);
        void Designs(Func<double> one)
        {
            for (var k = 0; k < 1000; k++)
            {
                one();
            }
        }

        var four = Middle(() => Designs(() => PlainSpectrum.MeanSquare<Lane256>(seat, design, 1.0, 0.1, 0.35)));
        var eight = Middle(() => Designs(() => PlainSpectrum.MeanSquare<Lane512>(seat, design, 1.0, 0.1, 0.35)));
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"one design: 256 bits {1e3 * four:F0} ns, 512 bits {1e3 * eight:F0} ns"));
    }

    // The middle of the rounds.
    private static double Middle(Action work)
    {
        // Compiled and compiled again, half a second at most.
        var start = Stopwatch.GetTimestamp();
        for (var round = 0; round < Warm && Stopwatch.GetElapsedTime(start).TotalSeconds < 0.5; round++)
        {
            work();
        }

        var times = Enumerable.Range(0, Rounds).Select(_ => ProcessorTime.Of(work)).Order().ToArray();
        return times[Rounds / 2];
    }
}
