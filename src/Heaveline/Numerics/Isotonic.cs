namespace Heaveline.Numerics;

/// <summary>
/// Isotonic regression: the values that never fall and lie nearest to given ones, by pooling adjacent violators
/// [Barlow, Bartholomew, Bremner, Brunk, Statistical Inference under Order Restrictions, 1972, ch. 1].
/// </summary>
internal static class Isotonic
{
    /// <summary>The values g, not falling, with the least Σ w (y − g)².</summary>
    /// <param name="values">y, shape (n).</param>
    /// <param name="weights">w, shape (n), above zero.</param>
    /// <returns>g, shape (n).</returns>
    public static double[] Fit(ReadOnlySpan<double> values, ReadOnlySpan<double> weights)
    {
        var blocks = new Stack<(double Mean, double Weight, int Count)>(values.Length);
        for (var i = 0; i < values.Length; i++)
        {
            var block = (Mean: values[i], Weight: weights[i], Count: 1);
            while (blocks.TryPeek(out var before) && before.Mean > block.Mean)
            {
                blocks.Pop();
                var weight = before.Weight + block.Weight;
                block = (((before.Mean * before.Weight) + (block.Mean * block.Weight)) / weight, weight, before.Count + block.Count);
            }

            blocks.Push(block);
        }

        var fit = new double[values.Length];
        var end = fit.Length;
        foreach (var (mean, _, count) in blocks)
        {
            fit.AsSpan(end - count, count).Fill(mean);
            end -= count;
        }

        return fit;
    }
}
