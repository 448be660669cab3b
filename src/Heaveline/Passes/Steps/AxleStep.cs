using System.Runtime.CompilerServices;
using Heaveline.Elements.Forces;
using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>
/// One step of an axle: the travel of its wheels under the body, the forces of its plain elements and tyres, the wheels' accelerations and where
/// they are a step on. Every number is read once and what comes out is written last: in between the compiler may keep all in registers.
/// </summary>
internal static class AxleStep<T, TSides>
    where T : unmanaged, ILane<T>
    where TSides : unmanaged, ISides<TSides, T>
{
    /// <param name="block">The axle.</param>
    /// <param name="kinks">Its kinks.</param>
    /// <param name="body">The body, at the same step.</param>
    /// <param name="rule">The step.</param>
    /// <param name="road">The road under its wheels.</param>
    /// <param name="past">The last three steps; takes this one.</param>
    /// <typeparam name="TKinks">Where its kinks stand.</typeparam>
    /// <typeparam name="TRoad">Where the road stands.</typeparam>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void Run<TKinks, TRoad>(
        ref AxleBlock<T, TSides> block,
        in TKinks kinks,
        in BodyBlock<T> body,
        in AdamsRule<T> rule,
        in TRoad road,
        ref PairHistory<T> past)
        where TKinks : struct, IAxleKinks<T>
        where TRoad : struct, IRoadUnder<T>
    {
        Travel(in block.State, in body, out var sL, out var sR, out var vL, out var vR);
        Straight(in block, sL, sR, vL, vR, out var fL, out var fR, out var gL, out var gR);
        kinks.Add(sL, sR, vL, vR, ref fL, ref fR, ref gL, ref gR);
        Move(ref block, fL + gL, fR + gR, kinks.Solid, in rule, in road, ref past);
    }

    /// <summary>
    /// Both axles of cars side by side. Their sums over kinks run beside each other: each waits for its own last addition longer than for anything
    /// else.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void Run<TRoad>(
        ref AxleBlock<T, TSides> front,
        ref AxleBlock<T, TSides> rear,
        in KinksBehind<T, TSides> frontKinks,
        in KinksBehind<T, TSides> rearKinks,
        in BodyBlock<T> body,
        in AdamsRule<T> rule,
        in TRoad frontRoad,
        in TRoad rearRoad,
        ref PairHistory<T> frontPast,
        ref PairHistory<T> rearPast)
        where TRoad : struct, IRoadUnder<T>
    {
        Travel(in front.State, in body, out var sFL, out var sFR, out var vFL, out var vFR);
        Travel(in rear.State, in body, out var sRL, out var sRR, out var vRL, out var vRR);
        Straight(in front, sFL, sFR, vFL, vFR, out var fFL, out var fFR, out var gFL, out var gFR);
        Straight(in rear, sRL, sRR, vRL, vRR, out var fRL, out var fRR, out var gRL, out var gRR);
        KinksBehind<T, TSides>.Add(
            in frontKinks,
            in rearKinks,
            sFL, sFR, vFL, vFR, ref fFL, ref fFR, ref gFL, ref gFR,
            sRL, sRR, vRL, vRR, ref fRL, ref fRR, ref gRL, ref gRR);
        Move(ref front, fFL + gFL, fFR + gFR, frontKinks.Solid, in rule, in frontRoad, ref frontPast);
        Move(ref rear, fRL + gRL, fRR + gRR, rearKinks.Solid, in rule, in rearRoad, ref rearPast);
    }

    // Travel of both wheels from trim, and its rate.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Travel(in AxleState<T> n, in BodyBlock<T> body, out T sL, out T sR, out T vL, out T vR)
    {
        var negX = n.NegX;
        var height = T.Fma(negX, body.Theta, body.Z);
        var rise = T.Fma(negX, body.ThetaRate, body.ZRate);
        var (phi, phiRate) = (body.Phi, body.PhiRate);
        var (negYL, negYR) = (n.NegYL, n.NegYR);
        sL = T.Fma(negYL, phi, n.UL - height);
        sR = T.Fma(negYR, phi, n.UR - height);
        vL = T.Fma(negYL, phiRate, n.WL - rise);
        vR = T.Fma(negYR, phiRate, n.WR - rise);
    }

    // Straight lines, in two sums beside each other, so that neither waits for its own last addition.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Straight(
        in AxleBlock<T, TSides> block, T sL, T sR, T vL, T vR, out T fL, out T fR, out T gL, out T gR)
    {
        var (rate, cross, damping) = (block.Numbers.Rate, block.Numbers.Cross, block.Numbers.Damping);
        fL = T.Fma(rate.L, sL, block.State.StartL);
        fR = T.Fma(rate.R, sR, block.State.StartR);
        gL = T.Fma(cross.L, sR, damping.L * vL);
        gR = T.Fma(cross.R, sL, damping.R * vR);
    }

    // From the suspension's forces on: tyres, accelerations, and the wheels a step on.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Move<TRoad>(
        ref AxleBlock<T, TSides> block,
        T fL,
        T fR,
        bool solid,
        in AdamsRule<T> rule,
        in TRoad road,
        ref PairHistory<T> past)
        where TRoad : struct, IRoadUnder<T>
    {
        ref var n = ref block.State;
        ref readonly var c = ref block.Numbers;
        var (uL, uR, wL, wR) = (n.UL, n.UR, n.WL, n.WR);
        var (tyreRate, tyreDamping, unload) = (c.TyreRate, c.TyreDamping, c.Unload);
        var tL = new TyreLaw<T> { Rate = tyreRate.L, Damping = tyreDamping.L, Unload = unload.L }.Change(road.HeightL - uL, road.RiseL - wL);
        var tR = new TyreLaw<T> { Rate = tyreRate.R, Damping = tyreDamping.R, Unload = unload.R }.Change(road.HeightR - uR, road.RiseR - wR);
        var (netL, netR) = (tL - fL, tR - fR);
        var perWheel = c.PerWheel;
        var (aL, aR) = (perWheel.L * netL, perWheel.R * netR);
        if (solid)
        {
            var across = c.AcrossAxle;
            aL = T.Fma(across.L, netR, aL);
            aR = T.Fma(across.R, netL, aR);
        }

        n.FL = fL;
        n.FR = fR;
        n.TyreL = tL;
        n.TyreR = tR;
        past.Now.L = aL;
        past.Now.R = aR;
        var adams = rule;
        var (l1, r1, l2, r2, l3, r3) = (past.One.L, past.One.R, past.Two.L, past.Two.R, past.Three.L, past.Three.R);
        n.UL = adams.Place(uL, wL, aL, l1, l2, l3);
        n.UR = adams.Place(uR, wR, aR, r1, r2, r3);
        n.WL = adams.Rate(wL, aL, l1, l2, l3);
        n.WR = adams.Rate(wR, aR, r1, r2, r3);
    }
}
