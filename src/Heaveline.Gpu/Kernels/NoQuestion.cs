using Heaveline.Numerics;

namespace Heaveline.Gpu.Kernels;

/// <summary>The end of a signal's questions.</summary>
internal struct NoQuestion<T> : IDeviceAsking<NoQuestion<T>, T>
    where T : unmanaged, ILane<T>
{
    public static int Count => 0;

    public static int Squares => 0;

    public static int Fold(DeviceRoom<T> room, int within, T value, T square, T least, T most) => 0;
}
