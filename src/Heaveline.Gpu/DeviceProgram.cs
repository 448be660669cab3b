using Heaveline.Gpu.Kernels;
using System.Reflection;
using System.Runtime.InteropServices;
using Heaveline.Numerics;
using Heaveline.Passes.Steps;
using ILGPU;
using ILGPU.Backends;
using ILGPU.Backends.EntryPoints;
using ILGPU.Runtime;
using ILGPU.Runtime.Cuda;

namespace Heaveline.Gpu;

/// <summary>One device and the kernels compiled for it, each once.</summary>
/// <param name="accelerator">The device.</param>
internal sealed class DeviceProgram(Accelerator accelerator) : IDisposable
{
    // What a group may share on every device.
    private const int Shared = 48 * 1024;

    private readonly Dictionary<(Type Number, object Layout), object> kernels = [];

    /// <summary>The device.</summary>
    public Accelerator Accelerator { get; } = accelerator;

    /// <summary>Held by whoever launches.</summary>
    public Lock Turn { get; } = new();

    /// <summary>A compiled kernel.</summary>
    /// <param name="Launch">Launches it.</param>
    /// <param name="About">What its compiler says of it.</param>
    public sealed record Kernel<TArguments>(Action<AcceleratorStream, KernelConfig, TArguments> Launch, string About);

    private delegate void Launcher<TArguments>(AcceleratorStream stream, KernelConfig config, TArguments arguments)
        where TArguments : struct;

    private delegate void PeakLauncher<T>(AcceleratorStream stream, KernelConfig config, ArrayView<T> x, int count, int turns)
        where T : unmanaged, ILane<T>;

    /// <summary>Threads of a group whose threads need so much room each.</summary>
    public int GroupOf<T>(int room, DeviceForm form)
        where T : unmanaged
    {
        var group = Math.Min(form.Widest, Accelerator.MaxNumThreadsPerGroup);
        while (group > Accelerator.WarpSize && (long)group * room * Marshal.SizeOf<T>() > Math.Min(Shared, Accelerator.MaxSharedMemoryPerGroup))
        {
            group /= 2;
        }

        return group;
    }

    /// <summary>The kernel for a layout of numbers.</summary>
    /// <param name="plan">The layout.</param>
    /// <param name="perSample">Steps from one sample to the next.</param>
    /// <param name="group">Threads of a group.</param>
    /// <param name="asked">What is asked, an <see cref="IDeviceSignals{TSelf, T}"/>.</param>
    /// <param name="form">How it is compiled.</param>
    /// <param name="shared">Whether all cars have the same places of damper kinks.</param>
    public Kernel<DeviceArguments<T>> Of<T>(BlockPlan plan, int perSample, int group, Type asked, DeviceForm form, bool shared)
        where T : unmanaged, ILane<T>
    {
        var layout = (typeof(T), (plan.Kinks, plan.SidesAlike, plan.IsFurther, form.IsFour(perSample), group, asked, form.Threads, shared));
        lock (kernels)
        {
            if (!kernels.TryGetValue(layout, out var kernel))
            {
                var (loaded, about) = Load(MethodOf<T>(plan, perSample, asked, form, shared), group, form.Threads);
                var launch = loaded.CreateLauncherDelegate<Launcher<DeviceArguments<T>>>();
                kernels[layout] = kernel = new Kernel<DeviceArguments<T>>((stream, config, a) => launch(stream, config, a), about);
            }

            return (Kernel<DeviceArguments<T>>)kernel;
        }
    }

    /// <summary>The kernel's method for a layout of numbers.</summary>
    public static MethodInfo MethodOf<T>(BlockPlan plan, int perSample, Type asked, DeviceForm form, bool shared)
        where T : unmanaged, ILane<T>
    {
        var sides = (plan.SidesAlike ? typeof(Alike<>) : typeof(Apart<>)).MakeGenericType(typeof(T));
        return MethodOf(form.IsFour(perSample) ? nameof(DeviceKernel.Four) : nameof(DeviceKernel.One)).MakeGenericMethod(
            typeof(T),
            sides,
            Chain<T>(typeof(Alike<T>), plan.Kinks.Dampers, shared),
            Chain<T>(sides, plan.Kinks.Above, false),
            Chain<T>(sides, plan.Kinks.Below, false),
            plan.IsFurther ? typeof(StopsAndFriction<T>) : typeof(NothingFurther<T>),
            asked);
    }

    /// <summary>Most multiply-adds that the device does, 1/s times 2: measured, best of some.</summary>
    public double Peak<T>()
        where T : unmanaged, ILane<T>
    {
        const int group = 256;
        const int turns = 4000;
        const int perTurn = 16;
        const int times = 6;
        var threads = group * Math.Max(1, Accelerator.MaxNumThreads / group) * 4;
        using var x = Accelerator.Allocate1D(new T[2 * threads]);
        var (kernel, _) = Load(MethodOf(nameof(DeviceKernel.Peak)).MakeGenericMethod(typeof(T)), group, 0);
        var launch = kernel.CreateLauncherDelegate<PeakLauncher<T>>();
        var best = double.PositiveInfinity;
        for (var k = 0; k < times; k++)
        {
            var start = System.Diagnostics.Stopwatch.GetTimestamp();
            launch(Accelerator.DefaultStream, new KernelConfig(threads / group, group), x.View, threads, turns);
            Accelerator.Synchronize();
            best = Math.Min(best, System.Diagnostics.Stopwatch.GetElapsedTime(start).TotalSeconds);
        }

        return 2.0 * perTurn * turns * threads / best;
    }

    public void Dispose() => Accelerator.Dispose();

    private static MethodInfo MethodOf(string name) => typeof(DeviceKernel).GetMethod(name, BindingFlags.Static | BindingFlags.Public)
        ?? throw new MissingMethodException(nameof(DeviceKernel), name);

    private static Type Chain<T>(Type sides, int count, bool shared)
        where T : unmanaged, ILane<T>
    {
        var chain = typeof(NoKink<T>);
        for (var j = count - 1; j >= 0; j--)
        {
            chain = shared
                ? typeof(SharedKinkChain<,,,>).MakeGenericType(typeof(T), sides, DeviceSignals<T>.Fixed(j), chain)
                : typeof(KinkChain<,,>).MakeGenericType(typeof(T), sides, chain);
        }

        return chain;
    }

    private (ILGPU.Runtime.Kernel Kernel, string About) Load(MethodInfo method, int group, int threads)
    {
        var groups = threads / group;
        var compiled = Accelerator.GetBackend().Compile(
            EntryPointDescription.FromExplicitlyGroupedKernel(method),
            Accelerator is CudaAccelerator ? new KernelSpecialization(group, groups > 0 ? groups : null) : KernelSpecialization.Empty);
        var kernel = Accelerator.LoadKernel(compiled);
        if (kernel is CudaKernel cuda)
        {
            _ = FunctionAttribute(out var registers, 4, cuda.FunctionPtr);
            _ = FunctionAttribute(out var local, 3, cuda.FunctionPtr);
            return (kernel, $", {registers} registers, {local} B local");
        }

        return (kernel, "");
    }

    [DllImport("libcuda.so.1", EntryPoint = "cuFuncGetAttribute")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int FunctionAttribute(out int value, int attribute, IntPtr function);
}
