using System.Diagnostics;
using System.Globalization;
using Heaveline.Bench;
using Heaveline.Gpu;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Passes.Steps;

namespace Heaveline.GpuBench;

/// <summary>Runs a second of one device, in parts: set-up, numbers up, kernel, answers down.</summary>
internal static class Race
{
    private const int Rounds = 5;

    // So many different cars; further runs repeat them, since what a number is does not matter to the time.
    private const int Designs = 20_000;

    private static RideNumbers[]? designs;

    /// <summary>Prints one line.</summary>
    /// <param name="program">The device.</param>
    /// <param name="what">Its precision.</param>
    /// <param name="runs">How many runs, a tenth at each speed.</param>
    /// <param name="samplesPerSecond">Samples a second.</param>
    /// <param name="step">Longest step, s.</param>
    /// <param name="measures">What is asked.</param>
    /// <param name="peak">Measured peak of the device, operations a second.</param>
    /// <param name="form">How the kernel is compiled; as it is by itself where nothing is said.</param>
    public static void Run<T>(
        DeviceProgram program, string what, int runs, double samplesPerSecond, double step, Measure<Pass>[] measures, double peak,
        DeviceForm? form = null)
        where T : unmanaged, ILane<T>
    {
        var models = designs ??= Models();
        var each = Math.Max(1, runs / Job.Speeds);
        runs = each * Job.Speeds;
        var usual = RideModel.Of(Saloon.Of());
        var options = Job.Options(samplesPerSecond, step);
        var group = PassGroup.Whole(
            [.. Enumerable.Range(0, Job.Speeds).Select(t => new PassRequest(usual, Job.Road, Job.Speed(t)))], options);
        var roads = Enumerable.Range(0, Job.Speeds).Select(t => new DeviceRoad(group.Requests[t], group.Clocks[t], group.Roads[t])).ToArray();
        var asked = roads.Select(road => Asked(road, measures)).ToArray();
        var questions = DeviceQuestions.Of(asked[0], out var why) ?? throw new InvalidOperationException(why);
        var tableOf = new int[runs];
        var (shares, bases) = (new T[questions.Parts * runs], new T[questions.Signals * runs]);
        Parallel.For(0, runs, i =>
        {
            tableOf[i] = i / each;
            questions.Write<T>(asked[tableOf[i]], i, runs, shares, bases);
        });

        RideNumbers Car(int i) => models[i % Designs];
        var plan = BlockPlan.Of([.. Enumerable.Range(0, Math.Min(runs, Designs)).Select(Car)]);
        var (ready, launch) = Timed(() => new DeviceLaunch<T>(program, plan, roads, tableOf, questions, asked, shares, bases, form));
        using var held = launch;
        var (packing, packed) = Timed(() => launch.Pack(Car));
        var (compiling, _) = Timed(() => Done(() => launch.Compile(packed)));
        var (up, _) = Timed(() => Done(() => launch.Take(packed)));
        var (first, _) = Timed(() => Done(launch.Run));
        var kernel = Enumerable.Range(0, Rounds).Select(_ => Timed(() => Done(launch.Run)).Seconds).Order().ToArray();
        var (down, answers) = Timed(launch.Answers);
        var apart = Apart(answers, runs, each, group, questions, measures, options);
        var steps = roads.Sum(road => (double)road.Steps * each);
        var (median, operations) = (kernel[Rounds / 2], Operations(usual.Numbers));
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"| {what} | {runs} | {1e3 * roads[0].Clock.Step:F3} | {roads[0].Clock.Samples} | {asked[0].Length} | "
            + $"{1e3 * median:F1} ({1e3 * kernel[0]:F1}) | "
            + $"{runs / median / 1e6:F3} | {1e12 * median / steps:F2} | {operations * steps / median / 1e12:F1} = "
            + $"{(peak > 0.0 ? 100.0 * operations * steps / median / peak : 0.0):F0} % | {1e3 * first:F0} | {1e6 * packing / runs:F2} | "
            + $"{1e3 * up:F1} | {1e3 * down:F1} | {apart:E1} | {launch.About}; ready in {ready:F1} s, compiled in {compiling:F1} s |"));
    }

    public const string Head =
        "| precision | runs of 10 s | step, ms | samples | questions | kernel, ms, median (least) | million runs/s | ps a run and step | "
        + "TFLOP/s = share of peak | first launch, ms | packing, µs a run wall | up, ms | down, ms | apart | compiled |\n"
        + "|---|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|---|";

    /// <summary>What the compiler makes of the usual kernel: its text in the device's language.</summary>
    public static string Text<T>(Measure<Pass>[] measures)
        where T : unmanaged, ILane<T>
    {
        var model = RideModel.Of(Job.Car(0));
        var group = PassGroup.Whole([new(model, Job.Road, Job.Speed(0))], Job.Options(200.0, 0.625e-3));
        var asked = Asked(new(group.Requests[0], group.Clocks[0], group.Roads[0]), measures);
        var questions = DeviceQuestions.Of(asked, out var why) ?? throw new InvalidOperationException(why);
        var (shares, bases) = (new T[questions.Parts], new T[questions.Signals]);
        questions.Write<T>(asked, 0, 1, shares, bases);
        var signals = DeviceSignals<T>.Of(questions, shares, bases, 1);
        Console.WriteLine($"{asked.Length} questions, {questions.Signals} signals, {signals.Shares.Length} shares, {signals.Room} numbers shared");
        return DeviceText.Of<T>(BlockPlan.Of([model.Numbers]), group.Clocks[0].StepsPerSample, signals.Asked);
    }

    // Largest difference of a measure from that of the lanes, over it, for some of the runs.
    private static double Apart<T>(
        T[] answers, int runs, int each, PassGroup group, DeviceQuestions questions, Measure<Pass>[] measures, PassOptions options)
        where T : unmanaged, ILane<T>
    {
        var picked = Enumerable.Range(0, Job.Speeds).SelectMany(t => new[] { t * each, (t * each) + (each / 2), ((t + 1) * each) - 1 }).ToArray();
        var requests = picked.Select(i => new PassRequest(RideModel.Of(Job.Car(i % Designs)), Job.Road, Job.Speed(i / each))).ToArray();
        var lanes = BatchedMeasures.Of(requests, measures, options, Environment.ProcessorCount, CancellationToken.None);
        var largest = 0.0;
        Span<double> value = stackalloc double[1];
        for (var k = 0; k < picked.Length; k++)
        {
            var curves = new FlightCurves(requests[k], group.Clocks[picked[k] / each]);
            foreach (var measure in measures)
            {
                _ = measure.InFlight!(curves);
            }

            var own = new (double First, double Second)[curves.Questions.Count];
            for (var q = 0; q < own.Length; q++)
            {
                var further = questions.Further([.. curves.Questions], q);
                answers[picked[k] + (2L * q * runs)].To(value);
                own[q].First = value[0] + further;
                answers[picked[k] + (((2L * q) + 1L) * runs)].To(value);
                own[q].Second = value[0] + further;
            }

            curves.Answer(own);
            for (var m = 0; m < measures.Length; m++)
            {
                var (here, there) = (measures[m].InFlight!(curves), lanes[k][m]);
                var difference = here.Equals(there) ? 0.0 : Math.Abs(here - there) / Math.Abs(there);
                largest = double.IsNaN(difference) ? double.PositiveInfinity : Math.Max(largest, difference);
            }
        }

        return largest;
    }

    private static RideNumbers[] Models()
    {
        var all = new RideNumbers[Designs];
        var (time, _) = Timed(() => Parallel.For(0, Designs, i => all[i] = RideModel.Of(Job.Car(i)).Numbers));
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture, $"{Designs} models: {1e6 * time / Designs:F1} µs each, wall, {Environment.ProcessorCount} cores\n"));
        return all;
    }

    private static CurveQuestion[] Asked(DeviceRoad road, Measure<Pass>[] measures)
    {
        var curves = new FlightCurves(road.Request, road.Clock);
        foreach (var measure in measures)
        {
            _ = measure.InFlight!(curves);
        }

        return [.. curves.Questions];
    }

    // Counted, not estimated: what the step of the lanes does with its numbers.
    private static double Operations(RideNumbers car)
    {
        const int steps = 1000;
        using var stepper = Stepper.Of<CountedLane>([car], steps, 0.625e-3, Channel.Motion);
        var samples = new CountedLane[Channel.Motion];
        var road = new RoadSteps<CountedLane>(0, default, default);
        var before = CountedLane.Operations;
        stepper.Run(road, 1, samples);
        return (CountedLane.Operations - before) / (double)steps;
    }

    private static bool Done(Action work)
    {
        work();
        return true;
    }

    private static (double Seconds, TResult Result) Timed<TResult>(Func<TResult> work)
    {
        var start = Stopwatch.GetTimestamp();
        var result = work();
        return (Stopwatch.GetElapsedTime(start).TotalSeconds, result);
    }
}
