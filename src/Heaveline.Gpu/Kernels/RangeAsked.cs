using Heaveline.Numerics;

namespace Heaveline.Gpu.Kernels;

/// <summary>A question for a signal's range, and those after it.</summary>
internal struct RangeAsked<T, TNumber, TRest> : IDeviceAsking<RangeAsked<T, TNumber, TRest>, T>
    where T : unmanaged, ILane<T>
    where TNumber : IFixed
    where TRest : unmanaged, IDeviceAsking<TRest, T>
{
    public static int Count => 1 + TRest.Count;

    public static int Squares => TRest.Squares;

    public static int Fold(DeviceRoom<T> room, int within, T value, T square, T least, T most)
    {
        var (below, above) = (room.Get(2 * TNumber.Value), room.Get((2 * TNumber.Value) + 1));
        // Written so that a motion that is not finite needs no look.
        var reaches = T.AnyAbove(T.Max(most - above, below - least), T.Of(0.0));
        return (reaches ? within & (1 << TNumber.Value) : 0) | TRest.Fold(room, within, value, square, least, most);
    }
}
