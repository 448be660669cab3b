using Heaveline.Numerics;

namespace Heaveline.Gpu.Kernels;

/// <summary>A question for how many samples of a signal are at most 0, and those after it.</summary>
internal struct NothingAsked<T, TNumber, TRest> : IDeviceAsking<NothingAsked<T, TNumber, TRest>, T>
    where T : unmanaged, ILane<T>
    where TNumber : IFixed
    where TRest : unmanaged, IDeviceAsking<TRest, T>
{
    public static int Count => 1 + TRest.Count;

    public static int Squares => TRest.Squares;

    public static int Fold(DeviceRoom<T> room, int within, T value, T square, T least, T most)
    {
        // The sample in which the piece begins.
        if ((within & (1 << TNumber.Value)) != 0 && !T.AnyAbove(value, T.Of(0.0)))
        {
            room.Put(2 * TNumber.Value, room.Get(2 * TNumber.Value) + T.Of(1.0));
        }

        return TRest.Fold(room, within, value, square, least, most);
    }
}
