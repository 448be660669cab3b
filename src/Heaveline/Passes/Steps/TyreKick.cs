using Heaveline.Elements.Forces;
using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>What an axle's tyres get where the road jumps beside a step: the share of it that lies on the far side.</summary>
internal static unsafe class TyreKick<T, TSides>
    where T : unmanaged, ILane<T>
    where TSides : unmanaged, ISides<TSides, T>
{
    /// <summary>Adds the changes of force of one jump.</summary>
    /// <param name="axle">The axle.</param>
    /// <param name="near">Heights before the jump; those after it stand four places on.</param>
    /// <param name="share">Share of the step on the far side.</param>
    /// <param name="kick">Both wheels' changes of force.</param>
    public static void Add(AxleBlock<T, TSides>* axle, T* near, T* share, T* kick)
    {
        var n = &axle->State;
        var c = &axle->Numbers;
        var far = near + 4;
        var still = T.Of(0.0);
        var left = new TyreLaw<T> { Rate = c->TyreRate.L, Damping = c->TyreDamping.L, Unload = c->Unload.L };
        var right = new TyreLaw<T> { Rate = c->TyreRate.R, Damping = c->TyreDamping.R, Unload = c->Unload.R };
        kick[0] += share[0] * (left.Change(far[0] - n->UL, still - n->WL) - left.Change(near[0] - n->UL, still - n->WL));
        kick[1] += share[1] * (right.Change(far[1] - n->UR, still - n->WR) - right.Change(near[1] - n->UR, still - n->WR));
    }

    /// <summary>Moves the wheels by it: the step is linear in its own acceleration, so what that lacked is added after it.</summary>
    /// <param name="axle">The axle.</param>
    /// <param name="rule">The step.</param>
    /// <param name="past">This step's accelerations.</param>
    /// <param name="kick">Both wheels' changes of force.</param>
    public static void Move(AxleBlock<T, TSides>* axle, AdamsRule<T>* rule, PairPast<T>* past, T* kick)
    {
        var n = &axle->State;
        var c = &axle->Numbers;
        var left = T.Fma(c->AcrossAxle.L, kick[1], c->PerWheel.L * kick[0]);
        var right = T.Fma(c->AcrossAxle.R, kick[0], c->PerWheel.R * kick[1]);
        past->L += left;
        past->R += right;
        n->UL = T.Fma(rule->X0, left, n->UL);
        n->UR = T.Fma(rule->X0, right, n->UR);
        n->WL = T.Fma(rule->V0, left, n->WL);
        n->WR = T.Fma(rule->V0, right, n->WR);
    }
}
