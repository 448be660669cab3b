namespace Heaveline.Drives.Events;

/// <summary>
/// What is usual about each instant of a drive: medians over half a minute of moving on either side, so that a rough stretch has no more bumps than a
/// smooth one.
/// </summary>
internal static class UsualMotion
{
    // Half the window, s of moving; means over blocks are the medians' samples, and the medians stand two seconds apart.
    private const double Reach = 30.0;
    private const double Block = 0.2;
    private const double Every = 2.0;

    /// <summary>The running medians, one a sample; 0 where nothing moves at all.</summary>
    /// <param name="values">What is asked about, shape (n), none below 0.</param>
    /// <param name="moving">Whether the car moves and the drive is covered, shape (n).</param>
    /// <param name="rate">Samples a second, Hz.</param>
    public static double[] Of(ReadOnlySpan<double> values, ReadOnlySpan<bool> moving, double rate)
    {
        var size = Math.Max(1, (int)Math.Round(Block * rate));
        var (blocks, places) = (new List<double>(), new List<int>());
        for (var from = 0; from + size <= values.Length; from += size)
        {
            var (sum, count) = (0.0, 0);
            for (var i = from; i < from + size; i++)
            {
                sum += moving[i] ? values[i] : 0.0;
                count += moving[i] ? 1 : 0;
            }

            if (count > size / 2)
            {
                blocks.Add(sum / count);
                places.Add(from + (size / 2));
            }
        }

        var result = new double[values.Length];
        if (blocks.Count == 0)
        {
            return result;
        }

        // Half a minute of moving, however long the car stood in between.
        var (half, step) = ((int)(Reach / Block), Math.Max(1, (int)(Every / Block)));
        var (lastPlace, lastMedian) = (-1, 0.0);
        var (part, first, last) = (new List<double>((2 * half) + 1), 0, 0);
        for (var k = 0; ; k = Math.Min(k + step, blocks.Count - 1))
        {
            var (from, to) = (Math.Max(0, k - half), Math.Min(blocks.Count, k + half + 1));
            // The window moves on: what it leaves goes out of the sorted part, what it meets goes in.
            for (; first < from; first++)
            {
                part.RemoveAt(part.BinarySearch(blocks[first]));
            }

            for (; last < to; last++)
            {
                var at = part.BinarySearch(blocks[last]);
                part.Insert(at < 0 ? ~at : at, blocks[last]);
            }

            var median = 0.5 * (part[(part.Count - 1) / 2] + part[part.Count / 2]);
            var place = places[k];
            for (var i = Math.Max(lastPlace, 0); i <= place; i++)
            {
                var share = lastPlace < 0 ? 1.0 : (i - lastPlace) / (double)(place - lastPlace);
                result[i] = lastMedian + (share * (median - lastMedian));
            }

            (lastPlace, lastMedian) = (place, median);
            if (k == blocks.Count - 1)
            {
                break;
            }
        }

        result.AsSpan(lastPlace).Fill(lastMedian);
        return result;
    }
}
