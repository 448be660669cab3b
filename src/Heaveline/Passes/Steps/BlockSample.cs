using System.Runtime.CompilerServices;
using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>What a step records of cars side by side, part of it before the step and part after.</summary>
internal static unsafe class BlockSample<T, TSample, TSides, TEnds>
    where T : unmanaged, ILane<T>
    where TSample : unmanaged, ILane<TSample>
    where TSides : unmanaged, ISides<TSides, T>
    where TEnds : IEnds<T, TSample>
{
    /// <summary>Positions and rates as they are before the step.</summary>
    /// <param name="set">The cars.</param>
    /// <param name="channels">How much is recorded.</param>
    /// <param name="sample">Receives it.</param>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public static void Before(BlockSet<T, TSides> set, int channels, TSample* sample)
    {
        var front = &set.Front->State;
        var rear = &set.Rear->State;
        var body = set.Body;
        var link = set.Link;
        TEnds.Record(sample + Channel.Heave, body->Z);
        TEnds.Record(sample + Channel.Pitch, body->Theta);
        TEnds.Record(sample + Channel.Roll, body->Phi);
        TEnds.Record(sample + Channel.Wheel, front->UL, front->UR, rear->UL, rear->UR);
        TEnds.Record(sample + Channel.Flow, link->FlowL);
        TEnds.Record(sample + Channel.Flow + 1, link->FlowR);
        if (channels == Channel.Count)
        {
            TEnds.Record(sample + Channel.Rates + Channel.Heave, body->ZRate);
            TEnds.Record(sample + Channel.Rates + Channel.Pitch, body->ThetaRate);
            TEnds.Record(sample + Channel.Rates + Channel.Roll, body->PhiRate);
            TEnds.Record(sample + Channel.Rates + Channel.Wheel, front->WL, front->WR, rear->WL, rear->WR);
            FlowRates(set, sample);
        }
    }

    private static void FlowRates(BlockSet<T, TSides> set, TSample* sample)
    {
        TEnds.Record(sample + Channel.Rates + Channel.Flow, set.Link->FlowRateL);
        TEnds.Record(sample + Channel.Rates + Channel.Flow + 1, set.Link->FlowRateR);
    }

    /// <summary>Accelerations and forces, which the step works out.</summary>
    /// <param name="set">The cars.</param>
    /// <param name="channels">How much is recorded.</param>
    /// <param name="left">The step's place in the ring.</param>
    /// <param name="resists">Whether lines resist alone: the flow's rate is worked out at the step itself.</param>
    /// <param name="sample">Receives it.</param>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public static void After(BlockSet<T, TSides> set, int channels, int left, bool resists, TSample* sample)
    {
        if (channels < Channel.BodyAccelerations)
        {
            return;
        }

        var body = set.BodyPast + left;
        TEnds.Record(sample + Channel.Accelerations + Channel.Heave, body->Z);
        TEnds.Record(sample + Channel.Accelerations + Channel.Pitch, body->Theta);
        TEnds.Record(sample + Channel.Accelerations + Channel.Roll, body->Phi);
        if (channels < Channel.TyreLoads)
        {
            return;
        }

        var front = &set.Front->State;
        var rear = &set.Rear->State;
        var link = set.Link;
        var f = set.FrontPast + left;
        var r = set.RearPast + left;
        TEnds.Record(sample + Channel.Accelerations + Channel.Wheel, f->L, f->R, r->L, r->R);
        TEnds.Record(sample + Channel.Accelerations + Channel.Flow, link->FlowDotL);
        TEnds.Record(sample + Channel.Accelerations + Channel.Flow + 1, link->FlowDotR);
        TEnds.Record(sample + Channel.Tyre, front->TyreL, front->TyreR, rear->TyreL, rear->TyreR);
        if (channels == Channel.Count)
        {
            TEnds.Record(sample + Channel.Force, front->FL, front->FR, rear->FL, rear->FR);
            if (resists)
            {
                // Worked out at the step itself, from the pressures.
                FlowRates(set, sample);
            }
        }
    }
}
