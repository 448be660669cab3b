using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes.Steps;

namespace Heaveline.Recording;

/// <summary>Records a step of a car by the lines that step it: the stepper itself, on lanes that note what is done to them.</summary>
internal static unsafe class StepRecording
{
    /// <summary>The step of one car, its axles side by side.</summary>
    public static StepRecord Of(RideNumbers car)
    {
        var plan = BlockPlan.Of([car]);
        return plan.SidesAlike
            ? Of<Alike<Lane128>, Alike<RecordLane>>(plan, car)
            : Of<Apart<Lane128>, Apart<RecordLane>>(plan, car);
    }

    private static StepRecord Of<TNumbers, TCells>(BlockPlan plan, RideNumbers car)
        where TNumbers : unmanaged, ISides<TNumbers, Lane128>
        where TCells : unmanaged, ISides<TCells, RecordLane>
    {
        using var numbers = new BlockSet<Lane128, TNumbers>(plan, 1);
        BlockPacking<Lane128, TNumbers>.Write(numbers, car);
        Lane128[] values = [.. numbers.Axle, .. numbers.Further, .. numbers.BodyNumbers, .. numbers.LinkNumbers];
        using var cells = new BlockSet<RecordLane, TCells>(plan, 1);

        // First every number is taken for one that a step may change: which it does change is seen from that.
        var trial = new StepCells<TCells>(cells, new Record());
        trial.Run([.. values.Select((_, i) => (Func<Record, int>)(record => record.Source(Operation.State, i)))]);
        var changes = trial.Changed;

        var given = new List<(double, double)> { (1.0, 1.0) };
        var states = 0;
        var final = new StepCells<TCells>(cells, new Record());
        final.Run([.. values.Select((value, i) => (Func<Record, int>)(record =>
        {
            if (changes[i])
            {
                return record.Source(Operation.State, states++);
            }

            var (front, rear) = (Record.At(value, 0), Record.At(value, 1));
            if (front == rear && front is 0.0 or 1.0 or -1.0)
            {
                return record.Constant(front, rear);
            }

            given.Add((front, rear));
            return record.Source(Operation.Given, given.Count - 1);
        }))]);
        return new StepRecord(final.Record, [.. final.States()], final.Sample, given);
    }
}
