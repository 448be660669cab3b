namespace Heaveline.Press.Scales;

/// <summary>
/// Labels along a line, moved apart until none overlaps, with the least sum of squared moves. With the sizes before it taken off each
/// place, the order asked for is "not falling": isotonic regression by pooling neighbours [Barlow, Bartholomew, Bremner, Brunk,
/// Statistical Inference under Order Restrictions, 1972], and clamping its answer solves the bounded problem.
/// </summary>
internal static class Spread
{
    /// <summary>The centres of the labels, in the order given; null when they do not all fit.</summary>
    /// <param name="wanted">Where each label would stand, points.</param>
    /// <param name="sizes">The room each takes along the line, points, gap included.</param>
    /// <param name="low">Where the line begins.</param>
    /// <param name="high">Where it ends.</param>
    public static double[]? Of(ReadOnlySpan<double> wanted, ReadOnlySpan<double> sizes, double low, double high)
    {
        var total = 0.0;
        foreach (var size in sizes)
        {
            total += size;
        }

        if (total > high - low + 1e-9)
        {
            return null;
        }

        var order = Enumerable.Range(0, wanted.Length).ToArray();

        // Stable among equals: the label named first stands first.
        var places = wanted.ToArray();
        Array.Sort(order, (a, b) => places[a] != places[b] ? places[a].CompareTo(places[b]) : a.CompareTo(b));

        var sums = new double[order.Length];
        var counts = new int[order.Length];
        var before = new double[order.Length];
        var blocks = 0;
        var taken = 0.0;
        for (var i = 0; i < order.Length; i++)
        {
            before[i] = taken + sizes[order[i]] / 2.0;
            taken += sizes[order[i]];
            (sums[blocks], counts[blocks]) = (places[order[i]] - before[i], 1);
            blocks++;
            while (blocks > 1 && sums[blocks - 2] / counts[blocks - 2] >= sums[blocks - 1] / counts[blocks - 1])
            {
                sums[blocks - 2] += sums[blocks - 1];
                counts[blocks - 2] += counts[blocks - 1];
                blocks--;
            }
        }

        var centres = new double[order.Length];
        var next = 0;
        for (var block = 0; block < blocks; block++)
        {
            var level = Math.Clamp(sums[block] / counts[block], low, Math.Max(low, high - total));
            for (var i = 0; i < counts[block]; i++, next++)
            {
                centres[order[next]] = level + before[next];
            }
        }

        return centres;
    }
}
