using System.Diagnostics;
using System.Globalization;
using Heaveline.Insight;
using Heaveline.Models;
using Heaveline.Roads;

namespace Heaveline.Bench;

/// <summary>A whole map of a rule: 60 frequency ratios by 200 speeds, 20 to 120 km/h, and the reference at each speed; by three measures from the same passes.</summary>
internal static class RuleMaps
{
    private const int Ratios = 60;
    private const int Speeds = 200;
    private const int Rounds = 3;

    public static int Run()
    {
        var model = RideModel.Of(Saloon.Of());
        var road = Road.From(new RoundTopHump { Height = new(0.075), Length = new(3.7) });
        double[] ratios = [.. Enumerable.Range(0, Ratios).Select(i => 0.8 + (0.6 * i / (Ratios - 1)))];
        double[] speeds = [.. Enumerable.Range(0, Speeds).Select(i => (20.0 + (100.0 * i / (Speeds - 1))) / 3.6)];
        // Compiles what the timed rounds run.
        Of(ratios[..8], speeds[..8]);
        Console.WriteLine("| map, points | threads | wall, s | processor, s | passes a second |");
        Console.WriteLine("|---|--:|--:|--:|--:|");
        for (var round = 0; round < Rounds; round++)
        {
            foreach (var threads in new[] { 1, Environment.ProcessorCount }.Distinct())
            {
                using var process = Process.GetCurrentProcess();
                var (cpu, start) = (process.TotalProcessorTime, Stopwatch.GetTimestamp());
                Of(ratios, speeds, threads);
                var wall = Stopwatch.GetElapsedTime(start).TotalSeconds;
                process.Refresh();
                var used = (process.TotalProcessorTime - cpu).TotalSeconds;
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {Ratios} × {Speeds} | {threads} | {wall:F2} | {used:F2} | {(Ratios + 1) * Speeds / wall:F0} |"));
            }
        }

        return 0;

        IReadOnlyList<RuleMap> Of(double[] values, double[] at, int threads = 1) =>
            RuleMap.Of(model, road, RuleAxis.FrequencyRatio(values), at, [PassMeasure.SettlingAngle, PassMeasure.LateAngle, PassMeasure.HitAcceleration], degree: threads);
    }
}
