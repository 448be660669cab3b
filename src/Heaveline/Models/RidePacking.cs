using Heaveline.Numerics;

namespace Heaveline.Models;

/// <summary>Packs one car per lane.</summary>
internal static class RidePacking
{
    /// <summary>Packs as many cars as a lane holds. Missing places repeat the last car.</summary>
    public static RideConstants<TQuad, TLane> Pack<TQuad, TLane>(IReadOnlyList<RideNumbers> cars)
        where TQuad : struct, IQuad<TQuad, TLane>
        where TLane : struct, ILane<TLane>
    {
        var needs = Needs.None;
        foreach (var car in cars)
        {
            // A need is a term that is switched on; a car without it has zeros there, so cars of different needs can stand side by side,
            // save for the two kinds of interconnection, which exclude each other.
            needs |= car.Laws.Needs;
        }

        if ((needs & Needs.ElasticLink) != 0 && (needs & Needs.FluidLink) != 0)
        {
            throw new ArgumentException("Cars with a fluid line and cars with an elastic link cannot run side by side.", nameof(cars));
        }

        if ((needs & Needs.ResistiveLine) != 0 && cars.Any(car => car.Laws.FluidFlows && !car.Laws.FluidResists))
        {
            throw new ArgumentException("Cars with and without inertance in their fluid lines cannot run side by side.", nameof(cars));
        }

        TLane L(Func<RideNumbers, double> of)
        {
            Span<double> values = stackalloc double[TLane.Count];
            for (var k = 0; k < values.Length; k++)
            {
                values[k] = of(cars[Math.Min(k, cars.Count - 1)]);
            }

            return TLane.From(values);
        }

        TQuad Q(Func<RideNumbers, double[]> of) => TQuad.Of(L(n => of(n)[0]), L(n => of(n)[1]), L(n => of(n)[2]), L(n => of(n)[3]));
        TQuad Rest(Func<RideNumbers, double[]> of) =>
            TQuad.Of(L(n => 1.0 - of(n)[0]), L(n => 1.0 - of(n)[1]), L(n => 1.0 - of(n)[2]), L(n => 1.0 - of(n)[3]));
        TQuad[] H(Func<RideNumbers, Hinges> of, Func<Hinges, List<double[]>> part)
        {
            var none = new double[4];
            return [.. Enumerable.Range(0, cars.Max(n => of(n).Count)).Select(j => Q(n => j < of(n).Count ? part(of(n))[j] : none))];
        }

        TQuad[] P(Func<RideNumbers, double[][]> of) => [Q(n => of(n)[0]), Q(n => of(n)[1]), Q(n => of(n)[2])];
        return new RideConstants<TQuad, TLane>
        {
            Needs = needs,
            PerMass = L(n => 1.0 / n.Body.Mass),
            PitchPerPitch = L(n => n.Rolls ? n.Body.RollInertia / Determinant(n) : 1.0 / n.Body.PitchInertia),
            RollPerRoll = L(n => n.Rolls ? n.Body.PitchInertia / Determinant(n) : 0.0),
            // A two-wheeler does not roll; its track and with it its roll inertia may be zero.
            PitchPerRoll = L(n => n.Rolls ? n.Body.InertiaProduct / Determinant(n) : 0.0),
            PitchGravity = L(n => n.PitchGravity),
            RollGravity = L(n => n.RollGravity),
            X = Q(n => n.X),
            Y = Q(n => n.Y),
            PerWheel = Q(n => n.PerWheel),
            AcrossAxle = Q(n => n.AcrossAxle),
            TrimTravel = Q(n => n.TrimTravel),
            TrimForce = Q(n => n.TrimForce),
            TrimUnload = Q(n => [-n.TrimLoad[0], -n.TrimLoad[1], -n.TrimLoad[2], -n.TrimLoad[3]]),
            TrimFlow = Q(n => n.TrimFlow),
            TyreRate = Q(n => n.TyreRate),
            TyreDamping = Q(n => n.TyreDamping),
            SpringConstant = Q(n => n.Laws.SpringConstant),
            SpringSlope = Q(n => n.Laws.SpringSlope),
            GasForce = Q(n => n.Laws.GasForce),
            GasAreaPerVolume = Q(n => n.Laws.GasAreaPerVolume),
            GasExponent = Q(n => n.Laws.GasExponent),
            DamperConstant = Q(n => n.Laws.DamperConstant),
            DamperSlope = Q(n => n.Laws.DamperSlope),
            DamperGas = Q(n => n.Laws.DamperGas),
            StopConstant = Q(n => n.Laws.StopConstant),
            Bar = Q(n => n.Laws.Bar),
            FrictionRate = Q(n => [.. n.Laws.Friction.Zip(n.Laws.PreSliding, (force, travel) => force / travel)]),
            PreSliding = Q(n => n.Laws.PreSliding),
            PreSlidingBack = Q(n => [.. n.Laws.PreSliding.Select(travel => -travel)]),
            SpringShare = Q(n => n.Laws.SpringShare),
            DamperShare = Q(n => n.Laws.DamperShare),
            StopShare = Q(n => n.Laws.StopShare),
            LinkRatio = Q(n => n.Laws.LinkRatio),
            FluidArea = Q(n => n.Laws.FluidArea),
            FluidSign = Q(n => n.Laws.FluidSign),
            FluidStiffness = Q(n => n.Laws.FluidStiffness),
            FluidGasPressure = Q(n => n.Laws.FluidGasPressure),
            FluidPerVolume = Q(n => n.Laws.FluidPerVolume),
            FluidExponent = Q(n => n.Laws.FluidExponent),
            SpringOther = Rest(n => n.Laws.SpringShare),
            DamperOther = Rest(n => n.Laws.DamperShare),
            StopOther = Rest(n => n.Laws.StopShare),
            SpringAt = H(n => n.Laws.SpringHinges, h => h.At),
            SpringBend = H(n => n.Laws.SpringHinges, h => h.Bend),
            DamperAt = H(n => n.Laws.DamperHinges, h => h.At),
            DamperBend = H(n => n.Laws.DamperHinges, h => h.Bend),
            BumpAt = H(n => n.Laws.BumpHinges, h => h.At),
            BumpBend = H(n => n.Laws.BumpHinges, h => h.Bend),
            ReboundAt = H(n => n.Laws.ReboundHinges, h => h.At),
            ReboundBend = H(n => n.Laws.ReboundHinges, h => h.Bend),
            SpringRatio = P(n => n.Laws.SpringRatio),
            DamperRatio = P(n => n.Laws.DamperRatio),
            CurvedBump = P(n => n.Laws.CurvedBump),
            CurvedRebound = P(n => n.Laws.CurvedRebound),
            LinkRate = L(n => n.Laws.LinkRate),
            LinkDamping = L(n => n.Laws.LinkDamping),
            LinkCarried = L(n => n.Laws.LinkCarried),
            LinkGasPressure = TQuad.All(L(n => n.Laws.LinkGasPressure)),
            LinkPerVolume = TQuad.All(L(n => n.Laws.LinkPerVolume)),
            LinkExponent = TQuad.All(L(n => n.Laws.LinkExponent)),
            FluidPressure = TQuad.All(L(n => n.Laws.FluidPressure)),
            PerInertance = TQuad.All(L(n => n.Laws.FluidFlows && !n.Laws.FluidResists ? 1.0 / n.Laws.FluidInertance : 0.0)),
            PerResistance = TQuad.All(L(n => n.Laws.FluidResists ? 1.0 / n.Laws.FluidResistance : 0.0)),
            FluidResistance = TQuad.All(L(n => n.Laws.FluidResistance)),
        };
    }

    private static double Determinant(RideNumbers n) => (n.Body.PitchInertia * n.Body.RollInertia) - (n.Body.InertiaProduct * n.Body.InertiaProduct);
}
