using System.Runtime.CompilerServices;
using Heaveline.Models;
using Heaveline.Numerics;

namespace Heaveline.Tests.Twin;

/// <summary>
/// Forces of the front–rear interconnection of each side: an elastic link (or a line wide open), or a fluid line with its own motion.
/// </summary>
internal static class LinkForces<TQuad, TLane>
    where TQuad : struct, IQuad<TQuad, TLane>
    where TLane : struct, ILane<TLane>
{
    /// <summary>Adds ρ·(k·(ρ_f·S_f + ρ_r·S_r) + c·(ρ_f·Ṡ_f + ρ_r·Ṡ_r) + P₀), or one gas pressure for a line wide open.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public static void Elastic(RideConstants<TQuad, TLane> c, RideState<TQuad, TLane> s)
    {
        var own = c.LinkRatio * s.Travel;
        var together = own + TQuad.SwapEnds(own);
        var ownRate = c.LinkRatio * s.Rate;
        var damped = TQuad.Fma(TQuad.All(c.LinkDamping), ownRate + TQuad.SwapEnds(ownRate), TQuad.All(c.LinkCarried));
        if ((c.Needs & Needs.FluidGas) == 0)
        {
            s.Force = TQuad.Fma(c.LinkRatio, TQuad.Fma(TQuad.All(c.LinkRate), together, damped), s.Force);
            return;
        }

        var one = TQuad.All(TLane.Of(1.0));
        var absolute = c.LinkGasPressure * TQuad.Power(one / (one - (c.LinkPerVolume * together)), c.LinkExponent);
        // Side by side with a car whose line holds gas, a link without gas keeps its own rate and damping; a gas line has none.
        var straight = TQuad.Fma(TQuad.All(c.LinkRate), together, damped);
        s.Force = TQuad.Fma(c.LinkRatio, absolute - c.LinkGasPressure + straight, s.Force);
    }

    /// <summary>Adds A·p at both ends and sets q̈ = (p_f − p_r − R·q̇)/I, or q̇ = (p_f − p_r)/R where there is no inertance.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public static void Fluid(RideConstants<TQuad, TLane> c, RideState<TQuad, TLane> s)
    {
        var pressure = Pressure(c, s);
        // Both ends carry the same flow: front minus rear, whichever end asks.
        var difference = c.FluidSign * (pressure - TQuad.SwapEnds(pressure));
        if ((c.Needs & Needs.ResistiveLine) != 0)
        {
            s.FlowRate = c.PerResistance * difference;
        }
        else
        {
            s.FlowDot = c.PerInertance * (difference - (c.FluidResistance * s.FlowRate));
        }

        s.Force = TQuad.Fma(c.FluidArea, pressure, s.Force);
    }

    /// <summary>Gauge pressure at both ends of both lines, Pa.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public static TQuad Pressure(RideConstants<TQuad, TLane> c, RideState<TQuad, TLane> s)
    {
        var volume = (c.FluidArea * s.Travel) - (c.FluidSign * (s.Flow + c.TrimFlow));
        var pressure = TQuad.Fma(c.FluidStiffness, volume, c.FluidPressure);
        if ((c.Needs & Needs.FluidGas) != 0)
        {
            var one = TQuad.All(TLane.Of(1.0));
            pressure = TQuad.Fma(c.FluidGasPressure, TQuad.Power(one / (one - (c.FluidPerVolume * volume)), c.FluidExponent) - one, pressure);
        }

        return pressure;
    }
}
