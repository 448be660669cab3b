using System.Runtime.CompilerServices;
using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>Both axles of one car in one block: the front one in the first lane, the rear one in the second.</summary>
internal readonly unsafe struct OneBlock : IEnds<Lane128, ScalarLane>
{
    public static int Blocks => 1;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane128 Sum(Lane128 front, Lane128 rear) => front + Lane128.Swap(front);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane128 Difference(Lane128 front, Lane128 rear) => Lane128.FirstLess(front);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane128* Road(Quad<ScalarLane>* road, Lane128* room) => Road((double*)road, room);

    // Whole registers are written, as they are read: a read across two writes would wait for both to reach the cache.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane128* Road(double* road, Lane128* room)
    {
        room[0] = Lane128.Of(road[0], road[2]);
        room[1] = Lane128.Of(road[1], road[3]);
        room[4] = Lane128.Of(road[4], road[6]);
        room[5] = Lane128.Of(road[5], road[7]);
        return room;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Record(ScalarLane* to, Lane128 value) => *to = *(ScalarLane*)&value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Record(ScalarLane* to, Lane128 frontLeft, Lane128 frontRight, Lane128 rearLeft, Lane128 rearRight)
    {
        var left = (ScalarLane*)&frontLeft;
        var right = (ScalarLane*)&frontRight;
        (to[0], to[1], to[2], to[3]) = (left[0], right[0], left[1], right[1]);
    }
}
