using Heaveline.Numerics;
using Heaveline.Passes;

namespace Heaveline.Bench;

/// <summary>What the peers take along: the peak of pitch and the sums of squares of pitch and of the tyre loads.</summary>
internal sealed class PeerFold<T>
    where T : unmanaged, ILane<T>
{
    private readonly T[] loads = new T[4];
    private T most = T.Of(0.0);
    private T squares = T.Of(0.0);

    /// <summary>Of everything so far, so that nothing is left out.</summary>
    public T All => most + squares + loads[0] + loads[1] + loads[2] + loads[3];

    public void Take(ReadOnlySpan<T> samples, int channels)
    {
        for (var at = 0; at < samples.Length; at += channels)
        {
            var pitch = samples[at + Channel.Pitch];
            most = T.Max(most, T.Max(pitch, -pitch));
            squares = T.Fma(pitch, pitch, squares);
            for (var i = 0; i < loads.Length; i++)
            {
                loads[i] = T.Fma(samples[at + Channel.Tyre + i], samples[at + Channel.Tyre + i], loads[i]);
            }
        }
    }
}
