using System.Buffers;
using Heaveline.Roads;

namespace Heaveline.Passes;

/// <summary>
/// The stretch of a road that was read last, for groups of passes one after the other that meet the same road at the same times: all cars of a
/// wheelbase at one speed. For one thread.
/// </summary>
internal sealed class RoadMemory : IDisposable
{
    private (Profile Profile, double Behind, double Speed)[] tracks = [];
    private (double Start, double Step, int First, int Length) stretch;
    private double[] table = [];

    /// <summary>The table of a stretch, read if it is not the one read last.</summary>
    /// <param name="of">What each wheel meets, how far behind the front wheels and how fast.</param>
    /// <param name="start">Time of the run's first step, s.</param>
    /// <param name="step">Step, s.</param>
    /// <param name="block">The stretch.</param>
    /// <param name="perStep">Numbers a step.</param>
    /// <param name="read">Fills a table.</param>
    public Span<double> Table(
        ReadOnlySpan<(Profile Profile, double Behind, double Speed)> of,
        double start,
        double step,
        RoadBlock block,
        int perStep,
        Action<double[], int> read)
    {
        var length = perStep * block.Length;
        if (!tracks.AsSpan().SequenceEqual(of) || stretch != (start, step, block.First, block.Length))
        {
            if (table.Length < length)
            {
                Dispose();
                table = ArrayPool<double>.Shared.Rent(length);
            }

            // Half a table is none: what stops the reading leaves nothing to be met again.
            tracks = [];
            read(table, length);
            (tracks, stretch) = (of.ToArray(), (start, step, block.First, block.Length));
        }

        return table.AsSpan(0, length);
    }

    public void Dispose()
    {
        if (table.Length > 0)
        {
            ArrayPool<double>.Shared.Return(table);
            (table, tracks) = ([], []);
        }
    }
}
