using System.Diagnostics;
using System.Globalization;
using Heaveline.Drives.Identification;
using Heaveline.Tests.Drives;

namespace Heaveline.Bench;

/// <summary>Planted cars identified from twelve passes each: errors, coverage of the 90 % intervals, time.</summary>
internal static class DriveCars
{
    private static readonly CarNumber[] Shown =
    [
        CarNumber.FrontFrequency, CarNumber.RearFrequency, CarNumber.FrequencyRatio, CarNumber.FrontDamping, CarNumber.RearDamping,
        CarNumber.PitchIndex,
    ];

    public static int Run(string[] args)
    {
        var count = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 200;
        var seed = args.Length > 1 ? ulong.Parse(args[1], CultureInfo.InvariantCulture) : 1000UL;
        var (errors, halves, times) = (new double[Shown.Length][], new double[Shown.Length][], new double[count]);
        for (var i = 0; i < Shown.Length; i++)
        {
            (errors[i], halves[i]) = (new double[count], new double[count]);
        }

        var refused = new SortedDictionary<RefusalKind, int>();
        var believed = 0;
        for (var k = 0; k < count; k++)
        {
            var (car, known, windows) = new PlantedPasses { Seed = seed + (ulong)k }.Drawn();
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
            }
        }

        Array.Sort(times);
        Console.WriteLine(FormattableString.Invariant($"{count} cars from seed {seed}; s a car: median {times[count / 2]:F2}, most {times[^1]:F2}"));
        for (var i = 0; i < Shown.Length; i++)
        {
            var sizes = errors[i].Select(Math.Abs).Order().ToArray();
            var wide = halves[i].Order().ToArray();
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{Shown[i],-16} median error {100 * sizes[count / 2]:F2} %, bias {100 * errors[i].Average():+0.00;-0.00} %, "
                + $"most {100 * sizes[^1]:F1} %, half-width {100 * wide[count / 2]:F2} %, covered "
                + $"{100.0 * errors[i].Zip(halves[i]).Count(p => Math.Abs(p.First) <= p.Second) / count:F1} %"));
        }

        Console.WriteLine(FormattableString.Invariant($"believed {believed}; refused by ") + string.Join(", ", refused.Select(r => $"{r.Key} {r.Value}")));
        return 0;
    }
}
