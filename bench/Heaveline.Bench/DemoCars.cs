using System.Globalization;
using Heaveline.Files.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Studies;

namespace Heaveline.Bench;

/// <summary>
/// Every demo car over the bench's hump: one pass of 4 s with all traces, and one of 64 cars side by side with the headline alone; on one thread, the
/// least of the rounds, beside the plain saloon of the other benches in the same run.
/// </summary>
internal static class DemoCars
{
    private const int Rounds = 40;
    private const int AtOnce = 64;
    private const int KernelRounds = 7;

    public static int Run(string garage)
    {
        var cars = Directory.EnumerateFiles(garage, "*.yaml").Order(StringComparer.Ordinal)
            .Select(file => (Name: Path.GetFileNameWithoutExtension(file), Car: CarFile.Load(file).Value))
            .Where(c => c.Car is not null)
            .Select(c => (c.Name, Model: RideModel.Of(c.Car!, LoadedCar.UsualLoad(c.Car!))))
            .Prepend(("plain saloon", RideModel.Of(Saloon.Of()))).ToList();
        Console.WriteLine(
            "| car | step, ms | one pass, ms | of 64 side by side, ms a car | kernel alone, µs a car: double | single |");
        Console.WriteLine("|---|--:|--:|--:|--:|--:|");
        foreach (var (name, model) in cars)
        {
            var alone = Least(() => Pass.Of(
                model, Saloon.Hump, Saloon.Speed, new PassOptions { Method = FixedStep.Once, Record = new() { Duration = 4.0 } }));
            PassRequest[] many = [.. Enumerable.Repeat(new PassRequest(model, Saloon.Hump, Saloon.Speed), AtOnce)];
            var options = new PassOptions { Method = FixedStep.Once with { LargestStep = 0.625e-3 } };
            var beside = Least(() => BatchedMeasures.Of(many, [SettlingCatalogue.RmsPitch], options, 1, CancellationToken.None)) / AtOnce;
            var work = new KernelWork(model);
            double Kernel(int cars, Func<double> run) => 1e3 * Enumerable.Range(0, KernelRounds).Select(_ => run()).Min() / cars;
            RideModel[] same = [.. Enumerable.Repeat(model, 16)];
            var blocks = LaneWidth.All.Contains(8) ? Kernel(8, work.Blocks<Lane512>(same[..8])) : Kernel(4, work.Blocks<Lane256>(same[..4]));
            var single = LaneWidth.All.Contains(8) ? Kernel(16, work.Blocks<FloatLane512>(same)) : Kernel(8, work.Blocks<FloatLane256>(same[..8]));
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"| {name} | {1e3 * work.Step:F3} | {alone:F3} | {beside:F3} | {blocks:F0} | {single:F0} |"));
        }

        return 0;
    }

    private static double Least(Action run)
    {
        var least = double.PositiveInfinity;
        for (var round = 0; round < Rounds; round++)
        {
            least = Math.Min(least, ProcessorTime.Of(run));
        }

        return least;
    }
}
