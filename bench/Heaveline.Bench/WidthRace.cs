using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes;

namespace Heaveline.Bench;

/// <summary>
/// The stepping kernel alone, one core, at every lane width, against each other and against a general-purpose solver in the same run: rounds in turn,
/// the median of each. The peer is a program that prints its milliseconds per run (bench/peers/odeint_ab4.cpp).
/// </summary>
internal static class WidthRace
{
    private const int Rounds = 15;

    /// <param name="peer">The peer's command line, or nothing.</param>
    public static int Run(string[] peer)
    {
        RideModel[] cars = [.. Enumerable.Range(0, 16).Select(k => RideModel.Of(Saloon.Of(1.0 + (0.01 * k))))];
        var work = new KernelWork(cars[0]);
        var entrants = new List<(string Name, int Cars, Func<double> Milliseconds)>
        {
            ("blocks: scalar, one car", 1, work.Blocks<ScalarLane>(cars[..1])),
            ("blocks: one car, axles side by side", 1, work.OneCar()),
            ("blocks: 2 cars (128 bits)", 2, work.Blocks<Lane128>(cars[..2])),
            ("blocks: 4 cars (256 bits)", 4, work.Blocks<Lane256>(cars[..4])),
            ("blocks: 8 cars in single precision (256 bits)", 8, work.Blocks<FloatLane256>(cars[..8])),
        };
        if (LaneWidth.All.Contains(8))
        {
            entrants.Add(("blocks: 8 cars (512 bits)", 8, work.Blocks<Lane512>(cars[..8])));
            entrants.Add(("blocks: 8 cars (512 bits), positions recorded alone", 8, work.Blocks<Lane512>(cars[..8], Channel.Motion)));
            entrants.Add(("blocks: 16 cars in single precision (512 bits)", 16, work.Blocks<FloatLane512>(cars)));
            entrants.Add(("blocks: the same, positions recorded alone", 16, work.Blocks<FloatLane512>(cars, Channel.Motion)));
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
        Console.WriteLine("| kernel | runs of 4 s a second, one core, median | against one car, scalar |");
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
