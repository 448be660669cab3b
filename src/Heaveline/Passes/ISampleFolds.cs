using Heaveline.Numerics;

namespace Heaveline.Passes;

/// <summary>Makes the fold of a group of passes for whatever lanes they run in.</summary>
internal interface ISampleFolds
{
    /// <summary>How much is to be recorded: one of the lengths that <see cref="Channel"/> names.</summary>
    int Channels { get; }

    /// <summary>The fold for lanes of one kind.</summary>
    /// <param name="timing">The clock that covers those of all passes.</param>
    ISampleFold<TLane> Of<TLane>(PassTiming timing)
        where TLane : unmanaged, ILane<TLane>;
}
