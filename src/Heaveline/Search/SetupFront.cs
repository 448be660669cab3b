namespace Heaveline.Search;

/// <summary>
/// The setups that nothing beats: none other is at most as large in every wish and smaller in one. Every wish is a number to be small; a setup
/// without a number must be taken out before, with its reason.
/// </summary>
internal static class SetupFront
{
    /// <summary>The front, by the place of each setup among those given, in the order of the first wish, then of the others.</summary>
    /// <param name="wishes">Numbers of every setup, setup by setup.</param>
    /// <param name="count">How many wishes there are.</param>
    /// <param name="among">Places of the setups that count; null for all.</param>
    /// <exception cref="ArgumentException">A setup has no number.</exception>
    public static int[] Of(double[] wishes, int count, IReadOnlyList<int>? among = null)
    {
        int[] order = among is null ? [.. Enumerable.Range(0, wishes.Length / count)] : [.. among];
        foreach (var at in order)
        {
            if (wishes.AsSpan(at * count, count).ContainsAnyExceptInRange(double.MinValue, double.MaxValue))
            {
                throw new ArgumentException("A setup has no number: it must be refused before it is compared.", nameof(wishes));
            }
        }

        Array.Sort(order, (a, b) => Compare(wishes, count, a, b));
        var front = new List<int>();
        // Whoever beat the one before most often beats the next.
        var last = -1;
        foreach (var at in order)
        {
            if (last >= 0 && Beats(wishes, count, front[last], at))
            {
                continue;
            }

            var beaten = false;
            for (var k = 0; k < front.Count && !beaten; k++)
            {
                if (Beats(wishes, count, front[k], at))
                {
                    (beaten, last) = (true, k);
                }
            }

            if (!beaten)
            {
                front.Add(at);
            }
        }

        return [.. front];
    }

    /// <summary>Whether one is at most as large in every wish and smaller in one.</summary>
    public static bool Beats(double[] wishes, int count, int one, int other)
    {
        var less = false;
        for (var k = 0; k < count; k++)
        {
            var (mine, its) = (wishes[(one * count) + k], wishes[(other * count) + k]);
            if (mine > its)
            {
                return false;
            }

            less |= mine < its;
        }

        return less;
    }

    private static int Compare(double[] wishes, int count, int a, int b)
    {
        for (var k = 0; k < count; k++)
        {
            var order = wishes[(a * count) + k].CompareTo(wishes[(b * count) + k]);
            if (order != 0)
            {
                return order;
            }
        }

        return a.CompareTo(b);
    }
}
