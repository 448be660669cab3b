using Heaveline.Numerics;
using Heaveline.Passes.Steps;

namespace Heaveline.Gpu.Kernels;

/// <summary>
/// What is asked of runs: signals one inside the other, each with its parts and questions, so that a device's compiler writes out what is asked and
/// nothing else.
/// </summary>
internal interface IDeviceSignals<TSelf, T>
    where TSelf : unmanaged, IDeviceSignals<TSelf, T>
    where T : unmanaged, ILane<T>
{
    /// <summary>How many there are.</summary>
    static abstract int Count { get; }

    /// <summary>How many questions they are asked.</summary>
    static abstract int Questions { get; }

    /// <summary>How many shares and first values differ from run to run.</summary>
    static abstract int Own { get; }

    /// <summary>Reads what is the run's own into its slots.</summary>
    static abstract void Read(in DeviceArguments<T> a, DeviceRoom<T> room, int run, int signal, int part, int own);

    /// <summary>Puts together what is known before the step.</summary>
    /// <param name="room">This thread's.</param>
    /// <param name="newest">Where the newest value of the first signal stands.</param>
    /// <param name="signal">Which signal this is.</param>
    /// <param name="own">Where its own shares stand.</param>
    /// <param name="front">The wheels in front.</param>
    /// <param name="rear">The wheels behind.</param>
    /// <param name="body">The body.</param>
    static abstract void Before(
        DeviceRoom<T> room, DeviceRoom<T> newest, int signal, int own, AxleState<T> front, AxleState<T> rear, BodyBlock<T> body);

    /// <summary>Ends the newest values, and takes the piece that begins two samples before.</summary>
    /// <param name="room">This thread's.</param>
    /// <param name="last">Where the values of the first signal stand, the newest first.</param>
    /// <param name="within">A bit a question, whether the piece lies within its stretch.</param>
    /// <param name="signal">Which signal this is.</param>
    /// <param name="own">Where its own shares stand.</param>
    /// <param name="front">The wheels in front.</param>
    /// <param name="rear">The wheels behind.</param>
    /// <param name="frontNow">Accelerations of the wheels in front.</param>
    /// <param name="rearNow">And behind.</param>
    /// <param name="body">Accelerations of the body.</param>
    /// <returns>A bit a question, whether the piece must be looked at closely.</returns>
    static abstract int After(
        DeviceRoom<T> room,
        (DeviceRoom<T> Newest, DeviceRoom<T> One, DeviceRoom<T> Two, DeviceRoom<T> Three) last,
        int within,
        int signal,
        int own,
        AxleState<T> front,
        AxleState<T> rear,
        PairPast<T> frontNow,
        PairPast<T> rearNow,
        BodyPast<T> body);
}
