using Heaveline.Numerics;
using Heaveline.Passes;

namespace Heaveline.Bench;

/// <summary>Largest difference of the first car's pitch and loads from the exact solver's, over the peak of each.</summary>
/// <param name="exact">Pitch and four loads a sample.</param>
/// <param name="traced">How many that is.</param>
internal sealed class PeerError(double[] exact, int traced)
{
    private readonly double[] worst = new double[2];
    private readonly double[] peak = new double[2];

    public (double Pitch, double Load) OfPeaks => (worst[0] / peak[0], worst[1] / peak[1]);

    public void Meet<T>(int first, int count, T[] samples, int channels)
        where T : unmanaged, ILane<T>
    {
        Span<double> lanes = stackalloc double[T.Count];
        for (var k = 0; k < count; k++)
        {
            for (var i = 0; i < traced; i++)
            {
                samples[(k * channels) + (i == 0 ? Channel.Pitch : Channel.Tyre + i - 1)].To(lanes);
                var (kind, truth) = (Math.Min(i, 1), exact[(traced * (first + k)) + i]);
                worst[kind] = Math.Max(worst[kind], Math.Abs(lanes[0] - truth));
                peak[kind] = Math.Max(peak[kind], Math.Abs(truth));
            }
        }
    }
}
