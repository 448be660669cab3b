using Heaveline.Numerics;
using Heaveline.Passes.Steps;

namespace Heaveline.Gpu.Kernels;

/// <summary>The end of a signal's parts.</summary>
internal struct NoPart<T> : IDeviceParts<NoPart<T>, T>
    where T : unmanaged, ILane<T>
{
    public static int Count => 0;

    public static int Own => 0;

    public static T Before(T sum, DeviceRoom<T> room, int own, AxleState<T> front, AxleState<T> rear, BodyBlock<T> body) => sum;

    public static T After(
        T sum, DeviceRoom<T> room, int own, AxleState<T> front, AxleState<T> rear, PairPast<T> frontNow, PairPast<T> rearNow, BodyPast<T> body) =>
        sum;
}
