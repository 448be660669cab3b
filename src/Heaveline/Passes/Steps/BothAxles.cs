using System.Runtime.CompilerServices;
using Heaveline.Elements.Forces;
using Heaveline.Models;
using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>
/// One step of cars side by side with a block for each axle, in two parts: the suspension's forces of both axles, whose sums over kinks run beside
/// each other, and then tyres, accelerations and where everything is a step on, for which the step's numbers are read once. In one part it would be
/// more than the compiler puts in line.
/// </summary>
/// <param name="set">The cars.</param>
internal readonly unsafe struct BothAxles<T, TSides>(BlockSet<T, TSides> set)
    where T : unmanaged, ILane<T>
    where TSides : unmanaged, ISides<TSides, T>
{
    private readonly AxleBlock<T, TSides>* front = set.Front;
    private readonly AxleBlock<T, TSides>* rear = set.Rear;
    private readonly BodyBlock<T>* body = set.Body;
    private readonly AdamsRule<T>* rule = set.Rule;
    private readonly PairPast<T>* frontPast = set.FrontPast;
    private readonly PairPast<T>* rearPast = set.RearPast;
    private readonly BodyPast<T>* bodyPast = set.BodyPast;
    private readonly FurtherBlock<T>* frontFurther = set.FrontFurther;
    private readonly FurtherBlock<T>* rearFurther = set.RearFurther;
    private readonly KinksBehind<T, TSides> frontKinks = new(set.Front, set.Plan.Kinks);
    private readonly KinksBehind<T, TSides> rearKinks = new(set.Rear, set.Plan.Kinks);
    private readonly bool stops = set.Plan.IsPlain && (set.Plan.Needs & Needs.CurvedStop) != 0;
    private readonly bool rubs = set.Plan.IsPlain && (set.Plan.Needs & Needs.Friction) != 0;

    /// <summary>Several steps over a road that all cars share.</summary>
    /// <param name="below">Heights and rates under the wheels.</param>
    /// <param name="apart">Numbers from one step's road to the next; none where the road is level.</param>
    /// <param name="steps">How many steps.</param>
    /// <param name="left">Place of the last step in the ring; each step goes one down.</param>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public void Run(double* below, int apart, int steps, int left)
    {
        for (; steps > 0; steps--, below += apart)
        {
            left--;
            Push();
            Move(new RoadBelow<T>(below), new RoadBelow<T>(below + 2), left);
        }
    }

    /// <summary>The same of others beside them: while one waits for its forces the other goes on.</summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public void Run(in BothAxles<T, TSides> other, double* below, int apart, int steps, int left)
    {
        for (; steps > 0; steps--, below += apart)
        {
            left--;
            Push();
            other.Push();
            Move(new RoadBelow<T>(below), new RoadBelow<T>(below + 2), left);
            other.Move(new RoadBelow<T>(below), new RoadBelow<T>(below + 2), left);
        }
    }

    /// <summary>Forces of springs, dampers, stops, bars and friction, about trim.</summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public void Push()
    {
        AxleStep<T, TSides>.Travel(in front->State, in *body, out var sFL, out var sFR, out var vFL, out var vFR);
        AxleStep<T, TSides>.Travel(in rear->State, in *body, out var sRL, out var sRR, out var vRL, out var vRR);
        var touched = stops && T.AnyAbove(
            T.Max(FurtherForces<T>.Reach(in *frontFurther, sFL, sFR), FurtherForces<T>.Reach(in *rearFurther, sRL, sRR)), T.Of(StopLaw<T>.Least));
        var (fromFL, fromFR, fromRL, fromRR) = (front->State.StartL, front->State.StartR, rear->State.StartL, rear->State.StartR);
        if (rubs)
        {
            FurtherForces<T>.Rub(ref *frontFurther, sFL, sFR, ref fromFL, ref fromFR);
            FurtherForces<T>.Rub(ref *rearFurther, sRL, sRR, ref fromRL, ref fromRR);
        }

        AxleStep<T, TSides>.Straight(
            in front->Numbers, fromFL, fromFR, sFL, sFR, vFL, vFR, out var fFL, out var fFR, out var gFL, out var gFR);
        AxleStep<T, TSides>.Straight(
            in rear->Numbers, fromRL, fromRR, sRL, sRR, vRL, vRR, out var fRL, out var fRR, out var gRL, out var gRR);
        KinksBehind<T, TSides>.Add(
            in frontKinks,
            in rearKinks,
            sFL, sFR, vFL, vFR, ref fFL, ref fFR, ref gFL, ref gFR,
            sRL, sRR, vRL, vRR, ref fRL, ref fRR, ref gRL, ref gRR);
        (front->State.FL, front->State.FR) = (fFL + gFL, fFR + gFR);
        (rear->State.FL, rear->State.FR) = (fRL + gRL, fRR + gRR);
        if (touched)
        {
            // Powers, and seldom: they work the travel out again, so that of what is in registers nothing need outlast this.
            FurtherForces<T>.AddStops(&front->State, body, frontFurther);
            FurtherForces<T>.AddStops(&rear->State, body, rearFurther);
        }
    }

    /// <summary>From the suspension's forces on.</summary>
    /// <param name="underFront">The road under the front wheels.</param>
    /// <param name="underRear">The road under the rear ones.</param>
    /// <param name="left">The step's place in the ring.</param>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public void Move<TRoad>(TRoad underFront, TRoad underRear, int left)
        where TRoad : struct, IRoadUnder<T>
    {
        var adams = *rule;
        var past = bodyPast + left;
        BodyStep<T, T, TwoBlocks<T>>.Run(ref *body, in front->State, in rear->State, in adams, ref past[0], in past[1], in past[2], in past[3]);
        AxleStep<T, TSides>.Move(ref *front, frontKinks.Solid, in adams, in underFront, ref *(PairHistory<T>*)(frontPast + left));
        AxleStep<T, TSides>.Move(ref *rear, frontKinks.Solid, in adams, in underRear, ref *(PairHistory<T>*)(rearPast + left));
    }
}
