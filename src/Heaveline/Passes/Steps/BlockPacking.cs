using Heaveline.Models;
using Heaveline.Elements.Forces;
using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>Writes the numbers of cars into blocks, one car a lane, or one axle a lane.</summary>
internal static unsafe class BlockPacking<T, TSides, TDampers>
    where T : unmanaged, ILane<T>
    where TSides : unmanaged, ISides<TSides, T>
    where TDampers : unmanaged, ISides<TDampers, T>
{
    /// <summary>Writes cars side by side. Missing places repeat the last car.</summary>
    public static void Write(BlockSet<T, TSides, TDampers> set, ReadOnlySpan<RideNumbers> cars)
    {
        for (var lane = 0; lane < T.Count; lane++)
        {
            var car = cars[Math.Min(lane, cars.Length - 1)];
            Body(set, car, lane);
            Axle(set.Plan, set.Front, set.FrontFurther, car, 0, lane);
            Axle(set.Plan, set.Rear, set.RearFurther, car, 2, lane);
            Link(set, car, lane);
        }
    }

    /// <summary>Writes one car, the front axle into the first lane and the rear one into the second.</summary>
    public static void Write(BlockSet<T, TSides, TDampers> set, RideNumbers car)
    {
        for (var lane = 0; lane < 2; lane++)
        {
            Body(set, car, lane);
            Axle(set.Plan, set.Front, set.FrontFurther, car, 2 * lane, lane);
            Link(set, car, lane);
        }
    }

    private static void Body(BlockSet<T, TSides, TDampers> set, RideNumbers n, int lane)
    {
        var b = n.Body;
        var to = set.Body;
        var determinant = (b.PitchInertia * b.RollInertia) - (b.InertiaProduct * b.InertiaProduct);
        Put(&to->PerMass, lane, 1.0 / b.Mass);
        // A two-wheeler does not roll; its track and with it its roll inertia may be zero.
        Put(&to->PitchPerPitch, lane, n.Rolls ? b.RollInertia / determinant : 1.0 / b.PitchInertia);
        Put(&to->RollPerRoll, lane, n.Rolls ? b.PitchInertia / determinant : 0.0);
        Put(&to->PitchPerRoll, lane, n.Rolls ? b.InertiaProduct / determinant : 0.0);
        Put(&to->PitchGravity, lane, n.PitchGravity);
        Put(&to->RollGravity, lane, n.RollGravity);
    }

    private static void Axle(BlockPlan plan, AxleBlock<T, TSides>* block, FurtherBlock<T>* further, RideNumbers n, int i, int lane)
    {
        var shaped = plan.IsShaped;
        var (a, b) = (new FoldedCorner(n, i), new FoldedCorner(n, i + 1));
        var state = &block->State;
        var numbers = &block->Numbers;
        Put(&state->NegX, lane, -n.X[i]);
        Put(&state->NegYL, lane, -n.Y[i]);
        Put(&state->NegYR, lane, -n.Y[i + 1]);
        Put(&state->StartL, lane, a.Constant(shaped));
        Put(&state->StartR, lane, b.Constant(shaped));
        Put(&numbers->Rate, lane, a.Rate(shaped), b.Rate(shaped));
        Put(&numbers->Cross, lane, a.Cross, b.Cross);
        Put(&numbers->Damping, lane, a.Damping(shaped), b.Damping(shaped));
        Put(&numbers->TyreRate, lane, n.TyreRate[i], n.TyreRate[i + 1]);
        Put(&numbers->TyreDamping, lane, n.TyreDamping[i], n.TyreDamping[i + 1]);
        Put(&numbers->Unload, lane, a.Unload, b.Unload);
        Put(&numbers->PerWheel, lane, n.PerWheel[i], n.PerWheel[i + 1]);
        Put(&numbers->AcrossAxle, lane, n.AcrossAxle[i], n.AcrossAxle[i + 1]);
        if (!shaped)
        {
            Kinks(plan.Kinks, block, a, b, n.Laws, lane);
        }

        if (plan.Needs != Needs.None)
        {
            Side(plan, &further->L, (Kink<T>*)(further + 1), n, a, i, lane);
            Side(plan, &further->R, (Kink<T>*)(further + 1) + plan.Shaped.Side, n, b, i + 1, lane);
        }
    }

    private static void Kinks(
        in KinkCount count, AxleBlock<T, TSides>* block, in FoldedCorner a, in FoldedCorner b, CornerLaws laws, int lane)
    {
        var d = (KinkPair<T, TDampers>*)(block + 1);
        for (var j = 0; j < laws.DamperHinges.Count; j++)
        {
            var (left, right) = (a.Damper(j), b.Damper(j));
            Put(&d[j].At, lane, left.At, right.At);
            Put(&d[j].Bend, lane, left.Bend, right.Bend);
        }

        var p = (KinkPair<T, TSides>*)(d + count.Dampers);
        for (int j = 0, springs = laws.SpringHinges.Count; j < springs + laws.BumpHinges.Count; j++)
        {
            var (left, right) = j < springs ? (a.Spring(j), b.Spring(j)) : (a.Bump(j - springs), b.Bump(j - springs));
            Put(&p[j].At, lane, left.At, right.At);
            Put(&p[j].Bend, lane, left.Bend, right.Bend);
        }

        p += count.Above;
        for (var j = 0; j < laws.ReboundHinges.Count; j++)
        {
            var (left, right) = (a.Rebound(j), b.Rebound(j));
            Put(&p[j].At, lane, left.At, right.At);
            Put(&p[j].Bend, lane, left.Bend, right.Bend);
        }
    }

    private static void Side(BlockPlan plan, FurtherSide<T>* e, Kink<T>* kinks, RideNumbers n, in FoldedCorner corner, int i, int lane)
    {
        var laws = n.Laws;
        Put(&e->TrimTravel, lane, corner.Trim);
        Put(&e->Constant, lane, corner.Constant(plan.IsShaped));
        Stop(&e->Bump, laws.CurvedBump, i, lane);
        Stop(&e->Rebound, laws.CurvedRebound, i, lane);
        Put(&e->Friction.Rate, lane, laws.Friction[i] / laws.PreSliding[i]);
        Put(&e->Friction.PreSliding, lane, laws.PreSliding[i]);
        Put(&e->LinkRatio, lane, laws.LinkRatio[i]);
        Put(&e->FluidArea, lane, laws.FluidArea[i]);
        Put(&e->FluidSign, lane, laws.FluidSign[i]);
        Put(&e->FluidStiffness, lane, laws.FluidStiffness[i]);
        Put(&e->FluidGasPressure, lane, laws.FluidGasPressure[i]);
        Put(&e->FluidGas.PerVolume, lane, laws.FluidPerVolume[i]);
        Put(&e->FluidGas.Exponent, lane, laws.FluidExponent[i]);
        if (plan.IsShaped)
        {
            Shaped(plan.Shaped, e, kinks, laws, i, lane);
        }
    }

    private static void Shaped(in ShapedCount count, FurtherSide<T>* e, Kink<T>* kinks, CornerLaws laws, int i, int lane)
    {
        Place(&e->SpringPlace, laws.SpringShare[i], lane);
        Place(&e->DamperPlace, laws.DamperShare[i], lane);
        Place(&e->StopPlace, laws.StopShare[i], lane);
        Ratio(&e->SpringRatio, laws.SpringRatio, i, lane);
        Ratio(&e->DamperRatio, laws.DamperRatio, i, lane);
        Put(&e->SpringConstant, lane, laws.SpringConstant[i]);
        Put(&e->SpringSlope, lane, laws.SpringSlope[i]);
        Put(&e->GasForce, lane, laws.GasForce[i]);
        Put(&e->Gas.PerVolume, lane, laws.GasAreaPerVolume[i]);
        Put(&e->Gas.Exponent, lane, laws.GasExponent[i]);
        Put(&e->DamperConstant, lane, laws.DamperConstant[i] + laws.DamperGas[i]);
        Put(&e->DamperSlope, lane, laws.DamperSlope[i]);
        Put(&e->StopConstant, lane, laws.StopConstant[i]);
        Hinged(kinks, laws.SpringHinges, i, lane);
        kinks += count.Springs;
        Hinged(kinks, laws.DamperHinges, i, lane);
        kinks += count.Dampers;
        Hinged(kinks, laws.BumpHinges, i, lane);
        kinks += count.Bumps;
        Hinged(kinks, laws.ReboundHinges, i, lane);
    }

    private static void Hinged(Kink<T>* to, Hinges hinges, int i, int lane)
    {
        for (var j = 0; j < hinges.Count; j++)
        {
            Put(&to[j].At, lane, hinges.At[j][i]);
            Put(&to[j].Bend, lane, hinges.Bend[j][i]);
        }
    }

    private static void Link(BlockSet<T, TSides, TDampers> set, RideNumbers n, int lane)
    {
        var laws = n.Laws;
        var to = set.Link;
        Put(&to->Rate, lane, laws.LinkRate);
        Put(&to->Damping, lane, laws.LinkDamping);
        Put(&to->Carried, lane, laws.LinkCarried);
        Put(&to->GasPressure, lane, laws.LinkGasPressure);
        Put(&to->Gas.PerVolume, lane, laws.LinkPerVolume);
        Put(&to->Gas.Exponent, lane, laws.LinkExponent);
        Put(&to->FluidPressure, lane, laws.FluidPressure);
        Put(&to->PerInertance, lane, laws.FluidFlows && !laws.FluidResists ? 1.0 / laws.FluidInertance : 0.0);
        Put(&to->PerResistance, lane, laws.FluidResists ? 1.0 / laws.FluidResistance : 0.0);
        Put(&to->Resistance, lane, laws.FluidResistance);
        Put(&to->TrimFlowL, lane, n.TrimFlow[0]);
        Put(&to->TrimFlowR, lane, n.TrimFlow[1]);
    }

    private static void Stop(StopLaw<T>* to, double[][] stop, int i, int lane)
    {
        Put(&to->Clearance, lane, stop[0][i]);
        Put(&to->Factor, lane, stop[1][i]);
        Put(&to->Exponent, lane, stop[2][i]);
    }

    private static void Place(PlaceLaw<T>* to, double share, int lane)
    {
        Put(&to->Own, lane, share);
        Put(&to->Other, lane, 1.0 - share);
    }

    private static void Ratio(RatioLaw<T>* to, double[][] ratio, int i, int lane)
    {
        Put(&to->R0, lane, ratio[0][i]);
        Put(&to->R1, lane, ratio[1][i]);
        Put(&to->R2, lane, ratio[2][i]);
    }

    private static void Put(TSides* to, int lane, double left, double right) => Put((T*)to, TSides.Count, lane, left, right);

    private static void Put(TDampers* to, int lane, double left, double right) => Put((T*)to, TDampers.Count, lane, left, right);

    private static void Put(T* to, int count, int lane, double left, double right)
    {
        Put(to, lane, left);
        if (count == 2)
        {
            Put(to + 1, lane, right);
        }
    }

    // Every lane is its numbers one after the other, in double or in single precision.
    private static void Put(T* to, int lane, double value)
    {
        if (sizeof(T) == T.Count * sizeof(double))
        {
            ((double*)to)[lane] = value;
        }
        else
        {
            ((float*)to)[lane] = (float)value;
        }
    }
}
