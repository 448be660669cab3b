using System.Diagnostics;
using System.Globalization;
using Heaveline.Cars;
using Heaveline.Doubts;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;
using Heaveline.Rules;

namespace Heaveline.Bench;

/// <summary>
/// Whole maps of a rule: 60 frequency ratios by 200 speeds, 20 to 120 km/h, and the reference at each speed, by hit and settling
/// from the same passes; the same with late pitch, which asks for the whole record; a study of 2000 doubtful cars over the same
/// hump; and single passes, as a page asks for them.
/// </summary>
internal static class RuleMaps
{
    private const int Ratios = 60;
    private const int Speeds = 200;
    private const int Draws = 2000;
    private const int Passes = 1000;
    private const int Rounds = 7;

    public static int Run()
    {
        var car = Saloon.Of();
        var model = RideModel.Of(car);
        var road = Road.From(new RoundTopHump { Height = new(0.075), Length = new(3.7) });
        double[] ratios = [.. Enumerable.Range(0, Ratios).Select(i => 0.8 + (0.6 * i / (Ratios - 1)))];
        double[] speeds = [.. Enumerable.Range(0, Speeds).Select(i => (20.0 + (100.0 * i / (Speeds - 1))) / 3.6)];
        Measure<Pass>[] both = [SettlingCatalogue.RmsPitch, HitCatalogue.PeakPitchAcceleration];
        Measure<Pass>[] late = [.. both, SettlingCatalogue.LatePitch];
        var doubtful = car with
        {
            Front = car.Front with
            {
                UnsprungMass = Doubtful(car.Front.UnsprungMass, 0.04),
                Spring = car.Front.Spring with { Law = new LinearSpring { Rate = Doubtful(new Amount<Stiffness>(24000.0), 0.05) } },
            },
            Rear = car.Rear with
            {
                UnsprungMass = Doubtful(car.Rear.UnsprungMass, 0.04),
                Spring = car.Rear.Spring with { Law = new LinearSpring { Rate = Doubtful(new Amount<Stiffness>(26000.0), 0.05) } },
            },
            Wheelbase = Doubtful(car.Wheelbase, 0.004),
        };
        var four = new PassOptions { Method = FixedStep.Once, Record = new() { Duration = 4.0 } };
        // Compiles what the timed rounds run.
        for (var i = 0; i < 3; i++)
        {
            Map(ratios, speeds[..40], late, 2);
            Study(2);
            _ = Pass.Of(model, road, Saloon.Speed, four);
        }

        Console.WriteLine("| what | threads | wall, s | processor, s | passes a second |");
        Console.WriteLine("|---|--:|--:|--:|--:|");
        Time($"{Passes} single passes of 4 s with all traces, one after the other", 1, Passes, () =>
        {
            for (var i = 0; i < Passes; i++)
            {
                _ = Pass.Of(model, road, Saloon.Speed, four);
            }
        });
        foreach (var threads in new[] { 1, Environment.ProcessorCount }.Distinct())
        {
            Time($"map {Ratios} × {Speeds}, hit and settling", threads, (Ratios + 1) * Speeds, () => Map(ratios, speeds, both, threads));
            Time($"map {Ratios} × {Speeds}, hit, settling and late", threads, (Ratios + 1) * Speeds, () => Map(ratios, speeds, late, threads));
            Time($"doubt, {Draws} draws, settling and hit", threads, Draws, () => Study(threads));
        }

        return 0;

        static Amount<TDimension> Doubtful<TDimension>(Amount<TDimension> amount, double share)
            where TDimension : struct, IDimension => amount.WithDoubt(share * amount.Si);

        void Map(double[] values, double[] at, Measure<Pass>[] measures, int threads) =>
            RuleMap.Of(model, road, RuleAxis.FrequencyRatio(values), at, measures, degree: threads);

        void Study(int threads) => JointStudy.OfPasses([CarDoubts.Of(doubtful)], road, 50.0 / 3.6, both, Draws, 1, degree: threads);
    }

    private static void Time(string what, int threads, int passes, Action work)
    {
        var (walls, used) = (new List<double>(), new List<double>());
        for (var round = 0; round < Rounds; round++)
        {
            using var process = Process.GetCurrentProcess();
            var (cpu, start) = (process.TotalProcessorTime, Stopwatch.GetTimestamp());
            work();
            walls.Add(Stopwatch.GetElapsedTime(start).TotalSeconds);
            process.Refresh();
            used.Add((process.TotalProcessorTime - cpu).TotalSeconds);
        }

        var (wall, cpuMedian) = (walls.Order().ElementAt(Rounds / 2), used.Order().ElementAt(Rounds / 2));
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"| {what} | {threads} | {wall:F2} ({walls.Min():F2} to {walls.Max():F2}) | {cpuMedian:F2} ({used.Min():F2} to "
            + $"{used.Max():F2}) | {passes / wall:F0} |"));
    }
}
