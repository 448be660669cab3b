using Heaveline.Gpu.Kernels;
using Heaveline.Numerics;

namespace Heaveline.Gpu;

/// <summary>How a kernel is compiled and launched.</summary>
/// <param name="Widest">Most threads of a group.</param>
/// <param name="Threads">Threads that are to have room on a multiprocessor beside each other, so that each has few registers; 0: no matter.</param>
/// <param name="InFours">Whether four steps are written out where a sample has four, or eight, and so on.</param>
/// <param name="Shares">Whether places of kinks that all cars have in common are arguments of the kernel.</param>
internal sealed record DeviceForm(int Widest, int Threads, bool InFours, bool Shares = true)
{
    /// <summary>As is fastest on the devices that were measured.</summary>
    public static DeviceForm Of<T>()
        where T : unmanaged, ILane<T> => typeof(T) == typeof(Lanes.DeviceSingle) ? new(128, 384, true) : new(128, 0, false);

    /// <summary>Whether four steps are written out.</summary>
    public bool IsFour(int perSample) => InFours && perSample % DeviceKernel.WrittenOut == 0;
}
