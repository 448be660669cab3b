using Heaveline.Numerics;

namespace Heaveline.Causes;

/// <summary>
/// Who makes how much of a value, when causes work together: the average over all orders of taking them out of what each takes with it
/// [Shapley, A value for n-person games, 1953]. The shares add up to the whole difference.
/// </summary>
internal static class FairShares
{
    /// <summary>Every order counts: all sets of n causes, as bits.</summary>
    public static IReadOnlyList<int> AllSets(int n) => [.. Enumerable.Range(0, 1 << n)];

    /// <summary>Drawn orders, each with its reverse.</summary>
    public static IReadOnlyList<int[]> Orders(int n, int count, ulong seed)
    {
        var orders = new List<int[]>();
        for (var k = 0; k < count; k++)
        {
            var own = SplitMix.At(seed, (ulong)k);
            int[] order = [.. Enumerable.Range(0, n).OrderBy(i => SplitMix.At(own, (ulong)i))];
            orders.Add(order);
            orders.Add([.. order.Reverse()]);
        }

        return orders;
    }

    /// <summary>The sets met along orders, with the empty and the full one and every single cause, each once.</summary>
    public static IReadOnlyList<int> SetsOf(IReadOnlyList<int[]> orders, int n)
    {
        var sets = new SortedSet<int> { 0, (1 << n) - 1 };
        sets.UnionWith(Enumerable.Range(0, n).Select(i => 1 << i));
        foreach (var order in orders)
        {
            var set = 0;
            foreach (var i in order)
            {
                set |= 1 << i;
                sets.Add(set);
            }
        }

        return [.. sets];
    }

    /// <summary>
    /// Shares from all sets: value[S] with the causes in S taken out. A step to or from a set without a value is
    /// left out and its weight given to the others.
    /// </summary>
    public static double[] Of(double[] value, int n)
    {
        var shares = new double[n];
        double[] weight = [.. Enumerable.Range(0, n).Select(size => Factorial(size) * Factorial(n - size - 1) / Factorial(n))];
        for (var i = 0; i < n; i++)
        {
            var (sum, total) = (0.0, 0.0);
            for (var set = 0; set < value.Length; set++)
            {
                var step = (set & (1 << i)) == 0 ? value[set] - value[set | (1 << i)] : double.NaN;
                if (double.IsFinite(step))
                {
                    var w = weight[System.Numerics.BitOperations.PopCount((uint)set)];
                    sum += w * step;
                    total += w;
                }
            }

            shares[i] = total > 0.0 ? sum / total : double.NaN;
        }

        return shares;
    }

    /// <summary>Shares from drawn orders.</summary>
    public static double[] Of(IReadOnlyDictionary<int, double> value, IReadOnlyList<int[]> orders, int n)
    {
        var (sum, count) = (new double[n], new int[n]);
        foreach (var order in orders)
        {
            var set = 0;
            foreach (var i in order)
            {
                var step = value[set] - value[set | (1 << i)];
                set |= 1 << i;
                if (double.IsFinite(step))
                {
                    sum[i] += step;
                    count[i]++;
                }
            }
        }

        return [.. sum.Zip(count, (s, c) => c > 0 ? s / c : double.NaN)];
    }

    private static double Factorial(int n) => Enumerable.Range(1, n).Aggregate(1.0, (p, k) => p * k);
}
