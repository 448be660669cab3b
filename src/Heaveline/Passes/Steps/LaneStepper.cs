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

    // A line of the cache; and where in one the stack is to begin: of four places the best for solid axles, whose forces spill most (2026-11-28).
    private const int Line = 64;
    private const int Least = 16;

    private const int Ring = BlockSet<T, TSides>.Ring;

    private readonly BlockSet<T, TSides> set;
    private readonly AxleBlock<T, TSides>* front;
    private readonly AxleBlock<T, TSides>* rear;
    private readonly BodyBlock<T>* body;
    private readonly AdamsRule<T>* rule;
    private readonly KinksBehind<T, TSides> frontKinks;
    private readonly BothAxles<T, TSides> both;
    private readonly bool further;
    private readonly bool plain;
    private readonly bool stops;
    private readonly bool rubs;
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
        frontKinks = new(front, set.Plan.Kinks);
        both = new(set);
        further = set.Plan.IsFurther;
        (stops, rubs) = ((set.Plan.Needs & Needs.CurvedStop) != 0, (set.Plan.Needs & Needs.Friction) != 0);
        flows = (set.Plan.Needs & Needs.FluidLink) != 0;
        plain = set.Plan.IsPlain;
        resists = (set.Plan.Needs & Needs.ResistiveLine) != 0;
        samplesBetweenLooks = Math.Max(1, StepsBetweenLooks / perOutput);
        *rule = AdamsRule<T>.Of(T.Of(step));
    }

    public override void Run(RoadSteps<TSample> road, int outputs, Span<TSample> samples, CancellationToken cancellation = default) =>
        Run(null, road, outputs, samples, default, cancellation);

    public override void RunBeside(
        BlockStepper<TSample> other,
        RoadSteps<TSample> road,
        int outputs,
        Span<TSample> samples,
        Span<TSample> others,
        CancellationToken cancellation = default)
    {
        if (other is LaneStepper<T, TSample, TSides, TEnds> beside && plain && beside.plain && TEnds.Blocks == 2
            && (beside.perOutput, beside.steps, beside.left) == (perOutput, steps, left) && !road.Shared.IsEmpty && road.Jumps.IsEmpty)
        {
            Run(beside, road, outputs, samples, others, cancellation);
            return;
        }

        Run(road, outputs, samples, cancellation);
        other.Run(road, outputs, others, cancellation);
    }

    // What spills over from the registers stands in the stack, which the runtime keeps to 16 bytes: where in a line it begins would be luck.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private void Run(
        LaneStepper<T, TSample, TSides, TEnds>? beside,
        RoadSteps<TSample> road,
        int outputs,
        Span<TSample> samples,
        Span<TSample> others,
        CancellationToken cancellation)
    {
        var here = stackalloc byte[Least];
        var room = stackalloc byte[Line + (int)(((nuint)here - Least) % Line)];
        *room = 0;
        Steps(beside, road, outputs, samples, others, cancellation);
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private void Steps(
        LaneStepper<T, TSample, TSides, TEnds>? beside,
        RoadSteps<TSample> road,
        int outputs,
        Span<TSample> samples,
        Span<TSample> others,
        CancellationToken cancellation)
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
        fixed (TSample* other = others[..(outputs * (beside?.channels ?? 0))])
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
                        // The recorded step alone, then all until the next.
                        var run = n == 0 ? 1 : perOutput - n;
                        if (n == 0)
                        {
                            Before(sample + (k * channels));
                            beside?.Before(other + (k * beside.channels));
                        }

                        for (var end = at + run; at < end;)
                        {
                            var inside = (uint)at < moving;
                            var below = inside ? shared + (PerStep * at) : at < 0 ? before : after;
                            var until = at < 0 ? Math.Min(0, end) : inside ? Math.Min((int)moving, end) : end;
                            if (plain)
                            {
                                at += Several(beside, below, inside ? PerStep : 0, until - at);
                            }
                            else
                            {
                                Step(below);
                                at++;
                            }
                        }

                        if (n == 0)
                        {
                            After(sample + (k * channels));
                            beside?.After(other + (k * beside.channels));
                        }

                        n += run - 1;
                        at--;
                        continue;
                    }

                    var under = (uint)at >= moving ? TEnds.Road(at < 0 ? levels : levels + 2, set.Room)
                        : shared == null ? TEnds.Road(table + (2 * at), set.Room)
                        : TEnds.Road(shared + (PerStep * at), set.Room);
                    var met = 0;
                    while (met < jumps.Length && jumps[met].At == at + road.First)
                    {
                        met++;
                    }

                    if (met > 0)
                    {
                        Jump(under, n == 0 ? sample + (k * channels) : null, jumps[..met]);
                        jumps = jumps[met..];
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
        if (beside is not null)
        {
            beside.steps = steps;
        }
    }

    public override void Dispose() => set.Dispose();

    // As many steps of the wanted ones as the ring has room for.
    private int Several(LaneStepper<T, TSample, TSides, TEnds>? beside, double* below, int apart, int wanted)
    {
        if (left == 0)
        {
            Wrap();
            beside?.Wrap();
        }

        var here = Math.Min(wanted, left);
        if (beside is null)
        {
            both.Run(below, apart, here, left);
        }
        else
        {
            both.Run(in beside.both, below, apart, here, left);
            beside.left -= here;
        }

        left -= here;
        return here;
    }

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
        if (further && !plain)
        {
            FurtherStep<T, TSample, TSides, TEnds>.Add(set);
        }

        if (TEnds.Blocks == 1)
        {
            if (rubs && plain)
            {
                FurtherForces<T>.Friction(&front->State, body, set.FrontFurther);
            }

            ref var past = ref *(PairHistory<T>*)(set.FrontPast + left);
            if (stops && plain)
            {
                AxleStep<T, TSides>.Push(ref *front, in frontKinks, in *body);
                FurtherForces<T>.AddStops(&front->State, body, set.FrontFurther);
                AxleStep<T, TSides>.Move(ref *front, frontKinks.Solid, in *rule, in underFront, ref past);
            }
            else
            {
                AxleStep<T, TSides>.Run(ref *front, in frontKinks, in *body, in *rule, in underFront, ref past);
            }

            BodyStep<T, TSample, TEnds>.Run(body, &front->State, &rear->State, rule, set.BodyPast + left);
        }
        else
        {
            both.Push();
            both.Move(underFront, underRear, left);
        }

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

    private void Before(TSample* sample) => BlockSample<T, TSample, TSides, TEnds>.Before(set, channels, sample);

    private void After(TSample* sample) => BlockSample<T, TSample, TSides, TEnds>.After(set, channels, left, resists, sample);

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
