using System.Diagnostics;
using System.Globalization;
using Heaveline.Cars;
using Heaveline.Files.Cars;
using Heaveline.Files.Roads;
using Heaveline.Parts;
using Heaveline.Quantities;
using Heaveline.Studies;

namespace Heaveline.Bench;

/// <summary>
/// A choice among 1 152 000 setups: 40 springs, 12 clicks of a damper at each end, 5 front bars, under two loads over two obstacles at three speeds
/// each; to the front, to the audited front, to the shortlist with its drawn cars. By the clock and by the processor, with the load of the machine.
/// </summary>
internal static class PartChoices
{
    private const int Springs = 40;
    private const int Clicks = 12;
    private const int Bars = 5;

    /// <summary>Runs it.</summary>
    /// <param name="path">The car.</param>
    /// <param name="args">How many cars are drawn.</param>
    public static int Run(string path, string[] args)
    {
        CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
        var draws = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 200;
        var car = CarFile.Load(path).Value!;
        var asked = new ChooseAsked
        {
            Car = car,
            Lists = [List(car)],
            Open = [PartPlace.FrontSpring, PartPlace.RearSpring, PartPlace.FrontDamper, PartPlace.RearDamper, PartPlace.FrontBar],
            Roads = [Road("village-hump", 25.0, 40.0, 60.0), Road("short-bump", 50.0, 80.0, 110.0)],
            IsUsualUse = true,
            RideSpeeds = [60.0 / 3.6, 100.0 / 3.6],
            Loads = [.. car.LoadStates],
            Draws = draws,
        };
        Console.WriteLine($"load of the machine before: {Load()}");
        _ = ChooseStudy.Run(asked with { Lists = [Small(asked.Lists[0])], Draws = 10 }, new StudyRun { Degree = Environment.ProcessorCount });
        var (clock, processor, at) = (Stopwatch.StartNew(), Time(), 0.0);
        var told = new Told(share =>
        {
            if (share >= at)
            {
                Console.WriteLine($"  {share,4:P0} {clock.Elapsed.TotalSeconds,6:F1} s by the clock, {Time() - processor,6:F1} s of processors");
                at += 0.05;
            }
        });
        var answer = ChooseStudy.Run(asked, new StudyRun { Degree = Environment.ProcessorCount, Progress = told });
        var found = answer.Findings.Found;
        Console.WriteLine($"{answer.Findings.Parts.Space.Count} setups, {found.Within} to drive, {found.Driven.Length} driven, front "
            + $"{found.Front.Length}");
        foreach (var round in found.Rounds)
        {
            Console.WriteLine($"  round: fitted to {round.Fitted}, margin {round.Margin:P2}, driven {round.Driven}, off by {round.Residual:P2}");
        }

        Console.WriteLine($"audit: {found.Audit}");
        Console.WriteLine($"shortlist of {answer.Findings.List.Length}, {draws} draws: {clock.Elapsed.TotalSeconds:F1} s by the clock, "
            + $"{Time() - processor:F1} s of processors, {Environment.ProcessorCount} processors, load after: {Load()}");
        Console.WriteLine(answer.Finding.Text);
        foreach (var line in answer.Lines)
        {
            Console.WriteLine("| " + line);
        }

        return 0;
    }

    private static ChooseRoad Road(string name, params double[] speeds) =>
        new(name, NamedRoads.Find(name).Value!, [.. speeds.Select(v => v / 3.6)]);

    private static PartsList List(Car car) => new()
    {
        Name = "long list",
        Currency = "EUR",
        Parts =
        [
            .. Each(AxleEnd.Front, 14_000.0, 32_000.0), .. Each(AxleEnd.Rear, 26_000.0, 62_000.0),
            Damper(car.Front, AxleEnd.Front), Damper(car.Rear, AxleEnd.Rear),
            .. Enumerable.Range(1, Bars - 1).Select(k => new BarPart
            {
                Name = $"bar {k}",
                Price = new Money(80m + (10m * k), "EUR"),
                Only = AxleEnd.Front,
                Holes = [new("only", new(9_000.0 + (1_500.0 * k)))],
            }),
        ],
    };

    // The same roads with few parts: what is compiled at first use is not counted.
    private static PartsList Small(PartsList list) => list with { Parts = [.. list.Parts.Where((_, k) => k % 13 == 0)] };

    private static IEnumerable<Part> Each(AxleEnd end, double from, double to) => Enumerable.Range(1, Springs - 1).Select(k => new CoilPart
    {
        Name = $"{end} spring {k:00}",
        Price = new Money(70m + k, "EUR"),
        Only = end,
        Law = new LinearSpring
        {
            Rate = from * Math.Pow(to / from, (k - 1) / (Springs - 2.0)) is var rate ? new Amount<Stiffness>(rate, new Doubt(0.03 * rate)) : default,
        },
    });

    private static DamperPart Damper(Axle axle, AxleEnd end)
    {
        var whole = (TableDamper)axle.Damper.Law;
        TableDamper Times(double factor) => new(
            new ForceTable([.. whole.Bump.At], [.. whole.Bump.Force.Select(f => factor * f)]),
            new ForceTable([.. whole.Rebound.At], [.. whole.Rebound.Force.Select(f => factor * f)]));
        return new DamperPart
        {
            Name = $"{end} damper",
            Price = new Money(150m, "EUR"),
            Only = end,
            Clicks = [new(1, Times(0.6)), new(Clicks - 1, Times(1.8))],
            GasForce = axle.Damper.GasForce,
        };
    }

    private static double Time() => Process.GetCurrentProcess().TotalProcessorTime.TotalSeconds;

    private static string Load() => OperatingSystem.IsLinux() ? File.ReadAllText("/proc/loadavg").Trim() : "not known";

    private sealed class Told(Action<double> tell) : IProgress<double>
    {
        private readonly Lock only = new();

        public void Report(double value)
        {
            lock (only)
            {
                tell(value);
            }
        }
    }
}
