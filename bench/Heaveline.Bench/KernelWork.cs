using System.Diagnostics;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Passes.Steps;

namespace Heaveline.Bench;

/// <summary>The stepping kernel alone over the bench's hump for 4 s, packing included, samples taken up in small chunks.</summary>
/// <param name="model">The first of the cars side by side; all take its step.</param>
internal sealed class KernelWork(RideModel model)
{
    private const double Seconds = 4.0;
    private const int Chunk = 32;

    // So long at least in one turn, ms: what stood in the caches belongs to the entrant itself.
    private const double Turn = 10.0;
    private const int Warm = 400;

    private readonly PassTiming timing =
        PassTiming.Of(new(model, Saloon.Hump, Saloon.Speed), new PassRecord { Duration = Seconds, LeadTime = 0.0 }, FixedStep.Default);

    /// <summary>Step, s.</summary>
    public double Step => timing.Step;

    /// <summary>Milliseconds a run of blocks, as many cars as a lane holds together.</summary>
    public Func<double> Blocks<T>(IReadOnlyList<RideModel> cars, int channels = Channel.Count)
        where T : unmanaged, ILane<T>
    {
        RideNumbers[] numbers = [.. cars.Select(car => car.Numbers)];
        double[] road = [.. Table().SelectMany(q => Enumerable.Range(0, 4).Select(i => q.At(i).Value))];
        var samples = new T[Chunk * channels];
        return Timed(() =>
        {
            using var stepper = Stepper.Of<T>(numbers, timing.StepsPerSample, timing.Step, channels);
            Run(stepper, new RoadSteps<T>(0, default, default) { Shared = road }, samples);
        });
    }

    /// <summary>Milliseconds a run of one car, its axles side by side.</summary>
    public Func<double> OneCar()
    {
        var road = Table();
        var samples = new ScalarLane[Chunk * Channel.Count];
        return Timed(() =>
        {
            using var stepper = Stepper.Of(model.Numbers, timing.StepsPerSample, timing.Step);
            Run(stepper, new RoadSteps<ScalarLane>(0, road, default), samples);
        });
    }

    private Quad<ScalarLane>[] Table() => RoadUnderWheels.Of(model, Saloon.Hump)
        .Table(Saloon.Speed, timing.Start, timing.Step, timing.Samples * timing.StepsPerSample);

    private void Run<T>(BlockStepper<T> stepper, in RoadSteps<T> steps, T[] samples)
        where T : unmanaged, ILane<T>
    {
        for (var k = 0; k < timing.Samples; k += Chunk)
        {
            stepper.Run(steps, Math.Min(Chunk, timing.Samples - k), samples);
        }
    }

    private static Func<double> Timed(Action run)
    {
        // The runtime translates what is hot a second time, a while after it has seen it.
        for (var start = Stopwatch.StartNew(); start.ElapsedMilliseconds < Warm;)
        {
            run();
        }

        return () => Turned(run);
    }

    private static double Turned(Action run)
    {
        var runs = 0;
        var total = 0.0;
        for (; total < Turn; runs++)
        {
            total += ProcessorTime.Of(run);
        }

        return total / runs;
    }
}
