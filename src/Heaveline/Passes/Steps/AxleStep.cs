using System.Runtime.CompilerServices;
using Heaveline.Elements.Forces;
using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>
/// One step of an axle: the travel of its wheels under the body, the forces of its plain elements and tyres, the wheels' accelerations and where
/// they are a step on. Every number is read once and what comes out is written last: in between the compiler may keep all in registers.
/// </summary>
internal static unsafe class AxleStep<T, TSides, TDampers>
    where T : unmanaged, ILane<T>
    where TSides : unmanaged, ISides<TSides, T>
    where TDampers : unmanaged, ISides<TDampers, T>
{
    /// <param name="block">The axle, with its kinks behind.</param>
    /// <param name="body">The body, at the same step.</param>
    /// <param name="rule">The step.</param>
    /// <param name="road">Heights under both wheels; their rates stand four places on.</param>
    /// <param name="past">Takes this step's accelerations; those of the last three steps follow.</param>
    /// <param name="kinks">What follows the block.</param>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public static void Run(AxleBlock<T, TSides>* block, BodyBlock<T>* body, AdamsRule<T>* rule, T* road, PairPast<T>* past, in KinkCount kinks) =>
        Run(
            ref block->State,
            in block->Numbers,
            new KinksBehind<T, TSides, TDampers>(block, kinks),
            in *body,
            in *rule,
            in road[0],
            in road[1],
            in road[4],
            in road[5],
            ref past[0],
            in past[1],
            in past[2],
            in past[3]);

    /// <param name="n">State of the axle.</param>
    /// <param name="c">Its numbers.</param>
    /// <param name="kinks">Its kinks.</param>
    /// <param name="body">The body, at the same step.</param>
    /// <param name="rule">The step.</param>
    /// <param name="heightL">Height of the road under the left wheel.</param>
    /// <param name="heightR">Under the right wheel.</param>
    /// <param name="riseL">Rate of the height under the left wheel.</param>
    /// <param name="riseR">Under the right wheel.</param>
    /// <param name="now">Takes this step's accelerations.</param>
    /// <param name="past1">Those of the step before.</param>
    /// <param name="past2">Of the one before that.</param>
    /// <param name="past3">Of the first that counts.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Run<TKinks>(
        ref AxleState<T> n,
        in AxleNumbers<T, TSides> c,
        TKinks kinks,
        in BodyBlock<T> body,
        in AdamsRule<T> rule,
        in T heightL,
        in T heightR,
        in T riseL,
        in T riseR,
        ref PairPast<T> now,
        in PairPast<T> past1,
        in PairPast<T> past2,
        in PairPast<T> past3)
        where TKinks : struct, IAxleKinks<T>
    {
        var negX = n.NegX;
        var height = T.Fma(negX, body.Theta, body.Z);
        var rise = T.Fma(negX, body.ThetaRate, body.ZRate);
        var (phi, phiRate) = (body.Phi, body.PhiRate);
        var (negYL, negYR) = (n.NegYL, n.NegYR);
        var (uL, uR, wL, wR) = (n.UL, n.UR, n.WL, n.WR);
        var sL = T.Fma(negYL, phi, uL - height);
        var sR = T.Fma(negYR, phi, uR - height);
        var vL = T.Fma(negYL, phiRate, wL - rise);
        var vR = T.Fma(negYR, phiRate, wR - rise);
        var (rate, cross, damping) = (c.Rate, c.Cross, c.Damping);
        var fL = T.Fma(rate.L, sL, n.StartL);
        var fR = T.Fma(rate.R, sR, n.StartR);
        // A second sum beside the first, so that neither waits for its own last addition.
        var gL = T.Fma(cross.L, sR, damping.L * vL);
        var gR = T.Fma(cross.R, sL, damping.R * vR);
        kinks.Add(sL, sR, vL, vR, ref fL, ref fR, ref gL, ref gR);
        fL += gL;
        fR += gR;
        var (tyreRate, tyreDamping, unload) = (c.TyreRate, c.TyreDamping, c.Unload);
        var tL = new TyreLaw<T> { Rate = tyreRate.L, Damping = tyreDamping.L, Unload = unload.L }.Change(heightL - uL, riseL - wL);
        var tR = new TyreLaw<T> { Rate = tyreRate.R, Damping = tyreDamping.R, Unload = unload.R }.Change(heightR - uR, riseR - wR);
        var (netL, netR) = (tL - fL, tR - fR);
        var perWheel = c.PerWheel;
        var (aL, aR) = (perWheel.L * netL, perWheel.R * netR);
        if (kinks.Solid)
        {
            var across = c.AcrossAxle;
            aL = T.Fma(across.L, netR, aL);
            aR = T.Fma(across.R, netL, aR);
        }

        n.FL = fL;
        n.FR = fR;
        n.TyreL = tL;
        n.TyreR = tR;
        now.L = aL;
        now.R = aR;
        var adams = rule;
        var (l1, r1, l2, r2, l3, r3) = (past1.L, past1.R, past2.L, past2.R, past3.L, past3.R);
        uL = adams.Place(uL, wL, aL, l1, l2, l3);
        uR = adams.Place(uR, wR, aR, r1, r2, r3);
        wL = adams.Rate(wL, aL, l1, l2, l3);
        wR = adams.Rate(wR, aR, r1, r2, r3);
        n.UL = uL;
        n.UR = uR;
        n.WL = wL;
        n.WR = wR;
    }
}
