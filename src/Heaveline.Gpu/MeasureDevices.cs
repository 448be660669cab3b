using Heaveline.Gpu.Lanes;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Passes.Steps;
using ILGPU;
using ILGPU.Runtime;
using ILGPU.Runtime.CPU;
using ILGPU.Runtime.Cuda;

namespace Heaveline.Gpu;

/// <summary>
/// Runs passes and gathers their measures on all graphics processors of this machine, an equal part each. What a device has no text for, it names
/// and leaves to the processor.
/// </summary>
internal sealed class MeasureDevices : IMeasureDevice, IDisposable
{
    // Most steps of all roads of a launch.
    private const long MostRoad = 1 << 24;

    // A run this near to an angle out of range is run again on the processor, which says how it left.
    private const double Near = 1e-3;

    private const int FewestOnRoad = 32;

    private const Needs Known = Needs.CurvedStop | Needs.Friction;

    private readonly Context context;
    private readonly DeviceProgram[] programs;

    private MeasureDevices(Context context, Accelerator[] accelerators)
    {
        this.context = context;
        programs = [.. accelerators.Select(accelerator => new DeviceProgram(accelerator))];
    }

    /// <summary>Fewest passes for which compiling for a device is worth while, some seconds: about so long two cores take for them.</summary>
    public const int Worth = 500_000;

    /// <summary>Fewest runs of one road and speed that are worth a table of their own.</summary>
    public int LeastOnRoad { get; init; } = FewestOnRoad;

    /// <summary>The devices by name.</summary>
    public string Name => string.Join(", ", programs.Select(program => program.Accelerator.Name));

    /// <summary>The devices.</summary>
    public IReadOnlyList<DeviceProgram> Programs => programs;

    /// <summary>The graphics processors of this machine; null, with the reason, where there is none.</summary>
    /// <param name="why">Why there is none.</param>
    /// <param name="leastOnRoad">See <see cref="LeastOnRoad"/>.</param>
    public static MeasureDevices? OfMachine(out string why, int leastOnRoad = FewestOnRoad)
    {
        Context? context = null;
        try
        {
            context = Made(builder => builder.Cuda());
            var devices = context.GetCudaDevices();
            if (devices.Count == 0)
            {
                context.Dispose();
                why = "no graphics processor that this program knows was found";
                return null;
            }

            why = "";
            var accelerators = new List<Accelerator>();
            foreach (var device in devices)
            {
                accelerators.Add(device.CreateAccelerator(context));
            }

            return new(context, [.. accelerators]) { LeastOnRoad = leastOnRoad };
        }
        catch (Exception e) when (e is CudaException or DllNotFoundException or NotSupportedException or InvalidOperationException)
        {
            context?.Dispose();
            why = $"the graphics processor cannot be used ({e.Message})";
            return null;
        }
    }

    /// <summary>The processor itself in the devices' place, so many of them: the same kernels, for tests.</summary>
    public static MeasureDevices OfProcessor(int count = 1)
    {
        var context = Made(builder => builder.CPU(CPUDevice.Default));
        return new(context, [.. Enumerable.Range(0, count).Select(_ => context.CreateCPUAccelerator(0))]) { LeastOnRoad = 1 };
    }

    /// <inheritdoc/>
    public (IReadOnlyList<int> Left, IReadOnlyList<string> Why) Of(
        PassGroup group, CurveNumber[] numbers, Action<int, double[]> give, CancellationToken cancellation)
    {
        var (left, why) = (new List<int>(), new HashSet<string>());
        var curves = new FlightCurves[group.Requests.Length];
        var asked = new CurveQuestion[curves.Length][];
        ParallelLoop.Each(curves.Length, k =>
        {
            curves[k] = new(group.Requests[k], group.Clocks[k]);
            foreach (var number in numbers)
            {
                _ = number(curves[k]);
            }

            asked[k] = [.. curves[k].Questions.Select(question => Whole(group, k, question)), .. Limits(group, k)];
        });
        var batches = new List<DeviceRuns>();
        for (var k = 0; k < curves.Length; k++)
        {
            if (Refused(group, k) is { } reason)
            {
                left.Add(k);
                why.Add(reason);
                continue;
            }

            var batch = batches.Find(b => b.Has(group, k, asked[k]));
            if (batch is null)
            {
                if (DeviceQuestions.Of(asked[k], out var cannot) is not { } questions)
                {
                    left.Add(k);
                    why.Add(cannot);
                    continue;
                }

                batches.Add(batch = new(group, k, questions));
            }

            batch.Add(k, asked[k]);
        }

        foreach (var batch in batches)
        {
            cancellation.ThrowIfCancellationRequested();
            var lonely = batch.TakeLonely(LeastOnRoad, MostRoad);
            if (lonely.Count > 0)
            {
                why.Add("too few of the runs share a road, a speed and a wheelbase");
            }

            left.AddRange(lonely);
            var parts = batch.Parts(programs.Length);
            ParallelLoop.Each(parts.Count, p =>
            {
                var again = group.InSingle
                    ? Run<DeviceSingle>(programs[p], group, batch, parts[p], asked, curves, numbers, give)
                    : Run<DeviceDouble>(programs[p], group, batch, parts[p], asked, curves, numbers, give);
                lock (left)
                {
                    left.AddRange(again);
                }
            });
        }

        left.Sort();
        return (left, [.. why]);
    }

    public void Dispose()
    {
        foreach (var program in programs)
        {
            program.Dispose();
        }

        context.Dispose();
    }

    /// <summary>How kernels are compiled.</summary>
    public static Context.Builder Settings(Context.Builder builder) =>
        builder.Math(MathMode.Default).Optimize(OptimizationLevel.O2).Inlining(InliningMode.Aggressive);

    private static Context Made(Action<Context.Builder> devices) => Context.Create(builder => devices(Settings(builder)));

    // What is counted is counted over the whole record.
    private static CurveQuestion Whole(PassGroup group, int k, CurveQuestion question) => question.Kind == CurveQuestionKind.Nothing
        ? question with { From = 0.0, To = group.Clocks[k].Samples - 1 }
        : question;

    // What a run is not to leave: asked of its travels as one more range, past which the processor runs it again.
    private static IEnumerable<CurveQuestion> Limits(PassGroup group, int k)
    {
        var model = group.Requests[k].Model;
        var elements = model.Numbers.Elements;
        for (var i = 0; i < 4; i++)
        {
            if (double.IsFinite(elements.BumpLimit[i]) || double.IsFinite(elements.ReboundLimit[i]))
            {
                yield return new(CurveQuestionKind.Range, new(PassRange.Travels(model)[i]), 0.0, group.Clocks[k].Samples - 1);
            }
        }
    }

    private static string? Refused(PassGroup group, int k)
    {
        var unknown = group.Requests[k].Model.Numbers.Slots.Needs & ~Known;
        if (unknown != 0)
        {
            var words = (List<string>)[];
            Add(Needs.SolidAxle, "solid axles");
            Add(Needs.VaryingRatio, "motion ratios that vary");
            Add(Needs.Gas, "gas springs");
            Add(Needs.ElasticLink, "interconnected springs");
            Add(Needs.FluidLink | Needs.FluidGas | Needs.ResistiveLine, "fluid lines");
            return $"cars with {string.Join(" and ", words)} run on the processor";

            void Add(Needs need, string word) => words.AddRange((unknown & need) != 0 ? [word] : []);
        }

        return group.Roads[k].HasJump ? "roads with a sharp step run on the processor" : null;
    }

    private static List<int> Run<T>(
        DeviceProgram program,
        PassGroup group,
        DeviceRuns batch,
        IReadOnlyList<(int Table, int Run)> part,
        CurveQuestion[][] asked,
        FlightCurves[] curves,
        CurveNumber[] numbers,
        Action<int, double[]> give)
        where T : unmanaged, ILane<T>
    {
        var cars = part.Select(p => group.Requests[p.Run].Model.Numbers).ToArray();
        var shares = new T[batch.Questions.Parts * cars.Length];
        var bases = new T[batch.Questions.Signals * cars.Length];
        ParallelLoop.Each(cars.Length, i => batch.Questions.Write<T>(asked[part[i].Run], i, cars.Length, shares, bases));
        T[] answers;
        // Pieces of a study come from several threads: a device takes one launch after another.
        lock (program.Turn)
        {
            using var launch = new DeviceLaunch<T>(
                program, BlockPlan.Of(cars), batch.Roads, [.. part.Select(p => p.Table)], batch.Questions, batch.Asked, shares, bases);
            launch.Take(launch.Pack(i => cars[i]));
            launch.Run();
            answers = launch.Answers();
        }

        var again = new List<int>();
        ParallelLoop.Each(cars.Length, i =>
        {
            var k = part[i].Run;
            var own = new (double First, double Second)[asked[k].Length];
            for (var q = 0; q < own.Length; q++)
            {
                var further = batch.Questions.Further(asked[k], q);
                own[q] = (Answer(2 * q, i) + further, Answer((2 * q) + 1, i) + further);
            }

            if (Answer((2 * own.Length) + 1, i) != 0.0 || !(Answer(2 * own.Length, i) < (1.0 - Near) * PassRange.LargestAngle)
                || IsPastLimit(group, k, own.AsSpan(curves[k].Questions.Count)))
            {
                lock (again)
                {
                    again.Add(k);
                }

                return;
            }

            curves[k].Answer(own[..curves[k].Questions.Count]);
            give(k, [.. numbers.Select(number => number(curves[k]))]);
        });
        return again;

        double Answer(int row, int i)
        {
            Span<double> value = stackalloc double[1];
            answers[i + ((long)row * cars.Length)].To(value);
            return value[0];
        }
    }

    private static bool IsPastLimit(PassGroup group, int k, ReadOnlySpan<(double Least, double Most)> travels)
    {
        var elements = group.Requests[k].Model.Numbers.Elements;
        var at = 0;
        for (var i = 0; i < 4; i++)
        {
            if (double.IsFinite(elements.BumpLimit[i]) || double.IsFinite(elements.ReboundLimit[i]))
            {
                var (least, most) = travels[at++];
                if (!(most < elements.BumpLimit[i] && least > elements.ReboundLimit[i]))
                {
                    return true;
                }
            }
        }

        return false;
    }
}
