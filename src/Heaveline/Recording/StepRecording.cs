using Heaveline.Models;
using Heaveline.Passes.Steps;

namespace Heaveline.Recording;

/// <summary>
/// Records a step of a car by the lines that step it: the packing and the stepper themselves, on lanes that note what is done to them.
/// </summary>
internal static class StepRecording
{
    /// <summary>The step of one car, its axles side by side, from a trim given from outside.</summary>
    /// <param name="car">The car; how it stands decides whether its sides are alike.</param>
    /// <param name="given">Which of its numbers are given from outside; see <see cref="Record"/>.</param>
    /// <param name="signals">What else is read off every sample.</param>
    public static StepRecord Of(RideNumbers car, Func<int, int?>? given = null, IReadOnlyList<RecordSignal>? signals = null)
    {
        var plan = BlockPlan.Of([car]);
        return plan.SidesAlike ? Of<Alike<RecordLane>>(plan, car, given, signals ?? []) : Of<Apart<RecordLane>>(plan, car, given, signals ?? []);
    }

    /// <summary>The car's numbers in the order in which a record of its step meets them.</summary>
    /// <param name="plan">The blocks' plan.</param>
    /// <param name="car">The car, or one like it.</param>
    /// <param name="signals">What else is read off every sample.</param>
    public static double[] NumbersOf(BlockPlan plan, RideNumbers car, IReadOnlyList<RecordSignal> signals) =>
        plan.SidesAlike ? NumbersOf<Alike<RecordLane>>(plan, car, signals) : NumbersOf<Apart<RecordLane>>(plan, car, signals);

    private static double[] NumbersOf<TCells>(BlockPlan plan, RideNumbers car, IReadOnlyList<RecordSignal> signals)
        where TCells : unmanaged, ISides<TCells, RecordLane>
    {
        using var set = new BlockSet<RecordLane, TCells>(plan, 1);
        return Record.Heard(() =>
        {
            Pack(set, car);
            _ = new DrawnNumbers(car);
            foreach (var signal in signals)
            {
                _ = signal.Shares();
            }
        });
    }

    private static StepRecord Of<TCells>(
        BlockPlan plan, RideNumbers car, Func<int, int?>? given, IReadOnlyList<RecordSignal> signals)
        where TCells : unmanaged, ISides<TCells, RecordLane>
    {
        using var set = new BlockSet<RecordLane, TCells>(plan, 1);
        // First every number is taken for one that a step may change: which it does change is seen from that.
        var trial = new StepCells<TCells>(set, new Record());
        trial.Run(null, _ => true);
        var changes = trial.Changes;
        var cells = new StepCells<TCells>(set, new Record(given));
        DrawnNumbers? drawn = null;
        RecordLane[][] shares = [];
        cells.Run(
            () =>
            {
                Pack(set, car);
                drawn = new DrawnNumbers(car);
                shares = [.. signals.Select(signal => signal.Shares())];
            },
            i => changes[i]);
        using var writing = cells.Record.Begin();
        RecordLane[] sample = [.. cells.Sample.Select(line => new RecordLane(line))];
        return new StepRecord(cells.Record, [.. cells.States()], cells.Sample)
        {
            Draws = Lines([.. drawn!.Of(sample), .. (plan.Needs & Needs.FluidLink) != 0 ? Pressures(set) : []]),
            Signals = Lines([.. signals.Select((signal, i) => signal.Of(shares[i], sample))]),
        };
    }

    private static int[] Lines(RecordLane[] lanes) => Array.ConvertAll(lanes, lane => lane.Line);

    private static void Pack<TCells>(BlockSet<RecordLane, TCells> set, RideNumbers car)
        where TCells : unmanaged, ISides<TCells, RecordLane> =>
        NumberPacking<RecordLane, TCells, RecordLane, RecordPlaces>.Alone(
            set, car, new(Trim(0, 4), Trim(4, 4), Trim(8, 4), [.. Trim(12, 2), .. Trim(12, 2)]));

    private static unsafe RecordLane[] Pressures<TCells>(BlockSet<RecordLane, TCells> set)
        where TCells : unmanaged, ISides<TCells, RecordLane>
    {
        var (left, right) = (set.FrontFurther->L.Pressure, set.FrontFurther->R.Pressure);
        return [RecordLane.First(left), RecordLane.First(right), RecordLane.Second(left), RecordLane.Second(right)];
    }

    private static RecordLane[] Trim(int from, int count) =>
        [.. Enumerable.Range(LiveGiven.Trim + from, count).Select(i => new RecordLane(Record.Writing.Source(Operation.Given, i)))];
}
