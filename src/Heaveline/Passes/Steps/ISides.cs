using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>A number of the two wheels of an axle: one for both where they are alike, which halves what a step reads, or one each.</summary>
internal interface ISides<TSelf, T>
    where TSelf : unmanaged, ISides<TSelf, T>
    where T : unmanaged, ILane<T>
{
    /// <summary>How many numbers it holds, 1 or 2.</summary>
    static abstract int Count { get; }

    /// <summary>From the number of either side; the left one's where it holds one.</summary>
    static abstract TSelf Of(T left, T right);

    T L { get; }

    T R { get; }
}
