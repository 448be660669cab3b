using System.Runtime.CompilerServices;
using Heaveline.Elements.Forces;
using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>
/// One step of an axle: the travel of its wheels under the body, the forces of its plain elements and tyres, the wheels' accelerations and where
/// they are a step on. Every number is read once and what comes out is written last: in between the compiler may keep all in registers.
/// </summary>
internal static unsafe class AxleStep<T, TSides>
    where T : unmanaged, ILane<T>
    where TSides : unmanaged, ISides<TSides, T>
{
    /// <param name="block">The axle, with its kinks behind.</param>
    /// <param name="body">The body, at the same step.</param>
    /// <param name="rule">The step.</param>
    /// <param name="road">Heights under both wheels; their rates stand four places on.</param>
    /// <param name="past">Takes this step's accelerations; those of the last three steps follow.</param>
    /// <param name="kinks">What follows the block.</param>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public static void Run(AxleBlock<T, TSides>* block, BodyBlock<T>* body, AdamsRule<T>* rule, T* road, PairPast<T>* past, in KinkCount kinks)
    {
        var n = &block->State;
        var c = &block->Numbers;
        var negX = n->NegX;
        var height = T.Fma(negX, body->Theta, body->Z);
        var rise = T.Fma(negX, body->ThetaRate, body->ZRate);
        var (phi, phiRate) = (body->Phi, body->PhiRate);
        var (negYL, negYR) = (n->NegYL, n->NegYR);
        var (uL, uR, wL, wR) = (n->UL, n->UR, n->WL, n->WR);
        var sL = T.Fma(negYL, phi, uL - height);
        var sR = T.Fma(negYR, phi, uR - height);
        var vL = T.Fma(negYL, phiRate, wL - rise);
        var vR = T.Fma(negYR, phiRate, wR - rise);
        var (rate, cross, damping) = (c->Rate, c->Cross, c->Damping);
        var fL = T.Fma(rate.L, sL, n->StartL);
        var fR = T.Fma(rate.R, sR, n->StartR);
        // A second sum beside the first, so that neither waits for its own last addition.
        var gL = T.Fma(cross.L, sR, damping.L * vL);
        var gR = T.Fma(cross.R, sL, damping.R * vR);
        var d = (KinkPair<T, Alike<T>>*)(block + 1);
        var end = d + kinks.Dampers;
        for (; d < end - 1; d += 2)
        {
            var (at, bend) = (d[0].At, d[0].Bend);
            fL = T.Fma(bend.L, T.Max(vL, at.L), fL);
            fR = T.Fma(bend.R, T.Max(vR, at.R), fR);
            (at, bend) = (d[1].At, d[1].Bend);
            gL = T.Fma(bend.L, T.Max(vL, at.L), gL);
            gR = T.Fma(bend.R, T.Max(vR, at.R), gR);
        }

        if (d < end)
        {
            var (at, bend) = (d->At, d->Bend);
            fL = T.Fma(bend.L, T.Max(vL, at.L), fL);
            fR = T.Fma(bend.R, T.Max(vR, at.R), fR);
            d++;
        }

        var p = (KinkPair<T, TSides>*)d;
        for (var last = p + kinks.Above; p < last; p++)
        {
            var (at, bend) = (p->At, p->Bend);
            gL = T.Fma(bend.L, T.Max(sL, at.L), gL);
            gR = T.Fma(bend.R, T.Max(sR, at.R), gR);
        }

        for (var last = p + kinks.Below; p < last; p++)
        {
            var (at, bend) = (p->At, p->Bend);
            fL = T.Fma(bend.L, T.Min(sL, at.L), fL);
            fR = T.Fma(bend.R, T.Min(sR, at.R), fR);
        }

        fL += gL;
        fR += gR;
        var (tyreRate, tyreDamping, unload) = (c->TyreRate, c->TyreDamping, c->Unload);
        var tL = new TyreLaw<T> { Rate = tyreRate.L, Damping = tyreDamping.L, Unload = unload.L }.Change(road[0] - uL, road[4] - wL);
        var tR = new TyreLaw<T> { Rate = tyreRate.R, Damping = tyreDamping.R, Unload = unload.R }.Change(road[1] - uR, road[5] - wR);
        var (netL, netR) = (tL - fL, tR - fR);
        var perWheel = c->PerWheel;
        var (aL, aR) = (perWheel.L * netL, perWheel.R * netR);
        if (kinks.Solid)
        {
            var across = c->AcrossAxle;
            aL = T.Fma(across.L, netR, aL);
            aR = T.Fma(across.R, netL, aR);
        }

        n->FL = fL;
        n->FR = fR;
        n->TyreL = tL;
        n->TyreR = tR;
        past[0].L = aL;
        past[0].R = aR;
        var adams = *rule;
        var (l1, r1, l2, r2, l3, r3) = (past[1].L, past[1].R, past[2].L, past[2].R, past[3].L, past[3].R);
        uL = adams.Place(uL, wL, aL, l1, l2, l3);
        uR = adams.Place(uR, wR, aR, r1, r2, r3);
        wL = adams.Rate(wL, aL, l1, l2, l3);
        wR = adams.Rate(wR, aR, r1, r2, r3);
        n->UL = uL;
        n->UR = uR;
        n->WL = wL;
        n->WR = wR;
    }
}
