using Heaveline.Measures;
using Heaveline.Numerics;
using Heaveline.Passes.Steps;

namespace Heaveline.Gpu.Kernels;

/// <summary>A signal with what is asked of it, and those after it.</summary>
/// <typeparam name="T">Number.</typeparam>
/// <typeparam name="TFirst">1 where it counts from a value of the run's own, 0 where all count from 0.</typeparam>
/// <typeparam name="TBefore">Its parts that stand there before the step.</typeparam>
/// <typeparam name="TAfter">Its parts that the step works out.</typeparam>
/// <typeparam name="TAsked">Its questions.</typeparam>
/// <typeparam name="TRest">The signals after it.</typeparam>
internal struct SignalAsked<T, TFirst, TBefore, TAfter, TAsked, TRest> : IDeviceSignals<SignalAsked<T, TFirst, TBefore, TAfter, TAsked, TRest>, T>
    where T : unmanaged, ILane<T>
    where TFirst : IFixed
    where TBefore : unmanaged, IDeviceParts<TBefore, T>
    where TAfter : unmanaged, IDeviceParts<TAfter, T>
    where TAsked : unmanaged, IDeviceAsking<TAsked, T>
    where TRest : unmanaged, IDeviceSignals<TRest, T>
{
    public static int Count => 1 + TRest.Count;

    public static int Questions => TAsked.Count + TRest.Questions;

    public static int Own => TFirst.Value + TBefore.Own + TAfter.Own + TRest.Own;

    public static void Read(in DeviceArguments<T> a, DeviceRoom<T> room, int run, int signal, int part, int own)
    {
        if (TFirst.Value == 1)
        {
            room.Put(own, a.Bases[run + ((long)signal * a.Runs)]);
        }

        for (var p = 0; p < TBefore.Own + TAfter.Own; p++)
        {
            room.Put(own + TFirst.Value + p, a.Shares[run + ((long)(part + p) * a.Runs)]);
        }

        TRest.Read(in a, room, run, signal + 1, part + TBefore.Own + TAfter.Own, own + Own - TRest.Own);
    }

    public static void Before(
        DeviceRoom<T> room, DeviceRoom<T> newest, int signal, int own, AxleState<T> front, AxleState<T> rear, BodyBlock<T> body)
    {
        if (TBefore.Count > 0)
        {
            newest.Put(DeviceRoom<T>.About * signal, TBefore.Before(First(room, own), room, own + TFirst.Value, front, rear, body));
        }

        TRest.Before(room, newest, signal + 1, own + Own - TRest.Own, front, rear, body);
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
        BodyPast<T> body)
    {
        var slot = DeviceRoom<T>.About * signal;
        var newest = TBefore.Count > 0 ? last.Newest.Get(slot) : First(room, own);
        if (TAfter.Count > 0 || TBefore.Count == 0)
        {
            newest = TAfter.After(newest, room, own + TFirst.Value + TBefore.Own, front, rear, frontNow, rearNow, body);
            last.Newest.Put(slot, newest);
        }

        var (three, value, next) = (last.Three.Get(slot), last.Two.Get(slot), last.One.Get(slot));
        var two = T.Of(2.0);
        var before = three - (two * value) + next;
        var after = value - (two * next) + newest;
        var square = TAsked.Squares > 0 ? LanePiece<T>.Of(value, next, before, after).SquareIntegral() : value;
        var beyond = T.Of(LanePiece<T>.Beyond);
        var (swing, swingNext) = (beyond * T.Max(before, -before), beyond * T.Max(after, -after));
        var close = TAsked.Fold(
            room, within, value, square, T.Min(value - swing, next - swingNext), T.Max(value + swing, next + swingNext));
        return close | TRest.After(room, last, within, signal + 1, own + Own - TRest.Own, front, rear, frontNow, rearNow, body);
    }

    private static T First(DeviceRoom<T> room, int own) => TFirst.Value == 1 ? room.Get(own) : T.Of(0.0);
}
