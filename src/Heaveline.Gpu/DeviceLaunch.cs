using Heaveline.Gpu.Kernels;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes.Steps;
using ILGPU;
using ILGPU.Runtime;

namespace Heaveline.Gpu;

/// <summary>Runs that one launch computes: of one layout and one step, their roads by table.</summary>
internal sealed class DeviceLaunch<T> : IDisposable
    where T : unmanaged, ILane<T>
{
    private readonly DeviceProgram program;
    private readonly DeviceForm form;
    private readonly Type asked;
    private readonly int perSample;
    private readonly List<IDisposable> held = [];
    private readonly MemoryBuffer1D<T, Stride1D.Dense> answers;
    private readonly MemoryBuffer1D<T, Stride1D.Dense> numbers;
    private readonly KernelConfig config;
    private DeviceArguments<T> arguments;
    private DeviceProgram.Kernel<DeviceArguments<T>>? kernel;

    /// <param name="program">The device with its kernels.</param>
    /// <param name="plan">Has room for all cars.</param>
    /// <param name="roads">The roads.</param>
    /// <param name="tableOf">Which of them each run meets, in order.</param>
    /// <param name="questions">What is asked.</param>
    /// <param name="asked">Each road's own places.</param>
    /// <param name="shares">The runs' own shares.</param>
    /// <param name="bases">What the runs' signals count from.</param>
    /// <param name="form">How its kernel is compiled; as is fastest where nothing is said.</param>
    public DeviceLaunch(
        DeviceProgram program,
        BlockPlan plan,
        IReadOnlyList<DeviceRoad> roads,
        int[] tableOf,
        DeviceQuestions questions,
        IReadOnlyList<CurveQuestion[]> asked,
        T[] shares,
        T[] bases,
        DeviceForm? form = null)
    {
        this.form = form ??= DeviceForm.Of<T>();
        this.program = program;
        Runs = tableOf.Length;
        Plan = plan;
        var clock = roads[0].Clock;
        var count = questions.Questions.Length;
        var tables = new int[3 * roads.Count];
        var turns = new List<int>();
        var places = new int[2 * count * roads.Count];
        var past = new T[places.Length];
        var steps = 0;
        for (var t = 0; t < roads.Count; t++)
        {
            (tables[3 * t], tables[(3 * t) + 1], tables[(3 * t) + 2]) = (steps, roads[t].Clock.Samples, turns.Count / 2);
            steps += roads[t].Steps;
            var own = places.AsSpan(2 * count * t, 2 * count);
            DeviceQuestions.Write(asked[t], own, past.AsSpan(2 * count * t, 2 * count));
            turns.AddRange(DeviceTurns.Of(own.ToArray(), roads[t].Clock.Samples));
        }

        var signals = DeviceSignals<T>.Of(questions, shares, bases, Runs);
        var road = new RoadStep<T>[steps];
        ParallelLoop.Each(roads.Count, t => roads[t].Write(road.AsSpan(tables[3 * t], roads[t].Steps)));
        numbers = Hold(program.Accelerator.Allocate1D<T>((long)CarNumbers<T>.CountOf(plan) * Runs));
        answers = Hold(program.Accelerator.Allocate1D<T>(((2L * count) + 2L) * Runs));
        arguments = new DeviceArguments<T>
        {
            Runs = Runs,
            PerSample = clock.StepsPerSample,
            Needs = (int)plan.Needs,
            Rule = AdamsRule<T>.Of(T.Of(clock.Step)),
            Numbers = numbers.View,
            TableOf = Up(tableOf),
            Tables = Up(tables),
            Road = Up(road),
            Turns = Up(turns.ToArray()),
            Shares = Up(signals.Shares),
            Bases = Up(bases),
            Asked = Up(questions.Asked()),
            Places = Up(places),
            Past = Up(past),
            Answers = answers.View,
        };
        var group = program.GroupOf<T>(signals.Room, form);
        (this.asked, perSample) = (signals.Asked, clock.StepsPerSample);
        config = new((Runs + group - 1) / group, group, SharedMemoryConfig.RequestDynamic<T>(signals.Room * group));
    }

    /// <summary>Number of runs.</summary>
    public int Runs { get; }

    /// <summary>The layout of their numbers.</summary>
    public BlockPlan Plan { get; }

    /// <summary>What the device's compiler says of the kernel, empty where it says nothing.</summary>
    public string About => $"groups of {config.GroupDim.X}{kernel?.About}";

    /// <summary>The cars' numbers as the device reads them.</summary>
    public T[] Pack(Func<int, RideNumbers> car)
    {
        var packed = new T[CarNumbers<T>.CountOf(Plan) * Runs];
        const int some = 512;
        ParallelLoop.Each((Runs + some - 1) / some, part =>
        {
            var first = part * some;
            var cars = new RideNumbers[Math.Min(some, Runs - first)];
            for (var i = 0; i < cars.Length; i++)
            {
                cars[i] = car(first + i);
            }

            CarNumbers<T>.Write(Plan, cars, first, packed, Runs);
        });
        return packed;
    }

    /// <summary>Has the kernel compiled for cars with such numbers, once for all launches like this one.</summary>
    public void Compile(T[] packed)
    {
        var (front, rear) = (CarNumbers<T>.Places(Plan, true, packed, Runs), CarNumbers<T>.Places(Plan, false, packed, Runs));
        var shared = form.Shares && front.Length > 0 && rear.Length > 0;
        arguments.FrontPlaces = DevicePlaces<T>.Of(shared ? front : []);
        arguments.RearPlaces = DevicePlaces<T>.Of(shared ? rear : []);
        kernel = program.Of<T>(Plan, perSample, config.GroupDim.X, asked, form, shared);
    }

    /// <summary>Takes the cars' numbers to the device.</summary>
    public void Take(T[] packed)
    {
        if (kernel is null)
        {
            Compile(packed);
        }

        numbers.View.CopyFromCPU(program.Accelerator.DefaultStream, packed);
        program.Accelerator.Synchronize();
    }

    /// <summary>Runs all whose numbers were taken there.</summary>
    public void Run()
    {
        kernel!.Launch(program.Accelerator.DefaultStream, config, arguments);
        program.Accelerator.Synchronize();
    }

    /// <summary>Two numbers a question, then the largest angle and 0 where all stayed finite, number j of run i at j·runs + i.</summary>
    public T[] Answers()
    {
        var result = new T[answers.Length];
        answers.View.CopyToCPU(program.Accelerator.DefaultStream, result);
        program.Accelerator.Synchronize();
        return result;
    }

    public void Dispose() => held.ForEach(buffer => buffer.Dispose());

    // No buffer is empty: a view of nothing has no address.
    private ArrayView<TNumber> Up<TNumber>(TNumber[] values)
        where TNumber : unmanaged =>
        Hold(program.Accelerator.Allocate1D(values.Length > 0 ? values : new TNumber[1])).View;

    private TBuffer Hold<TBuffer>(TBuffer buffer)
        where TBuffer : IDisposable
    {
        held.Add(buffer);
        return buffer;
    }
}
