using System.Runtime.CompilerServices;
using Heaveline.Numerics;

namespace Heaveline.Models;

/// <summary>
/// The equations of motion, once. Signs by ISO 8855: heave z up, pitch θ nose-down, roll φ right-side-down; corner i at (x, y) from the loaded centre
/// of gravity; travel s = u − (z − x·θ + y·φ), bump positive; S = s + S_trim counts from the reference state.
/// M z̈ = ΣF, I_yy θ̈ − P φ̈ = −ΣxF + M g h_θ θ, I_xx φ̈ − P θ̈ = ΣyF + M g h_φ φ, wheels m ü = T − F.
/// A solid axle's elements see u(y) − h(y) at their own place; by virtual work their forces share out over the wheel ends by the same shares.
/// </summary>
internal static class RideKernel<TQuad, TLane>
    where TQuad : struct, IQuad<TQuad, TLane>
    where TLane : struct, ILane<TLane>
{
    /// <summary>Accelerations of body, wheels and fluid at one state; the change of suspension force and of tyre load from trim comes with them.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Accelerations(
        RideConstants<TQuad, TLane> c,
        TLane z,
        TLane theta,
        TLane phi,
        TQuad u,
        TLane zRate,
        TLane thetaRate,
        TLane phiRate,
        TQuad uRate,
        TQuad flow,
        TQuad flowRate,
        TQuad road,
        TQuad roadRate,
        out TLane zDot,
        out TLane thetaDot,
        out TLane phiDot,
        out TQuad uDot,
        out TQuad flowDot,
        out TQuad force,
        out TQuad tyre)
    {
        var s = TQuad.Fma(c.X, TQuad.All(theta), u - TQuad.All(z)) - (c.Y * TQuad.All(phi));
        var v = TQuad.Fma(c.X, TQuad.All(thetaRate), uRate - TQuad.All(zRate)) - (c.Y * TQuad.All(phiRate));
        force = SuspensionForce(c, s + c.TrimTravel, v, flow, flowRate, out flowDot) - c.TrimForce;
        tyre = TyreForce(c, road - u, roadRate - uRate);

        zDot = c.PerMass * TQuad.Sum(force);
        var pitchMoment = (c.PitchGravity * theta) - TQuad.Sum(c.X * force);
        var rollMoment = TLane.Fma(c.RollGravity, phi, TQuad.Sum(c.Y * force));
        thetaDot = TLane.Fma(c.PitchPerRoll, rollMoment, c.PitchPerPitch * pitchMoment);
        phiDot = TLane.Fma(c.RollPerRoll, rollMoment, c.PitchPerRoll * pitchMoment);
        var net = tyre - force;
        uDot = c.PerWheel * net;
        if ((c.Needs & Needs.SolidAxle) != 0)
        {
            uDot = TQuad.Fma(c.AcrossAxle, TQuad.SwapSides(net), uDot);
        }
    }

    /// <summary>Change of tyre load from the static load N: never below −N, and −N while the tyre is clear of the road.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TQuad TyreForce(RideConstants<TQuad, TLane> c, TQuad compression, TQuad rate)
    {
        var elastic = c.TyreRate * compression;
        var least = TQuad.All(TLane.Of(0.0)) - c.TrimLoad;
        var load = TQuad.Max(least, TQuad.Fma(c.TyreDamping, rate, elastic));
        return TQuad.WhereAtMost(elastic, least, least, load);
    }

    /// <summary>Whole suspension force at the wheels, N, at travel S from the reference state and rate v.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TQuad SuspensionForce(RideConstants<TQuad, TLane> c, TQuad travel, TQuad rate, TQuad flow, TQuad flowRate, out TQuad flowDot)
    {
        TQuad force;
        if ((c.Needs & Needs.SolidAxle) == 0)
        {
            force = Spring(c, travel) + Damper(c, travel, rate) + Stops(c, travel);
        }
        else
        {
            var otherTravel = TQuad.SwapSides(travel);
            var otherRate = TQuad.SwapSides(rate);
            var spring = Spring(c, TQuad.Fma(c.SpringShare, travel, c.SpringOther * otherTravel));
            var damper = Damper(c, TQuad.Fma(c.DamperShare, travel, c.DamperOther * otherTravel), TQuad.Fma(c.DamperShare, rate, c.DamperOther * otherRate));
            var stops = Stops(c, TQuad.Fma(c.StopShare, travel, c.StopOther * otherTravel));
            force = TQuad.Fma(c.SpringShare, spring, c.SpringOther * TQuad.SwapSides(spring))
                + TQuad.Fma(c.DamperShare, damper, c.DamperOther * TQuad.SwapSides(damper))
                + TQuad.Fma(c.StopShare, stops, c.StopOther * TQuad.SwapSides(stops));
        }

        force = TQuad.Fma(c.Bar, travel - TQuad.SwapSides(travel), force);
        if ((c.Needs & Needs.Friction) != 0)
        {
            force += c.Friction * rate / TQuad.Sqrt(TQuad.Fma(rate, rate, c.FrictionSpeedSquared));
        }

        flowDot = default;
        if ((c.Needs & Needs.ElasticLink) != 0)
        {
            force += Link(c, travel);
        }
        else if ((c.Needs & Needs.FluidLink) != 0)
        {
            force += Fluid(c, travel, flow, flowRate, out flowDot);
        }

        return force;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static TQuad Spring(RideConstants<TQuad, TLane> c, TQuad travel)
    {
        var varies = (c.Needs & Needs.VaryingRatio) != 0;
        var ratio = varies ? Ratio(c.SpringRatio, travel) : c.SpringRatio[0];
        var x = varies ? Integral(c.SpringRatio, travel) : ratio * travel;
        var force = TQuad.Fma(c.SpringSlope, x, c.SpringConstant);
        for (var j = 0; j < c.SpringAt.Length; j++)
        {
            force = TQuad.Fma(c.SpringBend[j], TQuad.Max(x, c.SpringAt[j]), force);
        }

        if ((c.Needs & Needs.Gas) != 0)
        {
            var one = TQuad.All(TLane.Of(1.0));
            force = TQuad.Fma(c.GasForce, TQuad.Power(one / (one - (c.GasAreaPerVolume * x)), c.GasExponent), force);
        }

        return ratio * force;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static TQuad Damper(RideConstants<TQuad, TLane> c, TQuad travel, TQuad rate)
    {
        var ratio = (c.Needs & Needs.VaryingRatio) != 0 ? Ratio(c.DamperRatio, travel) : c.DamperRatio[0];
        var v = ratio * rate;
        var even = TQuad.Fma(c.DamperSlope, v, c.DamperConstant);
        var odd = c.DamperGas;
        var j = 0;
        for (; j + 1 < c.DamperAt.Length; j += 2)
        {
            even = TQuad.Fma(c.DamperBend[j], TQuad.Max(v, c.DamperAt[j]), even);
            odd = TQuad.Fma(c.DamperBend[j + 1], TQuad.Max(v, c.DamperAt[j + 1]), odd);
        }

        if (j < c.DamperAt.Length)
        {
            even = TQuad.Fma(c.DamperBend[j], TQuad.Max(v, c.DamperAt[j]), even);
        }

        return ratio * (even + odd);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static TQuad Stops(RideConstants<TQuad, TLane> c, TQuad travel)
    {
        var force = c.StopConstant;
        for (var j = 0; j < c.BumpAt.Length; j++)
        {
            force = TQuad.Fma(c.BumpBend[j], TQuad.Max(travel, c.BumpAt[j]), force);
        }

        for (var j = 0; j < c.ReboundAt.Length; j++)
        {
            force = TQuad.Fma(c.ReboundBend[j], TQuad.Min(travel, c.ReboundAt[j]), force);
        }

        if ((c.Needs & Needs.CurvedStop) != 0)
        {
            // A place just past the clearance stands for "not touched": its force is below 1e-9 N for every exponent of 1 or more.
            var least = TQuad.All(TLane.Of(1e-15));
            var bump = TQuad.Max(travel - c.CurvedBump[0], least);
            var rebound = TQuad.Max(TQuad.All(TLane.Of(0.0)) - travel - c.CurvedRebound[0], least);
            force = TQuad.Fma(c.CurvedBump[1], TQuad.Power(bump, c.CurvedBump[2]), force);
            force -= c.CurvedRebound[1] * TQuad.Power(rebound, c.CurvedRebound[2]);
        }

        return force;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static TQuad Link(RideConstants<TQuad, TLane> c, TQuad travel)
    {
        var own = c.LinkRatio * travel;
        var together = own + TQuad.SwapEnds(own);
        if ((c.Needs & Needs.FluidGas) == 0)
        {
            return c.LinkRatio * TQuad.Fma(TQuad.All(c.LinkRate), together, TQuad.All(c.LinkCarried));
        }

        var one = TQuad.All(TLane.Of(1.0));
        var absolute = c.LinkGasPressure * TQuad.Power(one / (one - (c.LinkPerVolume * together)), c.LinkExponent);
        return c.LinkRatio * (absolute - (c.LinkGasPressure - TQuad.All(c.LinkCarried)));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static TQuad Fluid(RideConstants<TQuad, TLane> c, TQuad travel, TQuad flow, TQuad flowRate, out TQuad flowDot)
    {
        var pressure = Pressure(c, travel, flow);
        // Both ends carry the same flow: front minus rear, whichever end asks.
        var difference = c.FluidSign * (pressure - TQuad.SwapEnds(pressure));
        flowDot = c.PerInertance * (difference - (c.FluidResistance * flowRate));
        return c.FluidArea * pressure;
    }

    /// <summary>Gauge pressure at both ends of both lines, Pa.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TQuad Pressure(RideConstants<TQuad, TLane> c, TQuad travel, TQuad flow)
    {
        var volume = TQuad.Fma(c.FluidArea, travel, TQuad.All(TLane.Of(0.0)) - (c.FluidSign * (flow + c.TrimFlow)));
        var pressure = TQuad.Fma(c.FluidStiffness, volume, c.FluidPressure);
        if ((c.Needs & Needs.FluidGas) != 0)
        {
            var one = TQuad.All(TLane.Of(1.0));
            pressure = TQuad.Fma(c.FluidGasPressure, TQuad.Power(one / (one - (c.FluidPerVolume * volume)), c.FluidExponent) - one, pressure);
        }

        return pressure;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static TQuad Ratio(TQuad[] r, TQuad travel) => TQuad.Fma(travel, TQuad.Fma(travel, r[2], r[1]), r[0]);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static TQuad Integral(TQuad[] r, TQuad travel)
    {
        var half = TQuad.All(TLane.Of(1.0 / 2.0));
        var third = TQuad.All(TLane.Of(1.0 / 3.0));
        return travel * TQuad.Fma(travel, TQuad.Fma(travel, third * r[2], half * r[1]), r[0]);
    }
}
