using System.Runtime.CompilerServices;
using Heaveline.Elements.Forces;
using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>Forces of an axle's further elements, added to what its step starts from. One method an element: an axle takes those it needs.</summary>
internal static unsafe class FurtherForces<T>
    where T : unmanaged, ILane<T>
{
    /// <summary>Works out the travel that the elements see, and starts from the constant.</summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public static void Begin(AxleState<T>* n, BodyBlock<T>* body, FurtherBlock<T>* e) => Begin(ref *n, in *body, ref *e);

    /// <inheritdoc cref="Begin(AxleState{T}*, BodyBlock{T}*, FurtherBlock{T}*)"/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Begin(ref AxleState<T> n, in BodyBlock<T> body, ref FurtherBlock<T> e)
    {
        var negX = n.NegX;
        var height = T.Fma(negX, body.Theta, body.Z);
        var rise = T.Fma(negX, body.ThetaRate, body.ZRate);
        var (phi, phiRate) = (body.Phi, body.PhiRate);
        var (negYL, negYR) = (n.NegYL, n.NegYR);
        e.L.Travel = T.Fma(negYL, phi, n.UL - height);
        e.R.Travel = T.Fma(negYR, phi, n.UR - height);
        e.L.Rate = T.Fma(negYL, phiRate, n.WL - rise);
        e.R.Rate = T.Fma(negYR, phiRate, n.WR - rise);
        n.StartL = e.L.Constant;
        n.StartR = e.R.Constant;
    }

    /// <summary>Stops of curved force at the wheels. Most of the time no stop is touched, and powers are dear.</summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public static void Stops(AxleState<T>* n, FurtherBlock<T>* e) => Stops(ref *n, in *e);

    /// <inheritdoc cref="Stops(AxleState{T}*, FurtherBlock{T}*)"/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Stops(ref AxleState<T> n, in FurtherBlock<T> e) =>
        Push(in e, e.L.Travel + e.L.TrimTravel, e.R.Travel + e.R.TrimTravel, ref n.StartL, ref n.StartR);

    /// <summary>Adds stops of curved force of one axle to what its other elements push with, where one is touched.</summary>
    /// <param name="n">The axle.</param>
    /// <param name="body">The body, at the same step.</param>
    /// <param name="e">Its further elements.</param>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public static void AddStops(AxleState<T>* n, BodyBlock<T>* body, FurtherBlock<T>* e)
    {
        Seen(in *n, in *body, out var sL, out var sR);
        Push(in *e, sL + e->L.TrimTravel, sR + e->R.TrimTravel, ref n->FL, ref n->FR);
    }

    /// <summary>Friction of one axle, which has nothing else that its step starts from.</summary>
    /// <param name="n">The axle.</param>
    /// <param name="body">The body, at the same step.</param>
    /// <param name="e">Its further elements.</param>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public static void Friction(AxleState<T>* n, BodyBlock<T>* body, FurtherBlock<T>* e)
    {
        Seen(in *n, in *body, out var sL, out var sR);
        var (startL, startR) = (e->L.Constant, e->R.Constant);
        Rub(ref *e, sL, sR, ref startL, ref startR);
        (n->StartL, n->StartR) = (startL, startR);
    }

    /// <summary>Friction at travels from trim, added to what the step starts from.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Rub(ref FurtherBlock<T> e, T sL, T sR, ref T startL, ref T startR)
    {
        e.L.Friction.Add(sL, ref e.L.Slider, ref startL);
        e.R.Friction.Add(sR, ref e.R.Slider, ref startR);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Seen(in AxleState<T> n, in BodyBlock<T> body, out T sL, out T sR)
    {
        var height = T.Fma(n.NegX, body.Theta, body.Z);
        var phi = body.Phi;
        sL = T.Fma(n.NegYL, phi, n.UL - height);
        sR = T.Fma(n.NegYR, phi, n.UR - height);
    }

    /// <summary>How far the wheel that goes farthest is past the clearance of its stop; most of the time no stop of any car is touched.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Reach(in FurtherBlock<T> e, T sL, T sR)
    {
        var (left, right) = (sL + e.L.TrimTravel, sR + e.R.TrimTravel);
        return T.Max(
            T.Max(left - e.L.Bump.Clearance, right - e.R.Bump.Clearance),
            T.Max(-left - e.L.Rebound.Clearance, -right - e.R.Rebound.Clearance));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Push(in FurtherBlock<T> e, T left, T right, ref T forceL, ref T forceR)
    {
        if (e.L.Bump.Touched(left))
        {
            forceL += e.L.Bump.Push(left);
        }

        if (e.R.Bump.Touched(right))
        {
            forceR += e.R.Bump.Push(right);
        }

        if (e.L.Rebound.Touched(-left))
        {
            forceL -= e.L.Rebound.Push(-left);
        }

        if (e.R.Rebound.Touched(-right))
        {
            forceR -= e.R.Rebound.Push(-right);
        }
    }

    /// <summary>Friction that sticks.</summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public static void Friction(AxleState<T>* n, FurtherBlock<T>* e) => Friction(ref *n, ref *e);

    /// <inheritdoc cref="Friction(AxleState{T}*, FurtherBlock{T}*)"/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Friction(ref AxleState<T> n, ref FurtherBlock<T> e)
    {
        Rub(ref e, e.L.Travel, e.R.Travel, ref n.StartL, ref n.StartR);
    }

    /// <summary>
    /// Springs, dampers and stops of an axle where one of them is not at its wheel, holds gas, or has a varying ratio. A solid axle's elements see
    /// u(y) − h(y) at their own place; by virtual work their forces share out over the wheel ends by the same shares.
    /// </summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public static void Shaped(AxleState<T>* n, FurtherBlock<T>* e, in ShapedCount kinks)
    {
        var l = &e->L;
        var r = &e->R;
        var (left, right) = (l->Travel + l->TrimTravel, r->Travel + r->TrimTravel);
        var (rateL, rateR) = (l->Rate, r->Rate);
        var from = (Kink<T>*)(e + 1);
        var other = from + kinks.Side;
        var springL = Spring(l, from, kinks, l->SpringPlace.Along(left, right));
        var springR = Spring(r, other, kinks, r->SpringPlace.Along(right, left));
        n->StartL += l->SpringPlace.Along(springL, springR);
        n->StartR += r->SpringPlace.Along(springR, springL);
        from += kinks.Springs;
        other += kinks.Springs;
        var damperL = Damper(l, from, kinks, l->DamperPlace.Along(left, right), l->DamperPlace.Along(rateL, rateR));
        var damperR = Damper(r, other, kinks, r->DamperPlace.Along(right, left), r->DamperPlace.Along(rateR, rateL));
        n->StartL += l->DamperPlace.Along(damperL, damperR);
        n->StartR += r->DamperPlace.Along(damperR, damperL);
        from += kinks.Dampers;
        other += kinks.Dampers;
        var stopL = Stop(l, from, kinks, l->StopPlace.Along(left, right));
        var stopR = Stop(r, other, kinks, r->StopPlace.Along(right, left));
        n->StartL += l->StopPlace.Along(stopL, stopR);
        n->StartR += r->StopPlace.Along(stopR, stopL);
    }

    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private static T Spring(FurtherSide<T>* e, Kink<T>* from, in ShapedCount kinks, T travel)
    {
        var x = e->SpringRatio.Along(travel);
        var force = Kink<T>.Above(from, kinks.Springs, x, T.Fma(e->SpringSlope, x, e->SpringConstant));
        if (kinks.Gas)
        {
            force = T.Fma(e->GasForce, e->Gas.Rise(x), force);
        }

        return e->SpringRatio.At(travel) * force;
    }

    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private static T Damper(FurtherSide<T>* e, Kink<T>* from, in ShapedCount kinks, T travel, T rate)
    {
        var ratio = e->DamperRatio.At(travel);
        var v = ratio * rate;
        return ratio * Kink<T>.Above(from, kinks.Dampers, v, T.Fma(e->DamperSlope, v, e->DamperConstant));
    }

    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private static T Stop(FurtherSide<T>* e, Kink<T>* from, in ShapedCount kinks, T travel)
    {
        var force = Kink<T>.Above(from, kinks.StopsAbove, travel, T.Fma(e->StopSlope, travel, e->StopConstant));
        force = Kink<T>.Below(from + kinks.StopsAbove, kinks.StopsBelow, travel, force);
        if (kinks.CurvedStops && e->Bump.Touched(travel))
        {
            force += e->Bump.Push(travel);
        }

        if (kinks.CurvedStops && e->Rebound.Touched(-travel))
        {
            force -= e->Rebound.Push(-travel);
        }

        return force;
    }
}
