using System.Runtime.CompilerServices;
using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>Forces of the front–rear interconnection of each side, added to what the axles' steps start from.</summary>
internal static unsafe class BetweenAxles<T, TSample, TEnds>
    where T : unmanaged, ILane<T>
    where TSample : unmanaged, ILane<TSample>
    where TEnds : IEnds<T, TSample>
{
    /// <summary>Adds ρ·(k·(ρ_f·S_f + ρ_r·S_r) + c·(ρ_f·Ṡ_f + ρ_r·Ṡ_r) + P₀), or one gas pressure for a line wide open.</summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public static void Elastic(AxleState<T>* f, AxleState<T>* r, FurtherBlock<T>* ef, FurtherBlock<T>* er, LinkBlock<T>* link, bool gas)
    {
        var left = Common(&ef->L, &er->L, link, gas);
        var right = Common(&ef->R, &er->R, link, gas);
        f->StartL = T.Fma(ef->L.LinkRatio, left, f->StartL);
        f->StartR = T.Fma(ef->R.LinkRatio, right, f->StartR);
        if (TEnds.Blocks == 2)
        {
            r->StartL = T.Fma(er->L.LinkRatio, left, r->StartL);
            r->StartR = T.Fma(er->R.LinkRatio, right, r->StartR);
        }
    }

    /// <summary>Adds A·p at both ends and sets q̈ = (p_f − p_r − R·q̇)/I, or q̇ = (p_f − p_r)/R where there is no inertance.</summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public static void Fluid(
        AxleState<T>* f, AxleState<T>* r, FurtherBlock<T>* ef, FurtherBlock<T>* er, LinkBlock<T>* link, bool gas, bool resists)
    {
        Pressures(f, ef, link, gas);
        if (TEnds.Blocks == 2)
        {
            Pressures(r, er, link, gas);
        }

        var left = TEnds.Difference(ef->L.Pressure, er->L.Pressure);
        var right = TEnds.Difference(ef->R.Pressure, er->R.Pressure);
        if (resists)
        {
            link->FlowRateL = link->PerResistance * left;
            link->FlowRateR = link->PerResistance * right;
        }
        else
        {
            link->FlowDotL = link->PerInertance * (left - (link->Resistance * link->FlowRateL));
            link->FlowDotR = link->PerInertance * (right - (link->Resistance * link->FlowRateR));
        }
    }

    /// <summary>Moves the fluid a step on.</summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public static void Flow(LinkBlock<T>* link, AdamsRule<T>* rule, PairPast<T>* past, bool resists)
    {
        var (l1, r1, l2, r2, l3, r3) = (past[1].L, past[1].R, past[2].L, past[2].R, past[3].L, past[3].R);
        if (resists)
        {
            // A flow that has no acceleration of its own: the same formula on its rate.
            var (rateL, rateR) = (link->FlowRateL, link->FlowRateR);
            link->FlowL = rule->Rate(link->FlowL, rateL, l1, l2, l3);
            link->FlowR = rule->Rate(link->FlowR, rateR, r1, r2, r3);
            past[0].L = rateL;
            past[0].R = rateR;
            return;
        }

        var (left, right) = (link->FlowDotL, link->FlowDotR);
        link->FlowL = rule->Place(link->FlowL, link->FlowRateL, left, l1, l2, l3);
        link->FlowR = rule->Place(link->FlowR, link->FlowRateR, right, r1, r2, r3);
        link->FlowRateL = rule->Rate(link->FlowRateL, left, l1, l2, l3);
        link->FlowRateR = rule->Rate(link->FlowRateR, right, r1, r2, r3);
        past[0].L = left;
        past[0].R = right;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Common(FurtherSide<T>* f, FurtherSide<T>* r, LinkBlock<T>* link, bool gas)
    {
        var together = TEnds.Sum(f->LinkRatio * (f->Travel + f->TrimTravel), r->LinkRatio * (r->Travel + r->TrimTravel));
        var rates = TEnds.Sum(f->LinkRatio * f->Rate, r->LinkRatio * r->Rate);
        // Side by side with a car whose line holds gas, a link without gas keeps its own rate and damping; a gas line has none.
        var force = T.Fma(link->Rate, together, T.Fma(link->Damping, rates, link->Carried));
        return gas ? (link->GasPressure * link->Gas.Rise(together)) - link->GasPressure + force : force;
    }

    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private static void Pressures(AxleState<T>* n, FurtherBlock<T>* e, LinkBlock<T>* link, bool gas)
    {
        n->StartL += Pressed(&e->L, link->FlowL + link->TrimFlowL, gas);
        n->StartR += Pressed(&e->R, link->FlowR + link->TrimFlowR, gas);
    }

    // Gauge pressure of the fluid at one wheel, and the force that it makes there.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Pressed(FurtherSide<T>* e, T flow, bool gas)
    {
        var volume = (e->FluidArea * (e->Travel + e->TrimTravel)) - (e->FluidSign * flow);
        var pressure = T.Fma(e->FluidStiffness, volume, e->FluidPressure);
        if (gas)
        {
            pressure = T.Fma(e->FluidGasPressure, e->FluidGas.Rise(volume) - T.Of(1.0), pressure);
        }

        e->Pressure = pressure;
        return e->FluidArea * pressure;
    }
}
