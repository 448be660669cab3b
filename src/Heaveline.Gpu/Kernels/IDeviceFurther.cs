using Heaveline.Numerics;
using Heaveline.Passes.Steps;

namespace Heaveline.Gpu.Kernels;

/// <summary>What a car has beyond straight laws at its own wheels.</summary>
internal interface IDeviceFurther<TSelf, T>
    where TSelf : unmanaged, IDeviceFurther<TSelf, T>
    where T : unmanaged, ILane<T>
{
    /// <summary>Reads its numbers.</summary>
    static abstract TSelf Read(ref NumberReader<T> numbers);

    /// <summary>Adds its forces to what the axles' steps start from.</summary>
    void Add(ref AxleState<T> front, ref AxleState<T> rear, in BodyBlock<T> body, int needs);
}
