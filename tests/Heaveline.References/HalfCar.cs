using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Quantities;

namespace Heaveline.References;

/// <summary>
/// The plain vehicle of textbooks: a rigid body on two springs, in one plane. Wheels weigh a gram and tyres are as stiff as rock (1e10 N/m) unless
/// the source gives them, so that the springs alone count.
/// </summary>
internal sealed record HalfCar
{
    public required double Mass { get; init; }

    public required double PitchInertia { get; init; }

    public required double FrontArm { get; init; }

    public required double RearArm { get; init; }

    public required double FrontRate { get; init; }

    public required double RearRate { get; init; }

    public double FrontDamping { get; init; }

    public double RearDamping { get; init; }

    public DamperLaw? Damper { get; init; }

    public double UnsprungPerAxle { get; init; } = 1e-3;

    public double TyreRate { get; init; } = 1e10;

    /// <summary>One mass on one spring: two equal ends, each with half of both, one metre apart and with dynamic index 1.</summary>
    public static HalfCar Single(double mass, double rate, double damping = 0.0) => new()
    {
        Mass = mass,
        PitchInertia = mass,
        FrontArm = 1.0,
        RearArm = 1.0,
        FrontRate = 0.5 * rate,
        RearRate = 0.5 * rate,
        FrontDamping = 0.5 * damping,
        RearDamping = 0.5 * damping,
    };

    public RideModel Model() => RideModel.Of(ToCar());

    public Car ToCar()
    {
        var length = FrontArm + RearArm;
        return new Car
        {
            Name = "a body on two springs",
            Kind = VehicleKind.TwoWheeler,
            Wheelbase = new(length),
            Weighing = Weighing.PerAxle(new((Mass * RearArm / length) + UnsprungPerAxle), new((Mass * FrontArm / length) + UnsprungPerAxle)),
            Body = new Body { CentreHeight = new(0.5), PitchInertia = new Amount<Inertia>(PitchInertia) },
            Front = AxleOf(FrontRate, FrontDamping),
            Rear = AxleOf(RearRate, RearDamping),
        };
    }

    private Axle AxleOf(double rate, double damping) => new()
    {
        UnsprungMass = new(UnsprungPerAxle),
        Spring = new Spring { Law = new LinearSpring { Rate = new(rate) } },
        Damper = new Damper { Law = Damper ?? new TableDamper(Line(damping), Line(damping)) },
        Tyre = new Tyre { Rate = new(TyreRate) },
    };

    private static ForceTable Line(double damping) => new([1.0, 2.0], [damping, 2.0 * damping]);
}
