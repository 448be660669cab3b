using System.Collections;
using System.Diagnostics;
using System.Globalization;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Roads;
using Heaveline.Rules;

namespace Heaveline.Bench;

/// <summary>
/// Batches of a hundred to a million runs over the bench's hump, 64 cars at each of ever more speeds, by hit and settling: time, what is allocated
/// and what is kept a run, and the most memory that the process has had. Requests are made as they are asked for: none is kept.
/// </summary>
internal static class Growth
{
    private const int Cars = 64;

    public static int Run(string[] args)
    {
        var most = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 1_000_000;
        var model = RideModel.Of(Saloon.Of());
        var axis = RuleAxis.FrequencyRatio([.. Enumerable.Range(0, Cars).Select(i => 0.8 + (0.6 * i / (Cars - 1)))]);
        RideModel[] models = [.. axis.Values.Select(value => axis.Change(model, value))];
        var road = Road.From(new RoundTopHump { Height = new(0.075), Length = new(3.7) });
        Measure<Pass>[] measures = [SettlingCatalogue.RmsPitch, HitCatalogue.PeakPitchAcceleration];
        // Compiles what the timed rounds run.
        _ = Work(5000, 2);
        Console.WriteLine("| runs | threads | wall, s | processor, s | µs processor a run | allocated a run, kB | kept a run, B | peak, MB |");
        Console.WriteLine("|--:|--:|--:|--:|--:|--:|--:|--:|");
        foreach (var threads in new[] { 1, 2 })
        {
            for (var runs = 100; runs <= most; runs *= 10)
            {
                Timed(runs, threads);
            }
        }

        return 0;

        void Timed(int runs, int threads)
        {
            using var process = Process.GetCurrentProcess();
            var before = GC.GetTotalMemory(forceFullCollection: true);
            var (allocated, cpu, start) = (GC.GetTotalAllocatedBytes(precise: true), process.TotalProcessorTime, Stopwatch.GetTimestamp());
            var kept = Work(runs, threads);
            var wall = Stopwatch.GetElapsedTime(start).TotalSeconds;
            process.Refresh();
            var used = (process.TotalProcessorTime - cpu).TotalSeconds;
            allocated = GC.GetTotalAllocatedBytes(precise: true) - allocated;
            var after = GC.GetTotalMemory(forceFullCollection: true) - before;
            GC.KeepAlive(kept);
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"| {runs} | {threads} | {wall:F2} | {used:F2} | {1e6 * used / runs:F1} | {allocated / 1e3 / runs:F1} | {(double)after / runs:F0} | "
                + $"{process.PeakWorkingSet64 / 1e6:F0} |"));
        }

        object Work(int runs, int threads)
        {
            var speeds = (runs + Cars - 1) / Cars;
            var requests = new Requests(
                runs, i => new PassRequest(models[i % Cars], road, (20.0 + (100.0 * (i / Cars) / Math.Max(1, speeds - 1))) / 3.6));
            return BatchedMeasures.WithOutcomes(requests, measures, null, threads, null, CancellationToken.None);
        }
    }

    private sealed class Requests(int count, Func<int, PassRequest> at) : IReadOnlyList<PassRequest>
    {
        public int Count => count;

        public PassRequest this[int index] => at(index);

        public IEnumerator<PassRequest> GetEnumerator() => Enumerable.Range(0, count).Select(at).GetEnumerator();

        IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
    }
}
