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
        Push(ref block, in kinks, in body);
        Move(ref block, kinks.Solid, in rule, in road, ref past);
    }

    /// <summary>Forces of springs, dampers, stops and bar, about trim.</summary>
    /// <param name="block">The axle.</param>
    /// <param name="kinks">Its kinks.</param>
    /// <param name="body">The body, at the same step.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Push<TKinks>(ref AxleBlock<T, TSides> block, in TKinks kinks, in BodyBlock<T> body)
        where TKinks : struct, IAxleKinks<T>
    {
        Travel(in block.State, in body, out var sL, out var sR, out var vL, out var vR);
        Straight(in block.Numbers, block.State.StartL, block.State.StartR, sL, sR, vL, vR, out var fL, out var fR, out var gL, out var gR);
        kinks.Add(sL, sR, vL, vR, ref fL, ref fR, ref gL, ref gR);
        (block.State.FL, block.State.FR) = (fL + gL, fR + gR);
    }

    /// <summary>Travel of both wheels from trim, and its rate.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Travel(in AxleState<T> n, in BodyBlock<T> body, out T sL, out T sR, out T vL, out T vR)
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

    /// <summary>Straight lines, in two sums beside each other, so that neither waits for its own last addition.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Straight(
        in AxleNumbers<T, TSides> n, T startL, T startR, T sL, T sR, T vL, T vR, out T fL, out T fR, out T gL, out T gR)
    {
        var (rate, cross, damping) = (n.Rate, n.Cross, n.Damping);
        fL = T.Fma(rate.L, sL, startL);
        fR = T.Fma(rate.R, sR, startR);
        gL = T.Fma(cross.L, sR, damping.L * vL);
        gR = T.Fma(cross.R, sL, damping.R * vR);
    }

    /// <summary>From the suspension's forces on: tyres, accelerations, and the wheels a step on.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Move<TRoad>(
        ref AxleBlock<T, TSides> block, bool solid, in AdamsRule<T> adams, in TRoad road, ref PairHistory<T> past)
        where TRoad : struct, IRoadUnder<T>
    {
        ref var n = ref block.State;
        ref readonly var c = ref block.Numbers;
        var (uL, uR, wL, wR) = (n.UL, n.UR, n.WL, n.WR);
        var (tyreRate, tyreDamping, unload) = (c.TyreRate, c.TyreDamping, c.Unload);
        var tL = new TyreLaw<T> { Rate = tyreRate.L, Damping = tyreDamping.L, Unload = unload.L }.Change(road.HeightL - uL, road.RiseL - wL);
        var tR = new TyreLaw<T> { Rate = tyreRate.R, Damping = tyreDamping.R, Unload = unload.R }.Change(road.HeightR - uR, road.RiseR - wR);
        var (netL, netR) = (tL - n.FL, tR - n.FR);
        var perWheel = c.PerWheel;
        var (aL, aR) = (perWheel.L * netL, perWheel.R * netR);
        if (solid)
        {
            var across = c.AcrossAxle;
            aL = T.Fma(across.L, netR, aL);
            aR = T.Fma(across.R, netL, aR);
        }

        n.TyreL = tL;
        n.TyreR = tR;
        past.Now.L = aL;
        past.Now.R = aR;
        var (l1, r1, l2, r2, l3, r3) = (past.One.L, past.One.R, past.Two.L, past.Two.R, past.Three.L, past.Three.R);
        n.UL = adams.Place(uL, wL, aL, l1, l2, l3);
        n.UR = adams.Place(uR, wR, aR, r1, r2, r3);
        n.WL = adams.Rate(wL, aL, l1, l2, l3);
        n.WR = adams.Rate(wR, aR, r1, r2, r3);
    }
}
