using Heaveline.Numerics;
using Heaveline.Passes.Steps;

namespace Heaveline.Gpu.Kernels;

/// <summary>A part of a signal, and those after it.</summary>
/// <typeparam name="T">Number.</typeparam>
/// <typeparam name="TChannel">The channel.</typeparam>
/// <typeparam name="TShare">Its share: <see cref="Own"/>, 1, or 2 for −1.</typeparam>
/// <typeparam name="TRest">The parts after it.</typeparam>
internal struct SignalPart<T, TChannel, TShare, TRest> : IDeviceParts<SignalPart<T, TChannel, TShare, TRest>, T>
    where T : unmanaged, ILane<T>
    where TChannel : IFixed
    where TShare : IFixed
    where TRest : unmanaged, IDeviceParts<TRest, T>
{
    public static int Count => 1 + TRest.Count;

    public static int Own => (TShare.Value == 0 ? 1 : 0) + TRest.Own;

    public static T Before(T sum, DeviceRoom<T> room, int own, AxleState<T> front, AxleState<T> rear, BodyBlock<T> body)
    {
        var part = DeviceSample<T>.Before(TChannel.Value, front, rear, body);
        return TRest.Before(Plus(sum, part, room, own), room, own + Own - TRest.Own, front, rear, body);
    }

    public static T After(
        T sum, DeviceRoom<T> room, int own, AxleState<T> front, AxleState<T> rear, PairPast<T> frontNow, PairPast<T> rearNow, BodyPast<T> body)
    {
        var part = DeviceSample<T>.After(TChannel.Value, front, rear, frontNow, rearNow, body);
        return TRest.After(Plus(sum, part, room, own), room, own + Own - TRest.Own, front, rear, frontNow, rearNow, body);
    }

    private static T Plus(T sum, T part, DeviceRoom<T> room, int own) =>
        TShare.Value == 1 ? sum + part : TShare.Value == 2 ? sum - part : T.Fma(room.Get(own), part, sum);
}
