using System.Globalization;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Passes.Steps;

namespace Heaveline.Bench;

/// <summary>
/// Where the time of a large batch goes: 2048 saloons over the bench's hump, 4 s each with two measures, one thread, stage by stage; processor time
/// a run, medians.
/// </summary>
internal static class Stages
{
    private const int Runs = 2048;
    private const int Rounds = 9;

    public static int Run()
    {
        var options = new PassOptions { Method = FixedStep.Once, Record = new() { Duration = 4.0 } };
        Measure<Pass>[] measures = [SettlingCatalogue.RmsPitch, HitCatalogue.PeakPitchAcceleration];
        var cars = Enumerable.Range(0, Runs).Select(i => Saloon.Of(0.8 + (0.4 * i / Runs))).ToArray();
        var models = cars.Select(car => RideModel.Of(car)).ToArray();
        PassRequest[] requests = [.. models.Select(model => new PassRequest(model, Saloon.Hump, Saloon.Speed))];
        var groups = PassGroup.Of(requests, options, LaneWidth.Best);
        (string Name, Action Work)[] stages =
        [
            ("models: trim of every car", () => Array.ForEach(cars, car => RideModel.Of(car))),
            ("slots: a car's elements in the kernel's places", () => Array.ForEach(models, model => _ = new KernelSlots(model.Numbers))),
            ("groups: steps, clocks, roads", () => PassGroup.Of(requests, options, LaneWidth.Best)),
            ("packing", () => Each<Lane512>(null)),
            ("packing and kernel, nothing gathered", () => Each<Lane512>((stepper, road, timing) => Stepped(stepper, road, timing))),
            ("all: groups, packing, roads, kernel, measures, range",
                () => BatchedMeasures.Of(requests, measures, options, 1, CancellationToken.None)),
        ];
        foreach (var (_, work) in stages)
        {
            work();
        }

        var times = stages.Select(_ => new List<double>()).ToArray();
        for (var round = 0; round < Rounds; round++)
        {
            for (var i = 0; i < stages.Length; i++)
            {
                times[i].Add(ProcessorTime.Of(stages[i].Work));
            }
        }

        Console.WriteLine("| stage | µs a run of 4 s, one thread |");
        Console.WriteLine("|---|--:|");
        for (var i = 0; i < stages.Length; i++)
        {
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture, $"| {stages[i].Name} | {1e3 * times[i].Order().ElementAt(Rounds / 2) / Runs:F2} |"));
        }

        return 0;

        void Each<T>(Action<BlockStepper<T>, double[], PassTiming>? run)
            where T : unmanaged, ILane<T>
        {
            var timing = groups[0].Clocks[0];
            double[] road = [];
            foreach (var chunk in models.Chunk(T.Count))
            {
                using var stepper = Stepper.Of<T>(
                    Array.ConvertAll(chunk, model => model.Numbers), timing.StepsPerSample, timing.Step, Channel.BodyAccelerations);
                road = road.Length > 0 || run is null ? road : Table(models[0], timing);
                run?.Invoke(stepper, road, timing);
            }
        }
    }

    private static double[] Table(RideModel model, PassTiming timing)
    {
        var table = RoadUnderWheels.Of(model, Saloon.Hump)
            .Table(Saloon.Speed, timing.Start, timing.Step, timing.Samples * timing.StepsPerSample);
        return [.. table.SelectMany(q => Enumerable.Range(0, 4).Select(i => q.At(i).Value))];
    }

    private static void Stepped<T>(BlockStepper<T> stepper, double[] road, PassTiming timing)
        where T : unmanaged, ILane<T>
    {
        const int chunk = 64;
        var samples = new T[chunk * Channel.BodyAccelerations];
        var steps = new RoadSteps<T>(0, default, default) { Shared = road };
        for (var k = 0; k < timing.Samples; k += chunk)
        {
            stepper.Run(steps, Math.Min(chunk, timing.Samples - k), samples);
        }
    }
}
