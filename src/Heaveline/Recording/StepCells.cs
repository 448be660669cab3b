using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Passes.Steps;

namespace Heaveline.Recording;

/// <summary>The numbers of one car's blocks as lines of a record, before and after one step.</summary>
/// <param name="set">The blocks.</param>
/// <param name="record">Where the step is noted.</param>
internal sealed unsafe class StepCells<TCells>(BlockSet<RecordLane, TCells> set, Record record)
    where TCells : unmanaged, ISides<TCells, RecordLane>
{
    private const int Ring = BlockSet<RecordLane, TCells>.Ring;
    private const int Steps = 3;

    private int[] before = [];
    private int[] after = [];
    private int[] pastBefore = [];
    private int[] pastAfter = [];

    /// <summary>Where the step is noted.</summary>
    public Record Record { get; } = record;

    /// <summary>What is recorded of the moment before the step, and of what the step works out.</summary>
    public int[] Sample { get; } = new int[Channel.Count];

    /// <summary>Which of the blocks' numbers the step changes.</summary>
    public IReadOnlyList<bool> Changes => [.. before.Zip(after, (was, became) => was != became)];

    private RecordLane[] Numbers => [.. set.Axle, .. set.Further, .. set.BodyNumbers, .. set.LinkNumbers];

    /// <summary>Notes one step.</summary>
    /// <param name="pack">Writes the car's numbers into the blocks.</param>
    /// <param name="isState">Which numbers of the blocks are the state before the step.</param>
    public void Run(Action? pack, Func<int, bool> isState)
    {
        using var writing = Record.Begin();
        Clear();
        pack?.Invoke();
        before = [.. Numbers.Select((lane, i) => isState(i) ? Record.Source(Operation.State, i) : lane.Line)];
        var at = 0;
        Put(set.Axle, before, ref at);
        Put(set.Further, before, ref at);
        Put(set.BodyNumbers, before, ref at);
        Put(set.LinkNumbers, before, ref at);
        // What the last three steps left, behind the numbers themselves.
        pastBefore = [.. Enumerable.Range(0, Past().Count).Select(i => Record.Source(Operation.State, before.Length + i))];
        PutPast(pastBefore);
        var stepper = new LaneStepper<RecordLane, RecordLane, TCells, RecordEnds>(set, 1, 1.0, Channel.Count);
        *set.Rule = AdamsRule<RecordLane>.Of(new(Record.Source(Operation.Given, LiveGiven.Step)));
        RecordLane Road(int k) => new(Record.Source(Operation.Road, k));
        Quad<RecordLane>[] road = [Quad<RecordLane>.Of(Road(0), Road(1), default, default), Quad<RecordLane>.Of(Road(2), Road(3), default, default)];
        var sample = new RecordLane[Channel.Count];
        stepper.Run(new(0, road, default), 1, sample);
        after = [.. Numbers.Select(lane => lane.Line)];
        pastAfter = [.. Past(-1).Select(lane => lane.Line)];
        for (var i = 0; i < sample.Length; i++)
        {
            Sample[i] = sample[i].Line;
        }
    }

    /// <summary>The state and what it is a step on.</summary>
    public IEnumerable<(int Now, int Next)> States()
    {
        for (var i = 0; i < before.Length; i++)
        {
            if (before[i] != after[i])
            {
                yield return (before[i], after[i]);
            }
        }

        for (var i = 0; i < pastBefore.Length; i++)
        {
            yield return (pastBefore[i], pastAfter[i]);
        }
    }

    private void Clear()
    {
        set.Axle.Clear();
        set.Further.Clear();
        set.BodyNumbers.Clear();
        set.LinkNumbers.Clear();
    }

    private static void Put(Span<RecordLane> to, int[] from, ref int at)
    {
        for (var i = 0; i < to.Length; i++)
        {
            to[i] = new(from[at++]);
        }
    }

    // Accelerations of axle, body and lines, the newest of the three first; a place nearer the ring's lower end after a step.
    private List<RecordLane> Past(int shift = 0)
    {
        var past = new List<RecordLane>();
        for (var k = Ring + shift; k < Ring + shift + Steps; k++)
        {
            var (axle, body, link) = (set.FrontPast[k], set.BodyPast[k], set.LinkPast[k]);
            past.AddRange([axle.L, axle.R, body.Z, body.Theta, body.Phi, link.L, link.R]);
        }

        return past;
    }

    private void PutPast(int[] lines)
    {
        for (var (k, at) = (Ring, 0); k < Ring + Steps; k++)
        {
            RecordLane Next() => new(lines[at++]);
            set.FrontPast[k] = new() { L = Next(), R = Next() };
            set.BodyPast[k] = new() { Z = Next(), Theta = Next(), Phi = Next() };
            set.LinkPast[k] = new() { L = Next(), R = Next() };
        }
    }
}
