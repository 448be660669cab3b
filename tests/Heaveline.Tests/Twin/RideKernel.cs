using System.Runtime.CompilerServices;
using Heaveline.Models;
using Heaveline.Numerics;

namespace Heaveline.Tests.Twin;

/// <summary>
/// The equations of motion as they stand in the books: the plain twin of the kernel in blocks. Signs by ISO 8855: heave z up, pitch θ
/// nose-down, roll φ right-side-down; corner i at (x, y) from the loaded centre of gravity; travel s = u − (z − x·θ + y·φ), bump positive;
/// S = s + S_trim counts from the reference state. M z̈ = ΣF, I_yy θ̈ − P φ̈ = −ΣxF + M g h_θ θ, I_xx φ̈ − P θ̈ = ΣyF + M g h_φ φ, wheels m
/// ü = T − F, F and T the changes from trim.
/// </summary>
/// <remarks>
/// Split into methods that are not inlined into each other: the compiler inlines only so much into one method, and a lane operation left as a call
/// costs more than the arithmetic it does (measured 2026-11-25: 8 times).
/// </remarks>
internal static class RideKernel<TQuad, TLane>
    where TQuad : struct, IQuad<TQuad, TLane>
    where TLane : struct, ILane<TLane>
{
    /// <summary>Accelerations of body, wheels and fluid, with the forces, at the state's positions and rates over a road.</summary>
    public static void Accelerations(RideConstants<TQuad, TLane> c, RideState<TQuad, TLane> s, in TQuad road, in TQuad roadRate)
    {
        Motion(c, s);
        ElementForces<TQuad, TLane>.Suspension(c, s);
        TyreForce(c, s, road, roadRate);
        Balance(c, s);
    }

    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private static void Motion(RideConstants<TQuad, TLane> c, RideState<TQuad, TLane> s)
    {
        s.Travel = TQuad.Fma(c.X, TQuad.All(s.Theta), s.U - TQuad.All(s.Z)) - (c.Y * TQuad.All(s.Phi)) + c.TrimTravel;
        s.Rate = TQuad.Fma(c.X, TQuad.All(s.ThetaRate), s.URate - TQuad.All(s.ZRate)) - (c.Y * TQuad.All(s.PhiRate));
    }

    /// <summary>Change of tyre load from the static load N: never below −N, and −N while the tyre is clear of the road.</summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public static void TyreForce(RideConstants<TQuad, TLane> c, RideState<TQuad, TLane> s, in TQuad road, in TQuad roadRate)
    {
        var elastic = c.TyreRate * (road - s.U);
        var load = TQuad.Max(c.TrimUnload, TQuad.Fma(c.TyreDamping, roadRate - s.URate, elastic));
        s.Tyre = TQuad.WhereAtMost(elastic, c.TrimUnload, c.TrimUnload, load);
    }

    /// <summary>Adds to the wheels' accelerations what a change of the tyres' forces makes of them.</summary>
    public static void AddTyreForce(RideConstants<TQuad, TLane> c, RideState<TQuad, TLane> s, in TQuad change)
    {
        s.UDot = TQuad.Fma(c.PerWheel, change, s.UDot);
        if ((c.Needs & Needs.SolidAxle) != 0)
        {
            s.UDot = TQuad.Fma(c.AcrossAxle, TQuad.SwapSides(change), s.UDot);
        }
    }

    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private static void Balance(RideConstants<TQuad, TLane> c, RideState<TQuad, TLane> s)
    {
        var force = s.Force - c.TrimForce;
        s.ZDot = c.PerMass * TQuad.Sum(force);
        var pitchMoment = (c.PitchGravity * s.Theta) - TQuad.Sum(c.X * force);
        var rollMoment = TLane.Fma(c.RollGravity, s.Phi, TQuad.Sum(c.Y * force));
        s.ThetaDot = TLane.Fma(c.PitchPerRoll, rollMoment, c.PitchPerPitch * pitchMoment);
        s.PhiDot = TLane.Fma(c.RollPerRoll, rollMoment, c.PitchPerRoll * pitchMoment);
        var net = s.Tyre - force;
        s.UDot = c.PerWheel * net;
        if ((c.Needs & Needs.SolidAxle) != 0)
        {
            s.UDot = TQuad.Fma(c.AcrossAxle, TQuad.SwapSides(net), s.UDot);
        }
    }
}
