using System.Diagnostics;
using System.Globalization;
using Heaveline.Cars;
using Heaveline.Doubts;
using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Bench;

/// <summary>
/// The doubts of a measured car carried through a pass as the command does it: 2 000 drawn cars over a hump of 75
/// mm at 50 km/h; and the parts of that work.
/// </summary>
internal static class Doubts
{
    private const int Samples = 2000;
    private const int RideSamples = 200;
    private const int Rounds = 3;
    private const double Speed = 50.0 / 3.6;

    public static int Run(string[] args)
    {
        var seed = args.Length > 0 ? ulong.Parse(args[0], CultureInfo.InvariantCulture) : 1UL;
        var car = Measured(Saloon.Of());
        var doubts = CarDoubts.Of(car);
        var road = Road.From(new RoundTopHump { Height = new(0.075), Length = new(3.7) });
        Measure<Pass>[] measures = [SettlingCatalogue.RmsPitch, SettlingCatalogue.LatePitch, HitCatalogue.PeakPitchAcceleration];
        // Compiles what the timed rounds run.
        JointStudy.OfPasses([CarDoubts.Of(car)], road, Speed, measures, 200, seed, degree: 2);
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{Samples} draws, {doubts.Sources.Count} sources, seed {seed}, {Environment.ProcessorCount} processors, "
            + $"{PassBatch.Width} passes side by side."));
        Console.WriteLine("| work | threads | wall, s | processor, s |");
        Console.WriteLine("|---|--:|--:|--:|");
        for (var round = 0; round < Rounds; round++)
        {
            foreach (var threads in new[] { 1, 2 })
            {
                Timed("study of passes", threads, () => JointStudy.OfPasses(
                    [CarDoubts.Of(car)], road, Speed, measures, Samples, seed, degree: threads));
            }

            Timed("study of passes without measures", 1, () => JointStudy.OfPasses([CarDoubts.Of(car)], road, Speed, [], Samples, seed));
            Timed("study at rest", 1, () => JointStudy.Of([CarDoubts.Of(car)], RestCatalogue.For(MeasureUse.Doubt), Samples, seed));
            var sides = SideEffectCatalogue.Of(WheelPlace.Each(hasSides: true));
            Timed("side effects", 1, () => JointStudy.Of([doubts], sides, Samples, seed));
            Timed($"{RideSamples} random roads at one speed", 2, () => JointStudy.OfRides(
                [doubts], RoadSpectrum.Of(RoadClass.C), Speed, RideCatalogue.Of(car), RideSamples, seed, degree: 2));
            Timed("drawing alone", 1, () =>
            {
                for (var i = 0; i < Samples; i++)
                {
                    JointDraw.Of(JointDoubts.Of([doubts]), seed, i);
                }
            });
        }

        return 0;
    }

    private static void Timed(string what, int threads, Action work)
    {
        using var process = Process.GetCurrentProcess();
        var (cpu, start) = (process.TotalProcessorTime, Stopwatch.GetTimestamp());
        work();
        var wall = Stopwatch.GetElapsedTime(start).TotalSeconds;
        process.Refresh();
        var used = (process.TotalProcessorTime - cpu).TotalSeconds;
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {what} | {threads} | {wall:F2} | {used:F2} |"));
    }

    // The doubts of a garage: scales to 0.3 %, springs and dampers from a press and a rig, ratios by a rule.
    private static Car Measured(Car car)
    {
        Axle Of(Axle axle) => axle with
        {
            UnsprungMass = axle.UnsprungMass.WithDoubt(6.0),
            Spring = new Spring
            {
                Law = axle.Spring.Law is LinearSpring spring
                    ? spring with { Rate = spring.Rate.WithDoubt(0.04 * spring.Rate.Si, "spring press") }
                    : axle.Spring.Law,
                MotionRatio = new MotionRatio { AtReference = new Amount<Plain>(1.0).WithDoubt(0.02) },
            },
            Damper = axle.Damper with
            {
                Law = axle.Damper.Law is TableDamper table ? table.Under(new Amount<Plain>(1.0).WithDoubt(0.05)) : axle.Damper.Law,
            },
            BumpStop = axle.BumpStop! with
            {
                Clearance = axle.BumpStop.Clearance.WithDoubt(0.004),
                Table = axle.BumpStop.Table!.Under(new Amount<Plain>(1.0).WithDoubt(0.1)),
            },
            Tyre = axle.Tyre with { Rate = axle.Tyre.Rate.WithDoubt(0.08 * axle.Tyre.Rate.Si) },
        };

        return car with
        {
            Weighing = Weighing.PerAxle(new Amount<Mass>(834.0).WithDoubt(2.0), new Amount<Mass>(676.0).WithDoubt(2.0)),
            Body =
                car.Body with { CentreHeight = car.Body.CentreHeight.WithDoubt(0.03), PitchInertia = new Amount<Inertia>(2100.0).WithDoubt(170.0) },
            Front = Of(car.Front),
            Rear = Of(car.Rear),
        };
    }
}
