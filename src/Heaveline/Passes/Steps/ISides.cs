using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>A number of the two wheels of an axle: one for both where they are alike, which halves what a step reads, or one each.</summary>
internal interface ISides<TSelf, T>
    where TSelf : unmanaged, ISides<TSelf, T>
    where T : unmanaged, ILane<T>
{
    /// <summary>How many numbers it holds, 1 or 2.</summary>
    static abstract int Count { get; }

    T L { get; }

    T R { get; }
}
