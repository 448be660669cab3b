using Heaveline.Gpu;
using Heaveline.Gpu.Lanes;
using Heaveline.Measures;
using Heaveline.Numerics;
using Heaveline.Passes;

namespace Heaveline.GpuBench;

/// <summary>A million runs by kernels that are compiled in several ways, each line one way.</summary>
internal static class Forms
{
    private const int Runs = 1_000_960;

    /// <summary>Prints all.</summary>
    public static void Run(DeviceProgram program)
    {
        Console.WriteLine(Race.Head);
        var (single, twice) = (program.Peak<DeviceSingle>(), program.Peak<DeviceDouble>());
        var usual = DeviceForm.Of<DeviceSingle>();
        foreach (var form in new[]
        {
            usual, usual with { Shares = false }, usual with { Threads = 0 }, usual with { Threads = 512 }, new(64, 384, true), new(64, 448, true),
            new(32, 448, true), usual with { InFours = false },
        })
        {
            Line<DeviceSingle>("float", 200.0, Job.Few, single, form);
        }

        foreach (var form in new DeviceForm[] { new(64, 384, true), new(64, 448, true), new(32, 448, true) })
        {
            Line<DeviceSingle>("float", 200.0, Job.Many, single, form);
        }

        Line<DeviceSingle>("float", 400.0, Job.Few, single, usual);
        foreach (var form in new DeviceForm[] { new(128, 0, true), new(128, 0, false), new(64, 320, false) })
        {
            Line<DeviceDouble>("double", 200.0, Job.Few, twice, form);
        }

        void Line<T>(string what, double samplesPerSecond, Measure<Pass>[] measures, double peak, DeviceForm form)
            where T : unmanaged, ILane<T>
        {
            var name = $"{what}, {form.Widest} × {form.Threads}{(form.InFours ? ", fours" : "")}{(form.Shares ? ", shared" : "")}";
            Race.Run<T>(program, name, Runs, samplesPerSecond, 0.625e-3, measures, peak, form);
        }
    }
}
