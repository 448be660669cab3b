using Heaveline.Models;
using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>Writes the numbers of cars into blocks, one car a lane, or one axle a lane.</summary>
internal static class BlockPacking<T, TSides>
    where T : unmanaged, ILane<T>
    where TSides : unmanaged, ISides<TSides, T>
{
    /// <summary>Writes cars side by side. Missing places repeat the last car.</summary>
    public static void Write(BlockSet<T, TSides> set, ReadOnlySpan<RideNumbers> cars)
    {
        for (var lane = 0; lane < T.Count; lane++)
        {
            var car = cars[Math.Min(lane, cars.Length - 1)];
            NumberPacking<T, TSides, ScalarLane, PlainPlaces<T>>.Beside(set, car, TrimNumbers.Of(car), lane);
        }
    }

    /// <summary>Writes one car, the front axle into the first lane and the rear one into the second.</summary>
    public static void Write(BlockSet<T, TSides> set, RideNumbers car) =>
        NumberPacking<T, TSides, ScalarLane, PlainPlaces<T>>.Alone(set, car, TrimNumbers.Of(car));
}
