using System.Runtime.CompilerServices;
using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>A block for each axle, a lane for each car.</summary>
internal readonly unsafe struct TwoBlocks<T> : IEnds<T, T>
    where T : unmanaged, ILane<T>
{
    public static int Blocks => 2;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Sum(T front, T rear) => front + rear;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Difference(T front, T rear) => front - rear;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T* Road(Quad<T>* road, T* room) => (T*)road;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T* Road(double* road, T* room)
    {
        for (var i = 0; i < 8; i++)
        {
            room[i] = T.Of(road[i]);
        }

        return room;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Record(T* to, T value) => *to = value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Record(T* to, T frontLeft, T frontRight, T rearLeft, T rearRight)
    {
        to[0] = frontLeft;
        to[1] = frontRight;
        to[2] = rearLeft;
        to[3] = rearRight;
    }
}
