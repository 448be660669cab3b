using System.Globalization;
using Heaveline.Cars;
using Heaveline.Files.Cars;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Passes.Exact;
using Heaveline.Studies;

namespace Heaveline.Bench;

/// <summary>
/// How far passes in steps of several lengths are off, of the peak of pitch and of tyre load: cars with springs, tyres and masses varied, over the
/// bench's hump at several speeds and over the random road of a study. Against the exact solver where the car is straight between its kinks, else
/// against steps of 5 µs; whatever step the car itself would ask for.
/// </summary>
internal static class StepErrors
{
    private const int Fine = 1000;
    private static readonly int[] StepsPerSample = [48, 12, 10, 8, 6, 5, 4];

    public static int Run(string garage, string[] args)
    {
        var each = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 8;
        (string Name, Car Car)[] kinds =
        [
            ("bench saloon", Saloon.Of()),
            ("60 N of friction over 0.3 mm", Saloon.Rubbing(60.0)),
            ("150 N of friction over 0.3 mm", Saloon.Rubbing(150.0)),
            ("60 N of friction over 0.1 mm", Saloon.Rubbing(60.0, 1e-4)),
            ("150 N of friction over 0.05 mm", Saloon.Rubbing(150.0, 5e-5)),
            ("300 N of friction over 0.05 mm", Saloon.Rubbing(300.0, 5e-5)),
            .. new[] { "fern-saloon", "plover-motorcycle", "tarn-off-roader", "pebble-fluid-car" }
                .Select(name => (name, CarFile.Load($"{garage}/{name}.yaml").Value!)),
        ];
        Console.WriteLine("| car | road | own step, ms | step, ms | pitch: median | 90 % | most | tyre load: median | 90 % | most |");
        Console.WriteLine("|---|---|--:|--:|--:|--:|--:|--:|--:|--:|");
        foreach (var (name, car) in kinds)
        {
            var load = name.Contains('-', StringComparison.Ordinal) ? LoadedCar.UsualLoad(car) : null;
            RideModel[] models = [.. Enumerable.Range(0, each).Select(i => RideModel.Of(Reach.Varied(car, 0.9 + (0.2 * i / each)), load))];
            PassRequest[][] roads =
            [
                [.. models.Select((model, i) => new PassRequest(model, Saloon.Hump, (20.0 + (40.0 * i / each)) / 3.6))],
                [.. models.Select(model => new PassRequest(model, Reach.Road(), Saloon.Speed))],
            ];
            foreach (var (road, requests) in roads.Select((requests, k) => (k == 0 ? "hump" : "random", requests)))
            {
                Table(name, road, requests);
            }
        }

        return 0;
    }

    private static void Table(string name, string road, PassRequest[] requests)
    {
        var record = new PassRecord { Duration = road == "hump" ? 4.0 : 10.0, SamplesPerSecond = 200.0 };
        var own = StepChoice.Of(requests[0].Model, 0.625e-3).Step;
        var clock = PassTiming.Of(requests[0], record, FixedStep.Once);
        var isStraight = CurvedElements.Of(requests[0].Model.Numbers.Elements).Count == 0;
        var truths = requests.Select(request => isStraight
            ? ExactRun.Of(request.Model, request.Road, request.Speed, clock.Start, clock.SampleStep, clock.Samples).Samples
            : Stepped(request, Fine)).ToArray();
        foreach (var steps in StepsPerSample)
        {
            var errors = requests.Select((request, i) => Error(Stepped(request, steps), truths[i])).ToArray();
            var (pitch, tyre) = (Spread(errors.Select(e => e.Pitch)), Spread(errors.Select(e => e.Tyre)));
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture, $"| {name} | {road} | {1e3 * own:F3} | {5.0 / steps:F3} | {pitch} | {tyre} |"));
        }

        double[] Stepped(PassRequest request, int steps) => PassRun.Of(
            request.Model, RoadUnderWheels.Of(request.Model, request.Road), request.Speed, clock with { StepsPerSample = steps });
    }

    private static string Spread(IEnumerable<double> errors)
    {
        double[] sorted = [.. errors.Order()];
        return string.Create(
            CultureInfo.InvariantCulture, $"{sorted[sorted.Length / 2]:E1} | {sorted[sorted.Length * 9 / 10]:E1} | {sorted[^1]:E1}");
    }

    private static (double Pitch, double Tyre) Error(double[] run, double[] truth)
    {
        return (Of(Channel.Pitch, 1), Of(Channel.Tyre, 4));

        double Of(int channel, int count)
        {
            var (worst, peak) = (0.0, 0.0);
            for (var at = channel; at < run.Length; at += Channel.Count)
            {
                for (var i = at; i < at + count; i++)
                {
                    worst = Math.Max(worst, Math.Abs(run[i] - truth[i]));
                    peak = Math.Max(peak, Math.Abs(truth[i]));
                }
            }

            return worst / peak;
        }
    }
}
