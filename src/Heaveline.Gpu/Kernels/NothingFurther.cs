using Heaveline.Numerics;
using Heaveline.Passes.Steps;

namespace Heaveline.Gpu.Kernels;

/// <summary>A car of plain elements.</summary>
internal struct NothingFurther<T> : IDeviceFurther<NothingFurther<T>, T>
    where T : unmanaged, ILane<T>
{
    public static NothingFurther<T> Read(ref NumberReader<T> numbers) => default;

    public readonly void Add(ref AxleState<T> front, ref AxleState<T> rear, in BodyBlock<T> body, int needs)
    {
    }
}
