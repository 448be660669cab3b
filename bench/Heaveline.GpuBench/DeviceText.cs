using Heaveline.Gpu;
using Heaveline.Numerics;
using Heaveline.Passes.Steps;
using ILGPU;
using ILGPU.Backends.EntryPoints;
using ILGPU.Backends.PTX;
using ILGPU.Runtime;
using ILGPU.Runtime.CPU;
using ILGPU.Runtime.Cuda;

namespace Heaveline.GpuBench;

/// <summary>The text that a kernel is compiled into, without a device.</summary>
internal static class DeviceText
{
    public static string Of<T>(BlockPlan plan, int perSample, Type asked)
        where T : unmanaged, ILane<T>
    {
        using var context = Context.Create(builder => MeasureDevices.Settings(builder).CPU(CPUDevice.Default));
        using var backend = new PTXBackend(context, CudaArchitecture.SM_90, CudaInstructionSet.ISA_80, null!);
        var method = DeviceProgram.MethodOf<T>(plan, perSample, asked, DeviceForm.Of<T>(), true);
        return ((PTXCompiledKernel)backend.Compile(
            EntryPointDescription.FromExplicitlyGroupedKernel(method), KernelSpecialization.Empty)).PTXAssembly;
    }
}
