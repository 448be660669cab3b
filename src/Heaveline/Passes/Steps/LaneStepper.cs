using Heaveline.Models;
using System.Runtime.CompilerServices;
using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>The stepper of blocks of one make.</summary>
internal sealed unsafe class LaneStepper<T, TSample, TSides, TEnds> : BlockStepper<TSample>
    where T : unmanaged, ILane<T>
    where TSample : unmanaged, ILane<TSample>
    where TSides : unmanaged, ISides<TSides, T>
    where TEnds : IEnds<T, TSample>
{
    // Heights and rates under four wheels.
    private const int PerStep = 8;

    // Whoever stops a run waits for so many steps at most, a few milliseconds.
    private const int StepsBetweenLooks = 16_384;

    private const int Ring = BlockSet<T, TSides>.Ring;

    private readonly BlockSet<T, TSides> set;
    private readonly AxleBlock<T, TSides>* front;
    private readonly AxleBlock<T, TSides>* rear;
    private readonly BodyBlock<T>* body;
    private readonly AdamsRule<T>* rule;
    private readonly KinksBehind<T, TSides> frontKinks;
    private readonly KinksBehind<T, TSides> rearKinks;
    private readonly bool further;
    private readonly bool stops;
    private readonly bool rubs;
    private readonly bool onlyStopsAndFriction;
    private readonly bool flows;
    private readonly bool resists;
    private readonly int perOutput;
    private readonly int channels;
    private readonly int samplesBetweenLooks;

    // Steps that are left until the ring's lower end.
    private int left = Ring;
    private int steps;
    private int jumped;

    /// <param name="set">The cars, written.</param>
    /// <param name="perOutput">Steps from one recorded sample to the next.</param>
    /// <param name="step">Step, s.</param>
    /// <param name="channels">How much is recorded: one of the lengths that <see cref="Channel"/> names.</param>
    public LaneStepper(BlockSet<T, TSides> set, int perOutput, double step, int channels)
    {
        (this.set, this.perOutput, this.channels) = (set, perOutput, channels);
        front = set.Front;
        rear = set.Rear;
        body = set.Body;
        rule = set.Rule;
        (frontKinks, rearKinks) = (new(front, set.Plan.Kinks), new(rear, set.Plan.Kinks));
        further = set.Plan.IsFurther;
        (stops, rubs) = ((set.Plan.Needs & Needs.CurvedStop) != 0, (set.Plan.Needs & Needs.Friction) != 0);
        onlyStopsAndFriction = further && !set.Plan.IsShaped && (set.Plan.Needs & (Needs.ElasticLink | Needs.FluidLink)) == 0;
        flows = (set.Plan.Needs & Needs.FluidLink) != 0;
        resists = (set.Plan.Needs & Needs.ResistiveLine) != 0;
        samplesBetweenLooks = Math.Max(1, StepsBetweenLooks / perOutput);
        *rule = AdamsRule<T>.Of(T.Of(step));
    }

    public override void Run(RoadSteps<TSample> road, int outputs, Span<TSample> samples, CancellationToken cancellation = default)
    {
        var at = steps - road.First;
        var jumps = road.Jumps[jumped..];
        // Levels before and after the table, with rates of zero.
        var levels = stackalloc Quad<TSample>[4];
        (levels[0], levels[1], levels[2], levels[3]) = (road.Before, road.Still, road.After, road.Still);
        var before = stackalloc double[PerStep];
        var after = stackalloc double[PerStep];
        new Span<double>(before, PerStep).Clear();
        new Span<double>(after, PerStep).Clear();
        for (var i = 0; i < 4 && !road.Shared.IsEmpty; i++)
        {
            after[i] = LaneLayout<TSample>.At((TSample*)(levels + 2) + i, 0);
        }

        fixed (Quad<TSample>* table = road.Moving)
        fixed (double* shared = road.Shared)
        fixed (TSample* sample = samples[..(outputs * channels)])
        {
            var moving = (uint)(shared == null ? road.Moving.Length / 2 : road.Shared.Length / PerStep);
            for (var k = 0; k < outputs; k++)
            {
                if (k % samplesBetweenLooks == 0)
                {
                    cancellation.ThrowIfCancellationRequested();
                }

                for (var n = 0; n < perOutput; n++, at++)
                {
                    if (TEnds.Blocks == 2 && shared != null && jumps.IsEmpty)
                    {
                        var below = at < 0 ? before : (uint)at < moving ? shared + (PerStep * at) : after;
                        if (n == 0)
                        {
                            Before(sample + (k * channels));
                            Step(below);
                            After(sample + (k * channels));
                        }
                        else
                        {
                            Step(below);
                        }

                        continue;
                    }

                    var under = (uint)at >= moving ? TEnds.Road(at < 0 ? levels : levels + 2, set.Room)
                        : shared == null ? TEnds.Road(table + (2 * at), set.Room)
                        : TEnds.Road(shared + (PerStep * at), set.Room);
                    var here = 0;
                    while (here < jumps.Length && jumps[here].At == at + road.First)
                    {
                        here++;
                    }

                    if (here > 0)
                    {
                        Jump(under, n == 0 ? sample + (k * channels) : null, jumps[..here]);
                        jumps = jumps[here..];
                    }
                    else if (n == 0)
                    {
                        Recorded(under, sample + (k * channels));
                    }
                    else
                    {
                        Step(under);
                    }
                }
            }
        }

        steps = at + road.First;
        jumped = road.Jumps.Length - jumps.Length;
    }

    public override void Dispose() => set.Dispose();

    private void Step(double* below)
    {
        var (underFront, underRear) = (new RoadBelow<T>(below), new RoadBelow<T>(below + 2));
        Step(in underFront, in underRear);
    }

    private void Step(T* road) => Step(in *(RoadUnder<T>*)road, in *(RoadUnder<T>*)(road + 2));

    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private void Step<TRoad>(in TRoad underFront, in TRoad underRear)
        where TRoad : struct, IRoadUnder<T>
    {
        if (left == 0)
        {
            Wrap();
        }

        left--;
        if (onlyStopsAndFriction)
        {
            if (TEnds.Blocks == 2)
            {
                FurtherForces<T>.StopsAndFriction(&front->State, &rear->State, body, set.FrontFurther, set.RearFurther, stops, rubs);
            }
            else
            {
                FurtherForces<T>.StopsAndFriction(&front->State, body, set.FrontFurther, stops, rubs);
            }
        }
        else if (further)
        {
            Further();
        }

        var frontPast = (PairHistory<T>*)(set.FrontPast + left);
        var rearPast = (PairHistory<T>*)(set.RearPast + left);
        if (TEnds.Blocks == 1)
        {
            AxleStep<T, TSides>.Run(ref *front, in frontKinks, in *body, in *rule, in underFront, ref *frontPast);
        }
        else
        {
            AxleStep<T, TSides>.Run(
                ref *front, ref *rear, in frontKinks, in rearKinks, in *body, in *rule, in underFront, in underRear, ref *frontPast, ref *rearPast);
        }

        BodyStep<T, TSample, TEnds>.Run(body, &front->State, &rear->State, rule, set.BodyPast + left);
        if (flows)
        {
            BetweenAxles<T, TSample, TEnds>.Flow(set.Link, rule, set.LinkPast + left, resists);
        }
    }

    private void Recorded(T* road, TSample* sample)
    {
        Before(sample);
        Step(road);
        After(sample);
    }

    // A step beside which the road jumps.
    private void Jump(T* road, TSample* sample, ReadOnlySpan<RoadJump<TSample>> jumps)
    {
        // A number a corner.
        var kick = stackalloc T[4];
        Kick(jumps, kick);
        if (sample != null)
        {
            Recorded(road, sample);
        }
        else
        {
            Step(road);
        }

        TyreKick<T, TSides>.Move(front, rule, set.FrontPast + left, kick);
        if (TEnds.Blocks == 2)
        {
            TyreKick<T, TSides>.Move(rear, rule, set.RearPast + left, kick + 2);
        }
    }

    // The accelerations of the last three steps move to the upper end of the ring again.
    private void Wrap()
    {
        for (var i = 2; i >= 0; i--)
        {
            set.FrontPast[Ring + i] = set.FrontPast[i];
            set.RearPast[Ring + i] = set.RearPast[i];
            set.BodyPast[Ring + i] = set.BodyPast[i];
            set.LinkPast[Ring + i] = set.LinkPast[i];
        }

        left = Ring;
    }

    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private void Further()
    {
        var needs = set.Plan.Needs;
        Further(&set.Front->State, set.FrontFurther);
        if (TEnds.Blocks == 2)
        {
            Further(&set.Rear->State, set.RearFurther);
        }

        if ((needs & Needs.ElasticLink) != 0)
        {
            BetweenAxles<T, TSample, TEnds>.Elastic(
                &set.Front->State, &set.Rear->State, set.FrontFurther, set.RearFurther, set.Link, (needs & Needs.FluidGas) != 0);
        }
        else if ((needs & Needs.FluidLink) != 0)
        {
            BetweenAxles<T, TSample, TEnds>.Fluid(
                &set.Front->State,
                &set.Rear->State,
                set.FrontFurther,
                set.RearFurther,
                set.Link,
                (needs & Needs.FluidGas) != 0,
                (needs & Needs.ResistiveLine) != 0);
        }
    }

    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private void Further(AxleState<T>* axle, FurtherBlock<T>* elements)
    {
        var needs = set.Plan.Needs;
        FurtherForces<T>.Begin(axle, set.Body, elements);
        if (set.Plan.IsShaped)
        {
            FurtherForces<T>.Shaped(axle, elements, set.Plan.Shaped);
        }
        else if ((needs & Needs.CurvedStop) != 0)
        {
            FurtherForces<T>.Stops(axle, elements);
        }

        if ((needs & Needs.Friction) != 0)
        {
            FurtherForces<T>.Friction(axle, elements);
        }
    }

    // Positions and rates as they are before the step.
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private void Before(TSample* sample)
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
            FlowRates(sample);
        }
    }

    private void FlowRates(TSample* sample)
    {
        TEnds.Record(sample + Channel.Rates + Channel.Flow, set.Link->FlowRateL);
        TEnds.Record(sample + Channel.Rates + Channel.Flow + 1, set.Link->FlowRateR);
    }

    // Accelerations and forces, which the step works out.
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private void After(TSample* sample)
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
                FlowRates(sample);
            }
        }
    }

    // What the tyres' jumps give the wheels on their far sides, by their shares of this step: changes of force.
    private void Kick(ReadOnlySpan<RoadJump<TSample>> jumps, T* kick)
    {
        var heights = stackalloc Quad<TSample>[2];
        var shares = stackalloc Quad<TSample>[2];
        T* heightRoom = stackalloc T[8];
        T* shareRoom = stackalloc T[8];
        new Span<T>(kick, 4).Clear();
        foreach (var jump in jumps)
        {
            (heights[0], heights[1]) = (jump.Near, jump.Far);
            (shares[0], shares[1]) = (jump.Share, jump.Share);
            var height = TEnds.Road(heights, heightRoom);
            var share = TEnds.Road(shares, shareRoom);
            TyreKick<T, TSides>.Add(set.Front, height, share, kick);
            if (TEnds.Blocks == 2)
            {
                TyreKick<T, TSides>.Add(set.Rear, height + 2, share + 2, kick + 2);
            }
        }
    }
}
