using System.Runtime.CompilerServices;
using Heaveline.Models;
using Heaveline.Numerics;

namespace Heaveline.Tests.Twin;

/// <summary>One step of the fourth-order Adams–Bashforth update and the past accelerations it needs.</summary>
internal sealed class AdamsUpdate<TQuad, TLane>(TLane h, Needs needs)
    where TQuad : struct, IQuad<TQuad, TLane>
    where TLane : struct, ILane<TLane>
{
    private readonly TLane h = h;
    private readonly TLane v0 = h * TLane.Of(55.0 / 24.0);
    private readonly TLane v1 = h * TLane.Of(-59.0 / 24.0);
    private readonly TLane v2 = h * TLane.Of(37.0 / 24.0);
    private readonly TLane v3 = h * TLane.Of(-9.0 / 24.0);
    private readonly TLane x0 = h * h * TLane.Of(323.0 / 360.0);
    private readonly TLane x1 = h * h * TLane.Of(-264.0 / 360.0);
    private readonly TLane x2 = h * h * TLane.Of(159.0 / 360.0);
    private readonly TLane x3 = h * h * TLane.Of(-38.0 / 360.0);
    private TLane z1;
    private TLane z2;
    private TLane z3;
    private TLane t1;
    private TLane t2;
    private TLane t3;
    private TLane p1;
    private TLane p2;
    private TLane p3;
    private TQuad u1;
    private TQuad u2;
    private TQuad u3;
    private TQuad q1;
    private TQuad q2;
    private TQuad q3;

    /// <summary>Moves positions and rates one step on from the accelerations in the state.</summary>
    public void Advance(RideState<TQuad, TLane> s)
    {
        Body(s);
        Wheels(ref s.U, ref s.URate, s.UDot, ref u1, ref u2, ref u3);
        if ((needs & Needs.ResistiveLine) != 0)
        {
            Flow(ref s.Flow, s.FlowRate);
        }
        else if ((needs & Needs.FluidLink) != 0)
        {
            Wheels(ref s.Flow, ref s.FlowRate, s.FlowDot, ref q1, ref q2, ref q3);
        }
    }

    // A flow that has no acceleration of its own: the same formula on its rate.
    private void Flow(ref TQuad x, in TQuad r0)
    {
        x = TQuad.Fma(TQuad.All(v0), r0, TQuad.Fma(TQuad.All(v1), q1, x) + TQuad.Fma(TQuad.All(v2), q2, TQuad.All(v3) * q3));
        q3 = q2;
        q2 = q1;
        q1 = r0;
    }

    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private void Body(RideState<TQuad, TLane> s)
    {
        One(ref s.Z, ref s.ZRate, s.ZDot, ref z1, ref z2, ref z3);
        One(ref s.Theta, ref s.ThetaRate, s.ThetaDot, ref t1, ref t2, ref t3);
        One(ref s.Phi, ref s.PhiRate, s.PhiDot, ref p1, ref p2, ref p3);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void One(ref TLane x, ref TLane v, TLane a0, ref TLane a1, ref TLane a2, ref TLane a3)
    {
        x = TLane.Fma(x0, a0, TLane.Fma(h, v, x) + TLane.Fma(x1, a1, TLane.Fma(x2, a2, x3 * a3)));
        v = TLane.Fma(v0, a0, TLane.Fma(v1, a1, v) + TLane.Fma(v2, a2, v3 * a3));
        a3 = a2;
        a2 = a1;
        a1 = a0;
    }

    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private void Wheels(ref TQuad x, ref TQuad v, in TQuad a0, ref TQuad a1, ref TQuad a2, ref TQuad a3)
    {
        x = TQuad.Fma(
            TQuad.All(x0), a0, TQuad.Fma(TQuad.All(h), v, x) + TQuad.Fma(TQuad.All(x1), a1, TQuad.Fma(TQuad.All(x2), a2, TQuad.All(x3) * a3)));
        v = TQuad.Fma(TQuad.All(v0), a0, TQuad.Fma(TQuad.All(v1), a1, v) + TQuad.Fma(TQuad.All(v2), a2, TQuad.All(v3) * a3));
        a3 = a2;
        a2 = a1;
        a1 = a0;
    }
}
