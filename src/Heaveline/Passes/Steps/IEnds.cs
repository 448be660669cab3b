using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>
/// How front and rear axle meet: in blocks of their own, many cars side by side; or both in one block, a lane each, for one car alone. Every number
/// of the body stands then in both lanes, so nothing here may come out different for them.
/// </summary>
/// <typeparam name="T">A lane of the blocks.</typeparam>
/// <typeparam name="TSample">A recorded number, and one of the road: as many places as there are cars.</typeparam>
internal unsafe interface IEnds<T, TSample>
    where T : unmanaged, ILane<T>
    where TSample : unmanaged, ILane<TSample>
{
    /// <summary>Blocks that the axles take, 2 or 1.</summary>
    static abstract int Blocks { get; }

    /// <summary>The sum of a number of both axles.</summary>
    static abstract T Sum(T front, T rear);

    /// <summary>The front axle's number less the rear's.</summary>
    static abstract T Difference(T front, T rear);

    /// <summary>Two quads, heights and rates, in the order in which the blocks read them: eight numbers, the rear axle's two places on.</summary>
    /// <param name="road">The quads.</param>
    /// <param name="room">Where they may be put; the quads themselves when they stand right as they are.</param>
    static abstract T* Road(Quad<TSample>* road, T* room);

    /// <summary>The same of a road that all cars meet at the same time.</summary>
    /// <param name="road">Four heights and four rates.</param>
    /// <param name="room">Where they are put.</param>
    static abstract T* Road(double* road, T* room);

    /// <summary>Writes a number of the body or of a line.</summary>
    static abstract void Record(TSample* to, T value);

    /// <summary>Writes a number of the four corners.</summary>
    static abstract void Record(TSample* to, T frontLeft, T frontRight, T rearLeft, T rearRight);
}
