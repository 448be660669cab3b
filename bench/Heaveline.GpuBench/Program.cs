using Heaveline.Gpu.Lanes;
using System.Diagnostics;
using System.Globalization;
using Heaveline.Gpu;
using Heaveline.GpuBench;

// heaveline-gpu-bench            all of it, on the first graphics processor of this machine: about four minutes
// heaveline-gpu-bench small      the same with few runs, on the processor in a device's place
// heaveline-gpu-bench forms      a million runs by kernels compiled in several ways: about a minute
// heaveline-gpu-bench text       the compiled text of the usual kernel, single and double precision
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
if (args is ["text"])
{
    File.WriteAllText("single.ptx", Race.Text<DeviceSingle>(Job.Few));
    File.WriteAllText("single-many.ptx", Race.Text<DeviceSingle>(Job.Many));
    File.WriteAllText("double.ptx", Race.Text<DeviceDouble>(Job.Few));
    return 0;
}

var clock = Stopwatch.StartNew();
var small = args is ["small"];
using var devices = small
    ? MeasureDevices.OfProcessor()
    : MeasureDevices.OfMachine(out var why, leastOnRoad: 1) ?? throw new InvalidOperationException(why);
var first = devices.Programs[0];
Console.WriteLine(
    $".NET {Environment.Version}, {Environment.ProcessorCount} cores; {devices.Name}; {first.Accelerator.NumMultiprocessors} multiprocessors");
if (args is ["forms"])
{
    Forms.Run(first);
    return 0;
}

var (single, twice) = small ? (0.0, 0.0) : (first.Peak<DeviceSingle>(), first.Peak<DeviceDouble>());
Console.WriteLine($"multiply-add peak, measured: {single / 1e12:F1} TFLOP/s float, {twice / 1e12:F1} double\n");
Errors.Run(devices, small ? 2 : 32);
Console.WriteLine($"\n({clock.Elapsed.TotalSeconds:F0} s)\n");
Console.WriteLine(Race.Head);
var million = small ? 20 : 1_000_960;
Race.Run<DeviceSingle>(first, "float", million, 400.0, 0.625e-3, Job.Few, single);
Race.Run<DeviceSingle>(first, "float", million, 400.0, 0.625e-3, Job.Many, single);
if (small)
{
    return 0;
}

Race.Run<DeviceSingle>(first, "float", million, 200.0, 0.625e-3, Job.Few, single);
Race.Run<DeviceSingle>(first, "float", million, 200.0, 0.625e-3, Job.Many, single);
Race.Run<DeviceSingle>(first, "float", million, 200.0, 0.834e-3, Job.Few, single);
Race.Run<DeviceDouble>(first, "double", million, 400.0, 0.625e-3, Job.Few, twice);
Race.Run<DeviceDouble>(first, "double", million, 400.0, 0.625e-3, Job.Many, twice);
Race.Run<DeviceDouble>(first, "double", million, 200.0, 0.625e-3, Job.Few, twice);
for (var runs = 1000; runs < million; runs *= 10)
{
    Race.Run<DeviceSingle>(first, "float, growth", runs, 400.0, 0.625e-3, Job.Few, single);
    Race.Run<DeviceDouble>(first, "double, growth", runs, 400.0, 0.625e-3, Job.Few, twice);
}

Console.WriteLine($"\nall in {clock.Elapsed.TotalSeconds:F0} s");
return 0;
