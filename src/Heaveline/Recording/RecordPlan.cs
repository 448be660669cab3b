namespace Heaveline.Recording;

/// <summary>What of a record is needed, how often, and what of it does not change from step to step.</summary>
internal sealed class RecordPlan
{
    private readonly Record record;
    private readonly bool[] varies;
    private readonly bool[] forState;

    /// <param name="step">The step.</param>
    public RecordPlan(StepRecord step)
    {
        record = step.Record;
        var count = record.Lines.Count;
        (Uses, varies, forState) = (new int[count], new bool[count], new bool[count]);
        States = Needed(step);
        foreach (var (_, next) in States)
        {
            Uses[next]++;
            forState[next] = true;
        }

        foreach (var line in step.Sample)
        {
            Uses[line]++;
        }

        for (var i = count - 1; i >= 0; i--)
        {
            for (var k = 0; Uses[i] > 0 && k < record.Lines[i].Reads; k++)
            {
                var read = record.Lines[i].Read(k);
                Uses[read]++;
                forState[read] |= forState[i];
            }
        }

        for (var i = 0; i < count; i++)
        {
            var line = record.Lines[i];
            varies[i] = line.Does is Operation.State or Operation.Road;
            for (var k = 0; k < line.Reads; k++)
            {
                varies[i] |= varies[line.Read(k)];
            }
        }

        Ahead = [.. Worked(i => !varies[i])];
        var kept = new bool[count];
        for (var i = 0; i < count; i++)
        {
            for (var k = 0; varies[i] && Uses[i] > 0 && k < record.Lines[i].Reads; k++)
            {
                kept[record.Lines[i].Read(k)] = true;
            }
        }

        Kept = [.. Enumerable.Range(0, count).Where(i => kept[i] && !varies[i] && Uses[i] > 0)];
        EachStep = [.. Worked(i => varies[i] && forState[i])];
        EachSample = [.. Worked(i => varies[i] && !forState[i])];
    }

    /// <summary>The part of the state that anything recorded depends on.</summary>
    public IReadOnlyList<(int Now, int Next)> States { get; }

    /// <summary>How often each line is read.</summary>
    public int[] Uses { get; }

    /// <summary>Lines that are worked out once ahead of a run, in order.</summary>
    public IReadOnlyList<int> Ahead { get; }

    /// <summary>What of them, of constants and of what is given a step itself reads.</summary>
    public IReadOnlyList<int> Kept { get; }

    /// <summary>Lines that the next state needs.</summary>
    public IReadOnlyList<int> EachStep { get; }

    /// <summary>Lines that a recorded sample alone needs.</summary>
    public IReadOnlyList<int> EachSample { get; }

    private IEnumerable<int> Worked(Func<int, bool> which) =>
        Enumerable.Range(0, record.Lines.Count).Where(i => Uses[i] > 0 && !record.Lines[i].IsSource && which(i));

    // A state is needed where a sample, or a needed state a step on, reads it.
    private static List<(int Now, int Next)> Needed(StepRecord step)
    {
        var lines = step.Record.Lines;
        var reached = new bool[lines.Count];
        foreach (var line in step.Sample)
        {
            reached[line] = true;
        }

        var needed = new List<(int Now, int Next)>();
        for (var before = -1; before != needed.Count;)
        {
            before = needed.Count;
            for (var i = lines.Count - 1; i >= 0; i--)
            {
                for (var k = 0; reached[i] && k < lines[i].Reads; k++)
                {
                    reached[lines[i].Read(k)] = true;
                }
            }

            needed = [.. step.States.Where(state => reached[state.Now])];
            foreach (var (_, next) in needed)
            {
                reached[next] = true;
            }
        }

        return needed;
    }
}
