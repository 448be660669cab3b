namespace Heaveline.Cluster;

/// <summary>The fewest common threads of this process, raised while a study is open to others: each piece that is waited for holds one.</summary>
internal static class PoolThreads
{
    private static readonly Lock Turn = new();
    private static int open;
    private static int before;

    /// <summary>Whether any study is open.</summary>
    public static bool IsRaised
    {
        get
        {
            lock (Turn)
            {
                return open > 0;
            }
        }
    }

    /// <summary>A study opens.</summary>
    /// <param name="least">The fewest that it needs.</param>
    public static void Raise(int least)
    {
        lock (Turn)
        {
            ThreadPool.GetMinThreads(out var threads, out var ports);
            if (open++ == 0)
            {
                before = threads;
            }

            // Of two studies in one process neither holds those of the other.
            ThreadPool.SetMinThreads(threads + least, ports);
        }
    }

    /// <summary>A study closes: after the last one all is as it was.</summary>
    public static void Lower()
    {
        lock (Turn)
        {
            if (--open == 0)
            {
                ThreadPool.GetMinThreads(out _, out var ports);
                ThreadPool.SetMinThreads(before, ports);
            }
        }
    }
}
