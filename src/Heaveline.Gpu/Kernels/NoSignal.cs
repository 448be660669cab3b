using Heaveline.Numerics;
using Heaveline.Passes.Steps;

namespace Heaveline.Gpu.Kernels;

/// <summary>The end of the signals.</summary>
internal struct NoSignal<T> : IDeviceSignals<NoSignal<T>, T>
    where T : unmanaged, ILane<T>
{
    public static int Count => 0;

    public static int Questions => 0;

    public static int Own => 0;

    public static void Read(in DeviceArguments<T> a, DeviceRoom<T> room, int run, int signal, int part, int own)
    {
    }

    public static void Before(
        DeviceRoom<T> room, DeviceRoom<T> newest, int signal, int own, AxleState<T> front, AxleState<T> rear, BodyBlock<T> body)
    {
    }

    public static int After(
        DeviceRoom<T> room,
        (DeviceRoom<T> Newest, DeviceRoom<T> One, DeviceRoom<T> Two, DeviceRoom<T> Three) last,
        int within,
        int signal,
        int own,
        AxleState<T> front,
        AxleState<T> rear,
        PairPast<T> frontNow,
        PairPast<T> rearNow,
        BodyPast<T> body) => 0;
}
