using Heaveline.Cars;

namespace Heaveline.Tests.Passes;

/// <summary>Invented cars without a curved element, one for each kind of coupling.</summary>
internal static class ExactCars
{
    private static readonly ForceTable Bump = new([0.03, 0.06, 0.15, 0.3, 0.6, 1.2], [105.0, 170.0, 310.0, 470.0, 740.0, 1210.0]);
    private static readonly ForceTable Rebound = new([0.03, 0.06, 0.15, 0.3, 0.6, 1.2], [210.0, 340.0, 620.0, 940.0, 1480.0, 2420.0]);

    /// <summary>Digressive dampers, both stops, tyre damping.</summary>
    internal static Car Saloon => new()
    {
        Name = "saloon",
        Wheelbase = new(2.72),
        Weighing = Weighing.PerAxle(new(869.0), new(717.0)),
        Body = new()
        {
            CentreHeight = new(0.58),
            PitchAxisHeight = new(0.30),
            RollAxisHeight = new(0.10),
            PitchInertia = new(2350.0),
            RollInertia = new(520.0),
        },
        Front = Axle(1.54, 86.0, 24500.0, 0.048, 0.075, 14500.0),
        Rear = Axle(1.51, 80.0, 27000.0, 0.058, 0.075, 6500.0),
    };

    /// <summary>No kink but the road's edges: dampers by ratio, no stops, no tyre damping.</summary>
    internal static Car Linear => Saloon with { Front = Plain(Saloon.Front), Rear = Plain(Saloon.Rear) };

    /// <summary>The saloon with tyres whose force never jumps.</summary>
    internal static Car OnUndampedTyres => Saloon with { Front = Undamped(Saloon.Front), Rear = Undamped(Saloon.Rear) };

    internal static Car SolidAxles => Saloon with { Front = Beam(Saloon.Front, 0.92, 1.04, 0.86), Rear = Beam(Saloon.Rear, 1.0, 0.88, 0.96) };

    internal static Car ElasticLinked => Saloon with
    {
        Front = Soft(Saloon.Front, 11000.0),
        Rear = Soft(Saloon.Rear, 9000.0),
        Interconnection = new ElasticLink { Rate = new(14000.0), RearRatio = new(0.85), Carried = new(900.0) },
    };

    internal static Car DamperLinked => ElasticLinked with
    {
        Interconnection = new ElasticLink { Rate = new(14000.0), Damping = new(700.0), RearRatio = new(0.85), Carried = new(900.0) },
    };

    internal static Car FluidLinked(LineState state) => Saloon with
    {
        Front = Soft(Saloon.Front, 11000.0),
        Rear = Soft(Saloon.Rear, 9000.0),
        Interconnection = new FluidLink
        {
            FrontArea = new(0.0019),
            RearArea = new(0.0017),
            Front = new() { Compliance = new(2.1e-10) },
            Rear = new() { Compliance = new(2.3e-10) },
            BasePressure = new(6e5),
            Line = new() { State = state, Inertance = new(6e6), Resistance = new(9e7) },
        },
    };

    /// <summary>A line without inertance: its flow settles in R/(1/C_f + 1/C_r) = 10 ms.</summary>
    internal static Car OnResistingLine => FluidLinked(LineState.Pipe) with
    {
        Interconnection = ((FluidLink)FluidLinked(LineState.Pipe).Interconnection!) with { Line = new() { Resistance = new(9e7) } },
    };

    internal static LoadState OffCentre => new()
    {
        Name = "one-sided",
        Loads = [new() { Name = "crate", Mass = new(180.0), BehindFrontAxle = new(2.1), LeftOfMiddle = new(0.45), Height = new(0.9) }],
    };

    internal static Car TwoWheeler => new()
    {
        Name = "two-wheeler",
        Kind = VehicleKind.TwoWheeler,
        Wheelbase = new(1.44),
        Weighing = Weighing.PerAxle(new(131.0), new(142.0)),
        Body = new() { CentreHeight = new(0.62), PitchAxisHeight = new(0.40), PitchInertia = new(38.0) },
        Front = Axle(0.0, 17.0, 17500.0, 0.075, 0.040, 0.0) with { Tyre = new() { Rate = new(165000.0), Damping = new(110.0) }, Damper = Fork },
        Rear = Axle(0.0, 21.0, 23500.0, 0.070, 0.040, 0.0) with { Tyre = new() { Rate = new(180000.0), Damping = new(110.0) }, Damper = Fork },
    };

    private static Damper Fork => new()
    {
        Law = new TableDamper(new([0.05, 0.15, 0.4, 1.0], [55.0, 140.0, 310.0, 640.0]), new([0.05, 0.15, 0.4, 1.0], [132.0, 336.0, 744.0, 1536.0])),
    };

    private static Axle Axle(double track, double unsprung, double rate, double bump, double rebound, double bar) => new()
    {
        Track = new(track),
        UnsprungMass = new(unsprung),
        Spring = new() { Law = new LinearSpring { Rate = new(rate) } },
        Damper = new() { Law = new TableDamper(Bump, Rebound) },
        BumpStop = new() { Clearance = new(bump), Table = new([0.0, 0.014, 0.024, 0.034], [0.0, 308.0, 958.0, 2558.0]) },
        ReboundStop = new() { Clearance = new(rebound), Rate = new(125000.0) },
        AntiRollBar = new(bar),
        Tyre = new() { Rate = new(215000.0), Damping = new(140.0) },
    };

    private static Axle Plain(Axle axle) => Undamped(axle) with
    {
        BumpStop = null,
        ReboundStop = null,
        Damper = new() { Law = new RatioDamper { Ratio = new(0.3) } },
    };

    private static Axle Undamped(Axle axle) => axle with { Tyre = new() { Rate = new(215000.0) } };

    private static Axle Beam(Axle axle, double springs, double dampers, double stops) => axle with
    {
        Suspension = SuspensionKind.SolidAxle,
        UnsprungMass = new(140.0),
        RollInertia = new(48.0),
        SpringBase = new(springs),
        DamperBase = new(dampers),
        StopBase = new(stops),
    };

    private static Axle Soft(Axle axle, double rate) => axle with { Spring = new() { Law = new LinearSpring { Rate = new(rate) } } };
}
