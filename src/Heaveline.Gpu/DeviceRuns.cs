using Heaveline.Measures;
using Heaveline.Passes;

namespace Heaveline.Gpu;

/// <summary>Runs that can be computed in one launch: of one step, with the same kinds of questions, their roads side by side.</summary>
internal sealed class DeviceRuns(PassGroup group, int first, DeviceQuestions questions)
{
    private readonly int perSample = group.Clocks[first].StepsPerSample;
    private readonly bool further = IsFurther(group, first);
    private readonly List<DeviceRoad> roads = [];
    private readonly List<CurveQuestion[]> asked = [];
    private readonly List<List<int>> runs = [];
    private int last;

    /// <summary>What is asked.</summary>
    public DeviceQuestions Questions => questions;

    /// <summary>The roads.</summary>
    public IReadOnlyList<DeviceRoad> Roads => roads;

    /// <summary>What is asked on each road.</summary>
    public IReadOnlyList<CurveQuestion[]> Asked => asked;

    /// <summary>How many runs there are.</summary>
    public int Count => runs.Sum(some => some.Count);

    /// <summary>Whether a run can stand among these.</summary>
    public bool Has(PassGroup all, int k, CurveQuestion[] own) =>
        all.Clocks[k].StepsPerSample == perSample && IsFurther(all, k) == further && questions.IsLike(own);

    /// <summary>Adds one.</summary>
    public void Add(int k, CurveQuestion[] own)
    {
        var (request, clock, road) = (group.Requests[k], group.Clocks[k], group.Roads[k]);
        // Neighbours mostly share their road.
        if (roads.Count == 0 || !Fits(last))
        {
            last = Enumerable.Range(0, roads.Count).FirstOrDefault(Fits, roads.Count);
            if (last == roads.Count)
            {
                roads.Add(new(request, clock, road));
                asked.Add(own);
                runs.Add([]);
            }
        }

        runs[last].Add(k);

        bool Fits(int t) => roads[t].IsLike(request.Speed, clock, road)
            && own.Zip(asked[t]).All(q => q.First.From == q.Second.From && q.First.To == q.Second.To);
    }

    /// <summary>Takes away the runs of roads with fewer than so many, and those for whose roads there is no room.</summary>
    public List<int> TakeLonely(int least, long most)
    {
        var taken = new List<int>();
        var room = 0L;
        for (var t = 0; t < runs.Count; t++)
        {
            room += roads[t].Steps;
            if (runs[t].Count < least || room > most)
            {
                taken.AddRange(runs[t]);
                runs[t].Clear();
            }
        }

        return taken;
    }

    /// <summary>All runs with their roads, sorted by road, in so many parts or fewer.</summary>
    public IReadOnlyList<IReadOnlyList<(int Table, int Run)>> Parts(int count)
    {
        var all = runs.SelectMany((some, table) => some.Select(run => (table, run))).ToArray();
        return all.Length == 0 ? [] : [.. all.Chunk((all.Length + count - 1) / count)];
    }

    private static bool IsFurther(PassGroup group, int k) => group.Requests[k].Model.Numbers.Slots.Needs != 0;
}
