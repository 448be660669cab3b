using System.Buffers;
using Heaveline.Roads;

namespace Heaveline.Passes;

/// <summary>
/// The stretches of a road that were read last, for groups of passes one after the other that meet the same road at the same times: all cars of a
/// wheelbase at one speed. For one thread.
/// </summary>
internal sealed class RoadMemory : IDisposable
{
    // Eight megabytes: more than a minute of the usual steps. Of a longer road the stretches beyond are read anew by every group.
    private const int Most = 16;

    private readonly List<(int First, int Length, double[] Table)> stretches = [];
    private (Profile Profile, double Behind, double Speed)[] tracks = [];
    private (double Start, double Step) clock;

    /// <summary>The table of a stretch, read if it has not been since the road was last another; good until the next is asked for.</summary>
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
        if (clock != (start, step) || !tracks.AsSpan().SequenceEqual(of))
        {
            Dispose();
            (tracks, clock) = (of.ToArray(), (start, step));
        }

        var length = perStep * block.Length;
        foreach (var (first, steps, known) in stretches)
        {
            if (first == block.First && steps == block.Length)
            {
                return known.AsSpan(0, length);
            }
        }

        if (stretches.Count == Most)
        {
            ArrayPool<double>.Shared.Return(stretches[^1].Table);
            stretches.RemoveAt(Most - 1);
        }

        var table = ArrayPool<double>.Shared.Rent(length);
        try
        {
            read(table, length);
        }
        catch
        {
            // Half a table is none: what stops the reading leaves nothing to be met again.
            ArrayPool<double>.Shared.Return(table);
            throw;
        }

        stretches.Add((block.First, block.Length, table));
        return table.AsSpan(0, length);
    }

    public void Dispose()
    {
        foreach (var stretch in stretches)
        {
            ArrayPool<double>.Shared.Return(stretch.Table);
        }

        stretches.Clear();
        tracks = [];
    }
}
