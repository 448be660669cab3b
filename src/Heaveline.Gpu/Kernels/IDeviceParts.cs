using Heaveline.Numerics;
using Heaveline.Passes.Steps;

namespace Heaveline.Gpu.Kernels;

/// <summary>The parts of a signal one inside the other: channels by shares, so many that the type says how many and which.</summary>
internal interface IDeviceParts<TSelf, T>
    where TSelf : unmanaged, IDeviceParts<TSelf, T>
    where T : unmanaged, ILane<T>
{
    /// <summary>How many there are.</summary>
    static abstract int Count { get; }

    /// <summary>How many of the shares differ from run to run.</summary>
    static abstract int Own { get; }

    /// <summary>Adds positions and rates by their shares, of which the runs' own stand from a slot on.</summary>
    static abstract T Before(T sum, DeviceRoom<T> room, int own, AxleState<T> front, AxleState<T> rear, BodyBlock<T> body);

    /// <summary>Adds accelerations and forces by their shares.</summary>
    static abstract T After(
        T sum, DeviceRoom<T> room, int own, AxleState<T> front, AxleState<T> rear, PairPast<T> frontNow, PairPast<T> rearNow, BodyPast<T> body);
}
