using System.Collections.Concurrent;
using System.Globalization;
using Heaveline.Gpu;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;

namespace Heaveline.GpuBench;

/// <summary>Every measure of some runs by a device beside that of the exact solver, and of the lanes of the processor.</summary>
internal static class Errors
{
    /// <summary>Prints one line a precision and step.</summary>
    public static void Run(MeasureDevices devices, int cars)
    {
        var requests = Enumerable.Range(0, cars)
            .Select(i => new PassRequest(RideModel.Of(Job.Car(i)), Job.Road, Job.Speed(i % Job.Speeds))).ToArray();
        var exact = new double[cars][];
        var record = Job.Options(400.0, 0.625e-3).Record;
        Parallel.For(0, cars, i =>
        {
            var pass = Pass.Of(
                requests[i].Model, requests[i].Road, requests[i].Speed, new PassOptions { Method = new ExactPieces(), Record = record });
            exact[i] = [.. Job.Many.Select(m => m.Of(pass))];
        });
        Console.WriteLine($"Largest (median) difference of a measure from the exact solver's, over it; {cars} runs");
        Console.WriteLine("| by | step, ms | pitch | accelerations | tyre loads | travel left, mm |");
        Console.WriteLine("|---|--:|--:|--:|--:|--:|");
        foreach (var step in new[] { 0.625e-3, 1.25e-3 / 4.0 })
        {
            Print("device, float", step, OnDevice(Job.Options(400.0, step, inSingle: true)));
            Print("device, double", step, OnDevice(Job.Options(400.0, step)));
            Print("lanes, double", step, BatchedMeasures.Of(
                requests, Job.Many, Job.Options(400.0, step), Environment.ProcessorCount, CancellationToken.None));
        }

        double[][] OnDevice(PassOptions options)
        {
            var rows = new ConcurrentDictionary<int, double[]>();
            var (left, why) = devices.Of(
                PassGroup.Whole(requests, options), [.. Job.Many.Select(m => m.InFlight!)], (k, row) => rows[k] = row, CancellationToken.None);
            return left.Count == 0
                ? [.. Enumerable.Range(0, cars).Select(k => rows[k])]
                : throw new InvalidOperationException($"{left.Count} runs were left: {string.Join("; ", why)}");
        }

        void Print(string by, double step, double[][] rows)
        {
            string[] cells = [Cell(k => k.EndsWith("-pitch"), false), Cell(k => k.EndsWith("acceleration"), false),
                Cell(k => k.Contains("load"), false), Cell(k => k.EndsWith("margin"), true)];
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {by} | {1e3 * step:F4} | {string.Join(" | ", cells)} |"));

            string Cell(Predicate<string> of, bool absolute)
            {
                var all = new List<double>();
                for (var i = 0; i < rows.Length; i++)
                {
                    for (var j = 0; j < Job.Many.Length; j++)
                    {
                        if (of(Job.Many[j].Key))
                        {
                            all.Add(Math.Abs(rows[i][j] - exact[i][j]) / (absolute ? 1e-3 : Math.Max(Math.Abs(exact[i][j]), 1e-9)));
                        }
                    }
                }

                all.Sort();
                return string.Create(CultureInfo.InvariantCulture, $"{all[^1]:E1} ({all[all.Count / 2]:E1})");
            }
        }
    }
}
