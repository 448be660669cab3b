using Heaveline.Elements;
using Heaveline.Models;
using Heaveline.Numerics;

namespace Heaveline.Tests.Twin;

/// <summary>Packs one car per lane.</summary>
internal static class RidePacking
{
    /// <summary>Packs as many cars as a lane holds. Missing places repeat the last car.</summary>
    public static RideConstants<TQuad, TLane> Pack<TQuad, TLane>(IReadOnlyList<RideNumbers> cars)
        where TQuad : struct, IQuad<TQuad, TLane>
        where TLane : struct, ILane<TLane>
    {
        KernelSlots[] slots = [.. cars.Select(car => car.Slots)];
        var needs = Needs.None;
        foreach (var car in slots)
        {
            // A need is a term that is switched on; a car without it has zeros there, so cars of different needs can stand side by side,
            // save for the two kinds of interconnection, which exclude each other.
            needs |= car.Needs;
        }

        if ((needs & Needs.ElasticLink) != 0 && (needs & Needs.FluidLink) != 0)
        {
            throw new ArgumentException("Cars with a fluid line and cars with an elastic link cannot run side by side.", nameof(cars));
        }

        if ((needs & Needs.ResistiveLine) != 0 && cars.Any(car => car.Elements.Line is { Resists: false }))
        {
            throw new ArgumentException("Cars with and without inertance in their fluid lines cannot run side by side.", nameof(cars));
        }

        TLane L(Func<KernelSlots, double> of)
        {
            Span<double> values = stackalloc double[TLane.Count];
            for (var k = 0; k < values.Length; k++)
            {
                values[k] = of(slots[Math.Min(k, slots.Length - 1)]);
            }

            return TLane.From(values);
        }

        TQuad Q(Func<KernelSlots, int, double> of) => TQuad.Of(L(n => of(n, 0)), L(n => of(n, 1)), L(n => of(n, 2)), L(n => of(n, 3)));
        TQuad N(Func<RideNumbers, double[]> of) => Q((n, i) => of(n.Numbers)[i]);
        (TQuad[] At, TQuad[] Bend) H(Func<KernelSlots, int, IReadOnlyList<Hinge>> of)
        {
            var most = slots.Max(n => Enumerable.Range(0, 4).Max(i => of(n, i).Count));
            Hinge Corner(KernelSlots n, int i, int j) => j < of(n, i).Count ? of(n, i)[j] : default;
            return (
                [.. Enumerable.Range(0, most).Select(j => Q((n, i) => Corner(n, i, j).At))],
                [.. Enumerable.Range(0, most).Select(j => Q((n, i) => Corner(n, i, j).Bend))]);
        }

        TQuad[] P(Func<KernelSlots, KernelSlot[]> of) =>
            [Q((n, i) => of(n)[i].Ratio.AtReference), Q((n, i) => of(n)[i].Ratio.PerTravel), Q((n, i) => of(n)[i].Ratio.PerTravelSquared)];
        TQuad Share(Func<KernelSlots, KernelSlot[]> of, int turn) => Q((n, i) => of(n)[i].Share(i ^ turn));
        TQuad Stop(Func<KernelSlot, double> of) => Q((n, i) => of(n.BumpStops[i]) + of(n.ReboundStops[i]));
        TQuad[] Power(Func<KernelSlots, KernelSlot[]> of) =>
        [
            Q((n, i) => of(n)[i].Power?.Clearance ?? 0.0), Q((n, i) => of(n)[i].Power?.Coefficient ?? 0.0),
            Q((n, i) => of(n)[i].Power?.Exponent ?? 1.0),
        ];
        var (spring, damper) = (H((n, i) => n.Springs[i].OnTravel.Opening), H((n, i) => n.Dampers[i].OnRate.Opening));
        var (bump, rebound) = (H((n, i) => n.BumpStops[i].OnTravel.Opening), H((n, i) => n.ReboundStops[i].OnTravel.Closing));
        return new RideConstants<TQuad, TLane>
        {
            Needs = needs,
            PerMass = L(n => 1.0 / n.Numbers.Body.Mass),
            PitchPerPitch = L(n => n.Numbers.Rolls ? n.Numbers.Body.RollInertia / Determinant(n.Numbers) : 1.0 / n.Numbers.Body.PitchInertia),
            RollPerRoll = L(n => n.Numbers.Rolls ? n.Numbers.Body.PitchInertia / Determinant(n.Numbers) : 0.0),
            // A two-wheeler does not roll; its track and with it its roll inertia may be zero.
            PitchPerRoll = L(n => n.Numbers.Rolls ? n.Numbers.Body.InertiaProduct / Determinant(n.Numbers) : 0.0),
            PitchGravity = L(n => n.Numbers.PitchGravity),
            RollGravity = L(n => n.Numbers.RollGravity),
            X = N(n => n.X),
            Y = N(n => n.Y),
            PerWheel = N(n => n.PerWheel),
            AcrossAxle = N(n => n.AcrossAxle),
            TrimTravel = N(n => n.TrimTravel),
            TrimForce = N(n => n.TrimForce),
            TrimUnload = Q((n, i) => -n.Numbers.TrimLoad[i]),
            TrimFlow = N(n => n.TrimFlow),
            TyreRate = N(n => n.TyreRate),
            TyreDamping = N(n => n.TyreDamping),
            SpringConstant = Q((n, i) => n.Springs[i].OnTravel.Constant),
            SpringSlope = Q((n, i) => n.Springs[i].OnTravel.Slope),
            GasForce = Q((n, i) => n.Springs[i].Gas?.Reference ?? 0.0),
            GasAreaPerVolume = Q((n, i) => n.Springs[i].Gas?.PerVolume ?? 0.0),
            GasExponent = Q((n, i) => n.Springs[i].Gas?.Exponent ?? 1.0),
            DamperConstant = Q((n, i) => n.Dampers[i].OnRate.Constant),
            DamperSlope = Q((n, i) => n.Dampers[i].OnRate.Slope),
            DamperGas = Q((n, i) => n.Dampers[i].OnTravel.Constant),
            StopConstant = Stop(stop => stop.OnTravel.Constant),
            Bar = Q((n, i) => n.Bars[i].OnTravel.Slope),
            FrictionRate = Q((n, i) => n.Frictions[i].Slider?.Rate ?? 0.0),
            PreSliding = Q((n, i) => n.Frictions[i].Slider?.PreSliding ?? 1.0),
            PreSlidingBack = Q((n, i) => -(n.Frictions[i].Slider?.PreSliding ?? 1.0)),
            SpringShare = Share(n => n.Springs, 0),
            SpringOther = Share(n => n.Springs, 1),
            DamperShare = Share(n => n.Dampers, 0),
            DamperOther = Share(n => n.Dampers, 1),
            StopShare = Q((n, i) => StopShare(n, i, i, 1.0)),
            StopOther = Q((n, i) => StopShare(n, i, i ^ 1, 0.0)),
            LinkRatio = Q((n, i) => n.CommonSprings[i].Share(i)),
            LinkRate = L(n => n.CommonSprings[0].OnTravel.Slope),
            LinkDamping = L(n => n.CommonDampers[0].OnRate.Slope),
            // The gas of a line wide open counts from its own pressure.
            LinkCarried = L(n => n.CommonSprings[0].OnTravel.Constant + (n.CommonSprings[0].Gas?.Reference ?? 0.0)),
            LinkGasPressure = Q((n, i) => n.CommonSprings[i].Gas?.Reference ?? 0.0),
            LinkPerVolume = Q((n, i) => n.CommonSprings[i].Gas?.PerVolume ?? 0.0),
            LinkExponent = Q((n, i) => n.CommonSprings[i].Gas?.Exponent ?? 1.0),
            FluidArea = Q((n, i) => n.Accumulators[i].Share(i)),
            FluidSign = Q((_, i) => i < 2 ? 1.0 : -1.0),
            FluidStiffness = Q((n, i) => n.Accumulators[i].OnTravel.Slope),
            FluidGasPressure = Q((n, i) => n.Accumulators[i].Gas?.Reference ?? 0.0),
            FluidPerVolume = Q((n, i) => n.Accumulators[i].Gas?.PerVolume ?? 0.0),
            FluidExponent = Q((n, i) => n.Accumulators[i].Gas?.Exponent ?? 1.0),
            FluidPressure = Q((n, i) => n.Accumulators[i].OnTravel.Constant + (n.Accumulators[i].Gas?.Reference ?? 0.0)),
            SpringAt = spring.At,
            SpringBend = spring.Bend,
            DamperAt = damper.At,
            DamperBend = damper.Bend,
            BumpAt = bump.At,
            BumpBend = bump.Bend,
            ReboundAt = rebound.At,
            ReboundBend = rebound.Bend,
            SpringRatio = P(n => n.Springs),
            DamperRatio = P(n => n.Dampers),
            CurvedBump = Power(n => n.BumpStops),
            CurvedRebound = Power(n => n.ReboundStops),
            PerInertance = TQuad.All(L(n => n.Numbers.Elements.Line is { Resists: false } line ? 1.0 / line.Inertance : 0.0)),
            PerResistance = TQuad.All(L(n => n.Numbers.Elements.Line is { Resists: true } line ? 1.0 / line.Resistance : 0.0)),
            FluidResistance = TQuad.All(L(n => n.Numbers.Elements.Line?.Resistance ?? 0.0)),
        };
    }

    // Both stops of a corner stand at one place; without a stop it does not matter where.
    private static double StopShare(KernelSlots n, int i, int wheel, double without)
    {
        var stop = n.Numbers.Elements.BumpStops[i] ?? n.Numbers.Elements.ReboundStops[i];
        return stop?.Sight.Wheels[wheel] ?? without;
    }

    private static double Determinant(RideNumbers n) => (n.Body.PitchInertia * n.Body.RollInertia) - (n.Body.InertiaProduct * n.Body.InertiaProduct);
}
