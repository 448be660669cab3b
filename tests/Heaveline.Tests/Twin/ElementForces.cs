using System.Runtime.CompilerServices;
using Heaveline.Models;
using Heaveline.Numerics;

namespace Heaveline.Tests.Twin;

/// <summary>
/// Forces of springs, dampers, stops, bars and friction at the wheels, from wheel travel S and its rate. A solid axle's elements see u(y) − h(y) at
/// their own place; by virtual work their forces share out over the wheel ends by the same shares.
/// </summary>
internal static class ElementForces<TQuad, TLane>
    where TQuad : struct, IQuad<TQuad, TLane>
    where TLane : struct, ILane<TLane>
{
    /// <summary>Whole suspension force at the state's travel and rate, and the acceleration of the fluid.</summary>
    public static void Suspension(RideConstants<TQuad, TLane> c, RideState<TQuad, TLane> s)
    {
        const Needs special = Needs.SolidAxle | Needs.VaryingRatio | Needs.Gas;
        if ((c.Needs & special) == 0)
        {
            Plain(c, s);
            if ((c.Needs & Needs.CurvedStop) != 0)
            {
                s.Force = Curved(c, s.Travel, s.Force);
            }
        }
        else
        {
            Special(c, s);
        }

        if ((c.Needs & Needs.Friction) != 0)
        {
            Friction(c, s);
        }

        if ((c.Needs & Needs.ElasticLink) != 0)
        {
            LinkForces<TQuad, TLane>.Elastic(c, s);
        }
        else if ((c.Needs & Needs.FluidLink) != 0)
        {
            LinkForces<TQuad, TLane>.Fluid(c, s);
        }
    }

    // Independent wheels, constant ratios, straight laws: most cars.
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private static void Plain(RideConstants<TQuad, TLane> c, RideState<TQuad, TLane> s)
    {
        var x = c.SpringRatio[0] * s.Travel;
        var spring = TQuad.Fma(c.SpringSlope, x, c.SpringConstant);
        Corners(c.SpringAt, c.SpringBend, x, ref spring);
        var v = c.DamperRatio[0] * s.Rate;
        var damper = TQuad.Fma(c.DamperSlope, v, c.DamperConstant + c.DamperGas);
        if (typeof(TQuad) == typeof(CornerQuad))
        {
            CornersInPairs(c.DamperAt, c.DamperBend, v, ref damper);
        }
        else
        {
            Corners(c.DamperAt, c.DamperBend, v, ref damper);
        }

        var stops = c.StopConstant;
        Corners(c.BumpAt, c.BumpBend, s.Travel, ref stops);
        CornersBelow(c.ReboundAt, c.ReboundBend, s.Travel, ref stops);
        var force = TQuad.Fma(c.SpringRatio[0], spring, TQuad.Fma(c.DamperRatio[0], damper, stops));
        s.Force = TQuad.Fma(c.Bar, s.Travel - TQuad.SwapSides(s.Travel), force);
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static void Special(RideConstants<TQuad, TLane> c, RideState<TQuad, TLane> s)
    {
        var travel = s.Travel;
        var otherTravel = TQuad.SwapSides(travel);
        var otherRate = TQuad.SwapSides(s.Rate);
        var spring = Spring(c, Along(c.SpringShare, travel, c.SpringOther, otherTravel));
        var damper = Damper(c, Along(c.DamperShare, travel, c.DamperOther, otherTravel), Along(c.DamperShare, s.Rate, c.DamperOther, otherRate));
        var stops = Stops(c, Along(c.StopShare, travel, c.StopOther, otherTravel));
        var force = Along(c.SpringShare, spring, c.SpringOther, TQuad.SwapSides(spring))
            + Along(c.DamperShare, damper, c.DamperOther, TQuad.SwapSides(damper))
            + Along(c.StopShare, stops, c.StopOther, TQuad.SwapSides(stops));
        s.Force = TQuad.Fma(c.Bar, travel - otherTravel, force);
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static TQuad Along(TQuad share, TQuad own, TQuad rest, TQuad other) => TQuad.Fma(share, own, rest * other);

    // A spring in series with a slider: what the spring cannot hold the slider gives way by. Right for travel that goes one way since the last time.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static void Friction(RideConstants<TQuad, TLane> c, RideState<TQuad, TLane> s)
    {
        var apart = s.Travel - c.TrimTravel - s.Slider;
        var held = TQuad.Max(c.PreSlidingBack, TQuad.Min(c.PreSliding, apart));
        s.Slider += apart - held;
        s.Force = TQuad.Fma(c.FrictionRate, held, s.Force);
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    internal static TQuad Spring(RideConstants<TQuad, TLane> c, TQuad travel)
    {
        var ratio = Ratio(c.SpringRatio, travel);
        var half = TQuad.All(TLane.Of(1.0 / 2.0));
        var third = TQuad.All(TLane.Of(1.0 / 3.0));
        var x = travel * TQuad.Fma(travel, TQuad.Fma(travel, third * c.SpringRatio[2], half * c.SpringRatio[1]), c.SpringRatio[0]);
        var force = TQuad.Fma(c.SpringSlope, x, c.SpringConstant);
        Corners(c.SpringAt, c.SpringBend, x, ref force);
        if ((c.Needs & Needs.Gas) != 0)
        {
            var one = TQuad.All(TLane.Of(1.0));
            force = TQuad.Fma(c.GasForce, TQuad.Power(one / (one - (c.GasAreaPerVolume * x)), c.GasExponent), force);
        }

        return ratio * force;
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    internal static TQuad Damper(RideConstants<TQuad, TLane> c, TQuad travel, TQuad rate)
    {
        var ratio = Ratio(c.DamperRatio, travel);
        var v = ratio * rate;
        var force = TQuad.Fma(c.DamperSlope, v, c.DamperConstant + c.DamperGas);
        Corners(c.DamperAt, c.DamperBend, v, ref force);
        return ratio * force;
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    internal static TQuad Stops(RideConstants<TQuad, TLane> c, TQuad travel)
    {
        var force = c.StopConstant;
        Corners(c.BumpAt, c.BumpBend, travel, ref force);
        CornersBelow(c.ReboundAt, c.ReboundBend, travel, ref force);
        return (c.Needs & Needs.CurvedStop) != 0 ? Curved(c, travel, force) : force;
    }

    // Most of the time no stop is touched, and powers are dear: they are taken only where one is, and count only there.
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private static TQuad Curved(RideConstants<TQuad, TLane> c, TQuad travel, TQuad force)
    {
        var none = TQuad.All(TLane.Of(0.0));
        // A place just past the clearance stands for "not touched": its force is below 1e-9 N for every exponent of 1 or more.
        var least = TQuad.All(TLane.Of(1e-15));
        var bump = travel - c.CurvedBump[0];
        if (TQuad.AnyAbove(bump, least))
        {
            force += TQuad.WhereAtMost(bump, least, none, c.CurvedBump[1] * TQuad.Power(TQuad.Max(bump, least), c.CurvedBump[2]));
        }

        var rebound = none - travel - c.CurvedRebound[0];
        if (TQuad.AnyAbove(rebound, least))
        {
            force -= TQuad.WhereAtMost(rebound, least, none, c.CurvedRebound[1] * TQuad.Power(TQuad.Max(rebound, least), c.CurvedRebound[2]));
        }

        return force;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static TQuad Ratio(TQuad[] r, TQuad travel) => TQuad.Fma(travel, TQuad.Fma(travel, r[2], r[1]), r[0]);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Corners(TQuad[] at, TQuad[] bend, TQuad x, ref TQuad force)
    {
        for (var j = 0; j < at.Length; j++)
        {
            force = TQuad.Fma(bend[j], TQuad.Max(x, at[j]), force);
        }
    }

    // Two sums side by side for one register: one sum alone would wait for its own last addition. With a register a corner there is work
    // enough between, and a second sum would not find registers (measured 2026-11-25: half the speed).
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void CornersInPairs(TQuad[] at, TQuad[] bend, TQuad x, ref TQuad force)
    {
        TQuad odd = default;
        var j = 0;
        for (; j < at.Length - 1; j += 2)
        {
            force = TQuad.Fma(bend[j], TQuad.Max(x, at[j]), force);
            odd = TQuad.Fma(bend[j + 1], TQuad.Max(x, at[j + 1]), odd);
        }

        if (j < at.Length)
        {
            force = TQuad.Fma(bend[j], TQuad.Max(x, at[j]), force);
        }

        force += odd;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void CornersBelow(TQuad[] at, TQuad[] bend, TQuad x, ref TQuad force)
    {
        for (var j = 0; j < at.Length; j++)
        {
            force = TQuad.Fma(bend[j], TQuad.Min(x, at[j]), force);
        }
    }
}
