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
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void Run<TKinks>(
        ref AxleBlock<T, TSides> block,
        in TKinks kinks,
        in BodyBlock<T> body,
        in AdamsRule<T> rule,
        in RoadUnder<T> road,
        ref PairHistory<T> past)
        where TKinks : struct, IAxleKinks<T>
    {
        ref var n = ref block.State;
        ref readonly var c = ref block.Numbers;
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
        var tL = new TyreLaw<T> { Rate = tyreRate.L, Damping = tyreDamping.L, Unload = unload.L }.Change(road.HeightL - uL, road.RiseL - wL);
        var tR = new TyreLaw<T> { Rate = tyreRate.R, Damping = tyreDamping.R, Unload = unload.R }.Change(road.HeightR - uR, road.RiseR - wR);
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
        past.Now.L = aL;
        past.Now.R = aR;
        var adams = rule;
        var (l1, r1, l2, r2, l3, r3) = (past.One.L, past.One.R, past.Two.L, past.Two.R, past.Three.L, past.Three.R);
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
