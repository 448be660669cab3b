using Heaveline.Elements;
using Heaveline.Elements.Forces;
using Heaveline.Models;
using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>Writes the numbers of cars into blocks, one car a lane, or one axle a lane.</summary>
/// <typeparam name="T">A lane of the blocks.</typeparam>
/// <typeparam name="TSides">One number for both wheels of an axle, or two.</typeparam>
/// <typeparam name="TNumber">A number of one car.</typeparam>
/// <typeparam name="TPlaces">How one stands in a lane.</typeparam>
internal static unsafe class NumberPacking<T, TSides, TNumber, TPlaces>
    where T : unmanaged, ILane<T>
    where TSides : unmanaged, ISides<TSides, T>
    where TNumber : unmanaged, ILane<TNumber>
    where TPlaces : IPlaces<T, TNumber>
{
    // Farther than any wheel moves, m.
    private const double Never = 1e3;

    /// <summary>Writes one car of cars side by side.</summary>
    /// <param name="set">The blocks.</param>
    /// <param name="car">The car.</param>
    /// <param name="trim">How it stands.</param>
    /// <param name="lane">Its place.</param>
    public static void Beside(BlockSet<T, TSides> set, RideNumbers car, TrimNumbers<TNumber> trim, int lane)
    {
        Body(set, car, lane);
        Axle(set.Plan, set.Front, set.FrontFurther, car.Slots, trim, 0, lane);
        Axle(set.Plan, set.Rear, set.RearFurther, car.Slots, trim, 2, lane);
        Link(set, car.Slots, trim, lane);
    }

    /// <summary>Writes one car, the front axle into the first lane and the rear one into the second.</summary>
    /// <param name="set">The block.</param>
    /// <param name="car">The car.</param>
    /// <param name="trim">How it stands.</param>
    public static void Alone(BlockSet<T, TSides> set, RideNumbers car, TrimNumbers<TNumber> trim)
    {
        for (var lane = 0; lane < 2; lane++)
        {
            Body(set, car, lane);
            Axle(set.Plan, set.Front, set.FrontFurther, car.Slots, trim, 2 * lane, lane);
            Link(set, car.Slots, trim, lane);
        }
    }

    private static void Body(BlockSet<T, TSides> set, RideNumbers n, int lane)
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

    private static void Axle(
        BlockPlan plan, AxleBlock<T, TSides>* block, FurtherBlock<T>* further, KernelSlots car, TrimNumbers<TNumber> trim, int i, int lane)
    {
        var n = car.Numbers;
        var shaped = plan.IsShaped;
        var a = new FoldedCorner<TNumber>(car, i, trim);
        var b = new FoldedCorner<TNumber>(car, i + 1, trim);
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
            Kinks(plan.Kinks, block, a, b, lane);
        }

        if (plan.IsFurther)
        {
            Side(plan, &further->L, (Kink<T>*)(further + 1), car, trim, i, lane);
            Side(plan, &further->R, (Kink<T>*)(further + 1) + plan.Shaped.Side, car, trim, i + 1, lane);
        }
    }

    private static void Kinks(in KinkCount count, AxleBlock<T, TSides>* block, in FoldedCorner<TNumber> a, in FoldedCorner<TNumber> b, int lane)
    {
        var d = (KinkPair<T, Alike<T>>*)(block + 1);
        var p = (KinkPair<T, TSides>*)(d + count.Dampers);
        foreach (var hinge in a.DamperHinges)
        {
            // Those of both wheels: the dampers of an axle are alike.
            var (at, bend) = a.DamperKink(hinge);
            Put((T*)&d->At, lane, at);
            Put((T*)&d->Bend, lane, bend);
            d++;
        }

        Travelled(p, a, lane, 0, count.Above);
        if (TSides.Count == 2)
        {
            Travelled(p, b, lane, 1, count.Above);
        }
    }

    // Kinks over travel of one side: springs and stops one after the other, those that open, then those that close.
    private static void Travelled(KinkPair<T, TSides>* to, in FoldedCorner<TNumber> corner, int lane, int side, int above)
    {
        var (open, close) = (0, above);
        for (var k = 0; k < FoldedCorner<TNumber>.OverTravel; k++)
        {
            var (law, ratio) = corner.Travelled(k);
            foreach (var hinge in law.Opens)
            {
                Put(&to[open++], side, lane, corner.Kink(hinge, ratio));
            }

            foreach (var hinge in law.Closes)
            {
                Put(&to[close++], side, lane, corner.Kink(hinge, ratio));
            }
        }
    }

    private static void Side(
        BlockPlan plan, FurtherSide<T>* e, Kink<T>* kinks, KernelSlots car, TrimNumbers<TNumber> trim, int i, int lane)
    {
        var corner = new FoldedCorner<TNumber>(car, i, trim);
        Put(&e->TrimTravel, lane, corner.Trim);
        Put(&e->Constant, lane, corner.Constant(plan.IsShaped));
        Stop(&e->Bump, car.BumpStops[i].Power, lane);
        Stop(&e->Rebound, car.ReboundStops[i].Power, lane);
        Put(&e->Friction.Rate, lane, car.Frictions[i].Slider?.Rate ?? 0.0);
        Put(&e->Friction.PreSliding, lane, car.Frictions[i].Slider?.PreSliding ?? 1.0);
        // A common damper sees what the common spring sees, where there is one.
        var common = car.CommonSprings[i].Exists ? car.CommonSprings[i] : car.CommonDampers[i];
        Put(&e->LinkRatio, lane, common.Share(i));
        Accumulator(e, car.Accumulators[i], i, lane);
        if (plan.IsShaped)
        {
            Shaped(plan.Shaped, e, kinks, car, i, lane);
        }
    }

    private static void Accumulator(FurtherSide<T>* e, KernelSlot unit, int i, int lane)
    {
        Put(&e->FluidArea, lane, unit.Share(i));
        Put(&e->FluidSign, lane, i < 2 ? 1.0 : -1.0);
        Put(&e->FluidStiffness, lane, unit.OnTravel.Slope);
        // Gas counts from its own pressure.
        Put(&e->FluidPressure, lane, unit.OnTravel.Constant + (unit.Gas?.Reference ?? 0.0));
        Put(&e->FluidGasPressure, lane, unit.Gas?.Reference ?? 0.0);
        Gas(&e->FluidGas, unit.Gas, lane);
    }

    private static void Shaped(in ShapedCount count, FurtherSide<T>* e, Kink<T>* kinks, KernelSlots car, int i, int lane)
    {
        var (spring, damper, bump, rebound) = (car.Springs[i], car.Dampers[i], car.BumpStops[i], car.ReboundStops[i]);
        Place(&e->SpringPlace, spring, i, lane);
        Place(&e->DamperPlace, damper, i, lane);
        // Both stops of a corner stand at one place.
        Place(&e->StopPlace, bump.Share(i) != 0.0 ? bump : rebound, i, lane);
        Ratio(&e->SpringRatio, spring.Ratio, lane);
        Ratio(&e->DamperRatio, damper.Ratio, lane);
        Put(&e->SpringConstant, lane, spring.OnTravel.Constant);
        Put(&e->SpringSlope, lane, spring.OnTravel.Slope);
        Put(&e->GasForce, lane, spring.Gas?.Reference ?? 0.0);
        Gas(&e->Gas, spring.Gas, lane);
        Put(&e->DamperConstant, lane, damper.OnRate.Constant + damper.OnTravel.Constant);
        Put(&e->DamperSlope, lane, damper.OnRate.Slope);
        Put(&e->StopConstant, lane, bump.OnTravel.Constant + rebound.OnTravel.Constant);
        Put(&e->StopSlope, lane, bump.OnTravel.Slope + rebound.OnTravel.Slope);
        Hinged(kinks, spring.OnTravel.Opens, lane);
        kinks += count.Springs;
        Hinged(kinks, damper.OnRate.Opens, lane);
        kinks += count.Dampers;
        Hinged(kinks, bump.OnTravel.Opens, lane);
        Hinged(kinks + bump.OnTravel.Opens.Length, rebound.OnTravel.Opens, lane);
        kinks += count.StopsAbove;
        Hinged(kinks, bump.OnTravel.Closes, lane);
        Hinged(kinks + bump.OnTravel.Closes.Length, rebound.OnTravel.Closes, lane);
    }

    private static void Hinged(Kink<T>* to, ReadOnlySpan<Hinge> hinges, int lane)
    {
        for (var j = 0; j < hinges.Length; j++)
        {
            Put(&to[j].At, lane, hinges[j].At);
            Put(&to[j].Bend, lane, hinges[j].Bend);
        }
    }

    private static void Link(BlockSet<T, TSides> set, KernelSlots car, TrimNumbers<TNumber> trim, int lane)
    {
        var (line, spring, resistance) = (car.Numbers.Elements.Line, car.CommonSprings[0], car.Resistances[0].OnRate.Slope);
        var to = set.Link;
        Put(&to->Rate, lane, spring.OnTravel.Slope);
        Put(&to->Damping, lane, car.CommonDampers[0].OnRate.Slope);
        // The gas of a line wide open counts from its own pressure.
        Put(&to->Carried, lane, spring.OnTravel.Constant + (spring.Gas?.Reference ?? 0.0));
        Put(&to->GasPressure, lane, spring.Gas?.Reference ?? 0.0);
        Gas(&to->Gas, spring.Gas, lane);
        Put(&to->PerInertance, lane, line is { Resists: false } ? 1.0 / line.Inertance : 0.0);
        Put(&to->PerResistance, lane, line is { Resists: true } ? 1.0 / resistance : 0.0);
        Put(&to->Resistance, lane, resistance);
        Put(&to->TrimFlowL, lane, trim.Flow[0]);
        Put(&to->TrimFlowR, lane, trim.Flow[1]);
    }

    private static void Stop(StopLaw<T>* to, PowerLaw? stop, int lane)
    {
        // A stop that is not there is never touched.
        Put(&to->Clearance, lane, stop?.Clearance ?? Never);
        Put(&to->Factor, lane, stop?.Coefficient ?? 0.0);
        Put(&to->Exponent, lane, stop?.Exponent ?? 1.0);
    }

    private static void Gas(GasLaw<T>* to, GasLaw? gas, int lane)
    {
        Put(&to->PerVolume, lane, gas?.PerVolume ?? 0.0);
        Put(&to->Exponent, lane, gas?.Exponent ?? 1.0);
    }

    private static void Place(PlaceLaw<T>* to, KernelSlot element, int i, int lane)
    {
        Put(&to->Own, lane, element.Share(i));
        Put(&to->Other, lane, element.Share(i ^ 1));
    }

    private static void Ratio(RatioLaw<T>* to, in RatioCurve ratio, int lane)
    {
        Put(&to->R0, lane, ratio.AtReference);
        Put(&to->R1, lane, ratio.PerTravel);
        Put(&to->R2, lane, ratio.PerTravelSquared);
    }

    private static void Put(KinkPair<T, TSides>* to, int side, int lane, (TNumber At, TNumber Bend) kink)
    {
        Put((T*)&to->At + side, lane, kink.At);
        Put((T*)&to->Bend + side, lane, kink.Bend);
    }

    private static void Put(TSides* to, int lane, double left, double right) => Put(to, lane, TNumber.Of(left), TNumber.Of(right));

    private static void Put(TSides* to, int lane, TNumber left, TNumber right)
    {
        Put((T*)to, lane, left);
        if (TSides.Count == 2)
        {
            Put((T*)to + 1, lane, right);
        }
    }

    private static void Put(T* to, int lane, double value) => Put(to, lane, TNumber.Of(value));

    private static void Put(T* to, int lane, TNumber value) => TPlaces.Put(to, lane, value);
}
