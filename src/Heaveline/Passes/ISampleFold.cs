using Heaveline.Numerics;

namespace Heaveline.Passes;

/// <summary>What becomes of the samples of passes side by side while they run, so that none need be kept.</summary>
internal interface ISampleFold<TLane>
    where TLane : unmanaged, ILane<TLane>
{
    /// <summary>Takes up the next samples.</summary>
    /// <param name="samples">One after the other, as many lanes each as there are channels.</param>
    /// <param name="outputs">How many they are.</param>
    /// <returns>Whether more are of any use.</returns>
    bool Fold(ReadOnlySpan<TLane> samples, int outputs);
}
