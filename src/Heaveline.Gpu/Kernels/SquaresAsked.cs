using Heaveline.Numerics;

namespace Heaveline.Gpu.Kernels;

/// <summary>A question for a signal's squares, and those after it.</summary>
internal struct SquaresAsked<T, TNumber, TRest> : IDeviceAsking<SquaresAsked<T, TNumber, TRest>, T>
    where T : unmanaged, ILane<T>
    where TNumber : IFixed
    where TRest : unmanaged, IDeviceAsking<TRest, T>
{
    public static int Count => 1 + TRest.Count;

    public static int Squares => 1 + TRest.Squares;

    public static int Fold(DeviceRoom<T> room, int within, T value, T square, T least, T most)
    {
        if ((within & (1 << TNumber.Value)) != 0)
        {
            room.Put(2 * TNumber.Value, room.Get(2 * TNumber.Value) + square);
        }

        return TRest.Fold(room, within, value, square, least, most);
    }
}
