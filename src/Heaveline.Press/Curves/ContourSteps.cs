namespace Heaveline.Press.Curves;

/// <summary>
/// Directed steps between numbered points, strung together to chains. At most two steps leave a point: where two cells touch only in a corner.
/// </summary>
internal sealed class ContourSteps
{
    private readonly List<int> starts = [];
    private readonly Dictionary<int, int> next = [], other = [];
    private readonly HashSet<int> reached = [];

    /// <summary>Adds a step.</summary>
    public void Add(int from, int to)
    {
        starts.Add(from);
        reached.Add(to);
        (next.ContainsKey(from) ? other : next).Add(from, to);
    }

    /// <summary>The chains, each step used once; a closed one ends on its first point. Open ones come first. May be asked once.</summary>
    public List<int[]> Chains()
    {
        var chains = new List<int[]>();
        foreach (var start in starts.Where(start => !reached.Contains(start)).Concat(starts))
        {
            var chain = new List<int> { start };
            while (next.Remove(chain[^1], out var to) || other.Remove(chain[^1], out to))
            {
                chain.Add(to);
                if (to == start)
                {
                    break;
                }
            }

            if (chain.Count > 1)
            {
                chains.Add([.. chain]);
            }
        }

        return chains;
    }
}
