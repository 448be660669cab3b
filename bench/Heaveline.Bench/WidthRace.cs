using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Passes.Steps;

namespace Heaveline.Bench;

/// <summary>
/// The stepping kernel alone, one core, at every lane width, against each other and against a general-purpose solver in the same run: rounds in turn,
/// the median of each. The peer is a program that prints its milliseconds per run (bench/peers/odeint_ab4.cpp).
/// </summary>
internal static class WidthRace
{
    private const int Rounds = 15;
    private const int Samples = 1600;
    private const int StepsPerSample = 4;
    private const double Step = 0.625e-3;

    // Samples that are taken up at once by whoever measures in flight.
    private const int Chunk = 32;

    /// <param name="peer">The peer's command line, or nothing.</param>
    public static int Run(string[] peer)
    {
        var entrants = new List<(string Name, int Cars, Func<double> Milliseconds)>
        {
            ("scalar, one car", 1, Timed<Quad<ScalarLane>, ScalarLane>(1)),
            ("corners in one register, one car", 1, Timed<CornerQuad, ScalarLane>(1)),
            ("2 cars side by side (128 bits)", 2, Timed<Quad<Lane128>, Lane128>(2)),
            ("4 cars side by side (256 bits)", 4, Timed<Quad<Lane256>, Lane256>(4)),
        };
        if (LaneWidth.All.Contains(8))
        {
            entrants.Add(("8 cars side by side (512 bits)", 8, Timed<Quad<Lane512>, Lane512>(8)));
        }

        entrants.Add(("blocks: 4 cars (256 bits), positions alone", 4, Blocks<Lane256>(4, Channel.Motion)));
        entrants.Add(("blocks: one car, scalar", 1, Blocks<ScalarLane>(1)));
        entrants.Add(("blocks: one car, axles side by side", 1, OneCar()));
        entrants.Add(("blocks: 2 cars (128 bits)", 2, Blocks<Lane128>(2)));
        entrants.Add(("blocks: 4 cars (256 bits)", 4, Blocks<Lane256>(4)));
        if (LaneWidth.All.Contains(8))
        {
            entrants.Add(("blocks: 8 cars (512 bits)", 8, Blocks<Lane512>(8)));
            entrants.Add(("blocks: 8 cars (512 bits), positions alone", 8, Blocks<Lane512>(8, Channel.Motion)));
        }

        if (peer.Length > 0)
        {
            entrants.Add(("Boost.odeint Adams–Bashforth 4, same step", 1, () => Peer(peer)));
        }

        var times = entrants.Select(_ => new List<double>()).ToList();
        for (var round = 0; round < Rounds; round++)
        {
            for (var i = 0; i < entrants.Count; i++)
            {
                times[i].Add(entrants[i].Milliseconds());
            }
        }

        var scalar = Rate(entrants[0], times[0]);
        Console.WriteLine("| kernel | runs of 4 s a second, one core, median | against scalar |");
        Console.WriteLine("|---|--:|--:|");
        for (var i = 0; i < entrants.Count; i++)
        {
            var rate = Rate(entrants[i], times[i]);
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {entrants[i].Name} | {rate:F0} | {rate / scalar:F2} |"));
        }

        Console.WriteLine();
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"One pass of 4 s with all traces, warm, from the trimmed model: median {SinglePassMedian():F0} µs of 2000."));
        return 0;
    }

    private static double SinglePassMedian()
    {
        var model = RideModel.Of(Saloon.Of());
        var options = new PassOptions { Method = FixedStep.Once, Record = new() { Duration = 4.0 } };
        var times = new List<double>();
        for (var i = 0; i < 2200; i++)
        {
            var start = Stopwatch.GetTimestamp();
            _ = Pass.Of(model, Saloon.Hump, Saloon.Speed, options);
            times.Add(Stopwatch.GetElapsedTime(start).TotalMicroseconds);
        }

        return times.Skip(200).Order().ElementAt(1000);
    }

    private static double Rate((string Name, int Cars, Func<double> Milliseconds) entrant, List<double> times) =>
        1000.0 * entrant.Cars / times.Order().ElementAt(times.Count / 2);

    private static Func<double> Timed<TQuad, TLane>(int cars)
        where TQuad : struct, IQuad<TQuad, TLane>
        where TLane : struct, ILane<TLane>
    {
        var models = Enumerable.Range(0, cars).Select(k => RideModel.Of(Saloon.Of(1.0 + (0.01 * k)))).ToList();
        var constants = RidePacking.Pack<TQuad, TLane>([.. models.Select(m => m.Numbers)]);
        var one = RoadUnderWheels.Of(models[0], Saloon.Hump).Table<Quad<ScalarLane>>(Saloon.Speed, 0.0, Step, Samples * StepsPerSample);
        TQuad[] road = [.. one.Select(q => TQuad.Of(Of(q, 0), Of(q, 1), Of(q, 2), Of(q, 3)))];
        var samples = new TLane[Samples * Channel.Count];
        return () => ProcessorTime.Of(
            () => new PassStepper<TQuad, TLane>(constants, StepsPerSample, TLane.Of(Step)).Run(new(0, road, default), Samples, samples));

        static TLane Of(Quad<ScalarLane> q, int corner) => TLane.Of(q.At(corner).Value);
    }

    private static Func<double> Blocks<TLane>(int cars, int channels = Channel.Count)
        where TLane : unmanaged, ILane<TLane>
    {
        var models = Enumerable.Range(0, cars).Select(k => RideModel.Of(Saloon.Of(1.0 + (0.01 * k))).Numbers).ToArray();
        var one = RoadUnderWheels.Of(RideModel.Of(Saloon.Of()), Saloon.Hump)
            .Table<Quad<ScalarLane>>(Saloon.Speed, 0.0, Step, Samples * StepsPerSample);
        double[] road = [.. one.SelectMany(q => Enumerable.Range(0, 4).Select(i => q.At(i).Value))];
        var samples = new TLane[Chunk * channels];
        return () => ProcessorTime.Of(() =>
        {
            using var stepper = Stepper.Of<TLane>(models, StepsPerSample, Step, channels);
            var steps = new RoadSteps<Quad<TLane>, TLane>(0, default, default) { Shared = road };
            for (var k = 0; k < Samples; k += Chunk)
            {
                stepper.Run(steps, Chunk, samples);
            }
        });
    }

    private static Func<double> OneCar()
    {
        var model = RideModel.Of(Saloon.Of());
        var road = RoadUnderWheels.Of(model, Saloon.Hump).Table<Quad<ScalarLane>>(Saloon.Speed, 0.0, Step, Samples * StepsPerSample);
        var samples = new ScalarLane[Samples * Channel.Count];
        return () => ProcessorTime.Of(() =>
        {
            using var stepper = Stepper.Of(model.Numbers, StepsPerSample, Step);
            stepper.Run(new(0, road, default), Samples, samples);
        });
    }

    private static double Peer(string[] command)
    {
        var start = new ProcessStartInfo(command[0]) { RedirectStandardOutput = true };
        foreach (var argument in command[1..])
        {
            start.ArgumentList.Add(argument);
        }

        using var process = Process.Start(start)!;
        var text = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        var match = Regex.Match(text, @"([\d.]+) ms per run");
        return match.Success
            ? double.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture)
            : throw new InvalidOperationException($"{command[0]} printed no milliseconds per run: {text}");
    }
}
