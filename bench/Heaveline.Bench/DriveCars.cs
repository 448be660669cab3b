using System.Diagnostics;
using System.Globalization;
using Heaveline.Drives.Identification;
using Heaveline.Numerics;
using Heaveline.Tests.Drives;

namespace Heaveline.Bench;

/// <summary>
/// Planted cars identified from passes over one hump: errors, coverage of the 90 % intervals, refusals, time. "Bound" is the median error of an
/// unbiased estimate with normal errors as small as the information allows [Cramér, Mathematical Methods of Statistics, 1946, §32.3]: 0.6745 of it.
/// <c>drive-cars [cars [first seed [passes at each of three speeds]]]</c>.
/// </summary>
internal static class DriveCars
{
    private static readonly CarNumber[] Shown =
    [
        CarNumber.FrontFrequency, CarNumber.RearFrequency, CarNumber.FrequencyRatio, CarNumber.FrontDamping, CarNumber.RearDamping,
        CarNumber.PitchIndex,
    ];

    public static int Run(string[] args)
    {
        long Asked(int at, long otherwise) => PlantedRuns.Argument(args, at, otherwise);
        var (count, seed, each) = ((int)Asked(0, 200), (ulong)Asked(1, 20_000), (int)Asked(2, 4));
        double[][] errors = [.. Shown.Select(_ => new double[count])], halves = [.. Shown.Select(_ => new double[count])];
        double[][] bounds = [.. Shown.Select(_ => new double[count])];
        var (times, refused, believed) = (new double[count], new SortedDictionary<RefusalKind, int>(), 0);
        for (var k = 0; k < count; k++)
        {
            var (car, known, windows) = new PlantedCrossings { Seed = seed + (ulong)k, Each = each }.Drawn();
            var start = Stopwatch.GetTimestamp();
            var found = CarIdentification.Of(windows, known);
            times[k] = Stopwatch.GetElapsedTime(start).TotalSeconds;
            believed += found.IsBelieved ? 1 : 0;
            foreach (var kind in found.Refusals.Select(r => r.Kind).Distinct())
            {
                refused[kind] = refused.GetValueOrDefault(kind) + 1;
            }

            double[] truth =
            [
                car.FrontFrequency, car.RearFrequency, car.RearFrequency / car.FrontFrequency, car.FrontDamping, car.RearDamping, car.PitchIndex,
            ];
            for (var i = 0; i < Shown.Length; i++)
            {
                var estimate = found.Of(Shown[i])!;
                errors[i][k] = Math.Log(estimate.Value / truth[i]);
                halves[i][k] = 0.5 * Math.Log(estimate.High / estimate.Low);
                // What was known, less what the drive told, is the deviation by information alone; half of a normal lies within 0.6745 of it.
                var before = Math.Log(estimate.KnownHigh / estimate.KnownLow) / (2.0 * Gaussian.Ninety);
                bounds[i][k] = 0.6745 * (1.0 - estimate.Learned) * before;
            }
        }

        Array.Sort(times);
        Console.WriteLine(FormattableString.Invariant(
            $"{count} cars from seed {seed}, {3 * each} passes each; s a car: median {times[count / 2]:F2}, most {times[^1]:F2}"));
        Console.WriteLine("| number | median error, % | mean, % | largest, % | bound, % | half-width, median, % | covered, % |");
        Console.WriteLine("|---|---|---|---|---|---|---|");
        for (var i = 0; i < Shown.Length; i++)
        {
            var (sizes, wide) = (errors[i].Select(Math.Abs).Order().ToArray(), halves[i].Order().ToArray());
            var covered = 100.0 * errors[i].Zip(halves[i]).Count(p => Math.Abs(p.First) <= p.Second) / count;
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"| {Shown[i]} | {100 * sizes[count / 2]:F2} | {100 * errors[i].Average():+0.00;-0.00} | {100 * sizes[^1]:F1} | "
                + $"{100 * bounds[i].Order().ElementAt(count / 2):F2} | {100 * wide[count / 2]:F2} | {covered:F1} |"));
        }

        Console.WriteLine(
            FormattableString.Invariant($"believed {believed}; refused by ") + string.Join(", ", refused.Select(r => $"{r.Key} {r.Value}")));
        return 0;
    }
}
