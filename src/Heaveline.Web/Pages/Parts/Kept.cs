namespace Heaveline.Web.Pages.Parts;

/// <summary>Results kept in memory by what was asked, the latest asked for; the one not asked for longest makes room for a new one.</summary>
/// <param name="most">How many are kept, at least 1.</param>
internal sealed class Kept<T>(int most)
    where T : class
{
    private readonly Lock gate = new();
    private readonly LinkedList<(string Key, T Value)> order = new();
    private readonly Dictionary<string, LinkedListNode<(string Key, T Value)>> byKey = new(StringComparer.Ordinal);

    /// <summary>How many are kept.</summary>
    public int Count
    {
        get
        {
            lock (gate)
            {
                return byKey.Count;
            }
        }
    }

    /// <summary>What was kept under a key; null when there is nothing.</summary>
    public T? Find(string key)
    {
        lock (gate)
        {
            if (!byKey.TryGetValue(key, out var node))
            {
                return null;
            }

            order.Remove(node);
            order.AddFirst(node);
            return node.Value.Value;
        }
    }

    /// <summary>Keeps a result.</summary>
    public void Keep(string key, T value)
    {
        lock (gate)
        {
            if (byKey.Remove(key, out var old))
            {
                order.Remove(old);
            }

            byKey[key] = order.AddFirst((key, value));
            if (byKey.Count > most)
            {
                byKey.Remove(order.Last!.Value.Key);
                order.RemoveLast();
            }
        }
    }
}
