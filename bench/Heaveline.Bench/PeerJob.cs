using System.Runtime.InteropServices;
using Heaveline.Gpu;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Passes.Exact;
using Heaveline.Passes.Steps;
using Heaveline.Roads;

namespace Heaveline.Bench;

/// <summary>
/// The job that kernels and peers race at: saloons of springs a hundredth apart, ten seconds at 60 km/h over a road of class C in two tracks with a
/// hump in it, 16 000 steps of 0.625 ms, 200 samples a second; taken along are the peak of pitch and the mean squares of pitch and of the tyre loads.
/// </summary>
internal sealed class PeerJob
{
    private const int Samples = 2000;
    private const int Each = 8;
    private const double SampleStep = 5e-3;
    private const double HumpAt = 60.0;

    // The road begins under the front wheels half a contact length early.
    private const double Start = -0.1;
    private const int Chunk = 64;

    // Pitch and four changes of load.
    private const int Traced = 5;

    private readonly RideModel[] cars;
    private readonly Quad<ScalarLane>[] table;
    private readonly double[] exact = new double[Traced * Samples];

    /// <param name="cars">The cars side by side; the first is compared with the exact solver.</param>
    public PeerJob(RideModel[] cars)
    {
        this.cars = cars;
        var road = Road();
        table = RoadUnderWheels.Of(cars[0], road).Table(Saloon.Speed, Start, SampleStep / Each, Samples * Each);
        var samples = ExactRun.Of(cars[0], road, Saloon.Speed, Start, SampleStep, Samples).Samples;
        for (var k = 0; k < Samples; k++)
        {
            exact[Traced * k] = samples[(k * Channel.Count) + Channel.Pitch];
            samples.AsSpan((k * Channel.Count) + Channel.Tyre, Traced - 1).CopyTo(exact.AsSpan((Traced * k) + 1));
        }
    }

    /// <summary>Steps of a run.</summary>
    public static int Steps => Samples * Each;

    /// <summary>Writes it for a peer of another language: bench/peers/odeint_job.cpp says how.</summary>
    public void Write(string file)
    {
        RideNumbers[] numbers = [.. cars.Select(car => car.Numbers)];
        var plan = BlockPlan.Of(numbers);
        if (plan.IsFurther || !plan.SidesAlike)
        {
            throw new InvalidOperationException("The peer knows plain cars whose sides are alike.");
        }

        var count = CarNumbers<ScalarLane>.CountOf(plan);
        var packed = new ScalarLane[count * numbers.Length];
        CarNumbers<ScalarLane>.Write(plan, numbers, 0, packed, numbers.Length);
        using var to = File.Create(file);
        int[] head = [Steps, Samples, Each, plan.Kinks.Dampers, plan.Kinks.Above, plan.Kinks.Below, count, numbers.Length];
        to.Write(MemoryMarshal.AsBytes<int>(head));
        to.Write(MemoryMarshal.AsBytes<double>([SampleStep / Each]));
        to.Write(MemoryMarshal.AsBytes<ScalarLane>(packed));
        to.Write(MemoryMarshal.AsBytes<Quad<ScalarLane>>(table));
        to.Write(MemoryMarshal.AsBytes<double>(exact));
    }

    /// <summary>Operations of one step of one car: counted.</summary>
    public double Operations()
    {
        using var stepper = Stepper.Of<CountedLane>([cars[0].Numbers], Each, SampleStep / Each, Channel.Motion);
        var samples = new CountedLane[Channel.Motion * Chunk];
        var before = CountedLane.Operations;
        stepper.Run(new(0, default, default), Chunk, samples);
        return (CountedLane.Operations - before) / (double)(Chunk * Each);
    }

    /// <summary>A run of as many cars as a lane holds, by the kernel in blocks.</summary>
    public Entrant Blocks<T>(string name)
        where T : unmanaged, ILane<T>
    {
        return Blocks<T>(name, [.. cars.Take(T.Count).Select(car => car.Numbers)], true);
    }

    /// <summary>Another car, with itself side by side; not compared.</summary>
    public Entrant Other<T>(string name, RideModel car)
        where T : unmanaged, ILane<T> => Blocks<T>(name, [.. Enumerable.Repeat(car.Numbers, T.Count)], false);

    private Entrant Blocks<T>(string name, RideNumbers[] numbers, bool compared)
        where T : unmanaged, ILane<T>
    {
        double[] road = [.. table.SelectMany(q => Enumerable.Range(0, 4).Select(i => q.At(i).Value))];
        var samples = new T[Chunk * Channel.TyreLoads];
        var fold = new PeerFold<T>();
        Run(null);
        return new(name, T.Count, () => ProcessorTime.Of(() => Run(null)), compared ? Error : () => (double.NaN, double.NaN));

        void Run(Action<int, T[]>? each)
        {
            using var stepper = Stepper.Of<T>(numbers, Each, SampleStep / Each, Channel.TyreLoads);
            var steps = new RoadSteps<T>(0, default, default) { Shared = road };
            for (var k = 0; k < Samples; k += Chunk)
            {
                var here = Math.Min(Chunk, Samples - k);
                stepper.Run(steps, here, samples);
                fold.Take(samples.AsSpan(0, here * Channel.TyreLoads), Channel.TyreLoads);
                each?.Invoke(k, samples);
            }
        }

        (double, double) Error()
        {
            var error = new PeerError(exact, Traced);
            Run((k, chunk) => error.Meet(k, Math.Min(Chunk, Samples - k), chunk, Channel.TyreLoads));
            return error.OfPeaks;
        }
    }

    private static Road Road()
    {
        var (left, right) = new RandomRoad
        {
            Spectrum = RoadSpectrum.Of(RoadClass.C), Track = new(1.5), Length = new(200.0), LeadIn = new(5.0), Seed = 7,
        }.Draw();
        double[] distances = [.. Enumerable.Range(0, 4000).Select(i => 0.05 * i)];
        return Heaveline.Roads.Road.FromMeasured(
            "class C with a hump", distances, [.. distances.Select(x => At(left, x))], [.. distances.Select(x => At(right, x))]);

        static double At(Profile profile, double x) => profile.Height(x) + Saloon.Hump.Left.Height(x - HumpAt);
    }

    /// <summary>Who races.</summary>
    /// <param name="Name">Its name.</param>
    /// <param name="Cars">How many cars stand side by side.</param>
    /// <param name="Milliseconds">Runs it and says how long that took, processor time of the thread.</param>
    /// <param name="Error">Of pitch and loads over their peaks.</param>
    public sealed record Entrant(string Name, int Cars, Func<double> Milliseconds, Func<(double Pitch, double Load)> Error);
}
