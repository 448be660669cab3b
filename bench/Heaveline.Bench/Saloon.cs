using Heaveline.Cars;
using Heaveline.Roads;

namespace Heaveline.Bench;

/// <summary>
/// The measured job: an invented saloon with digressive dampers, both stops and damped tyres over a round-top hump of 100 mm at 60 km/h, 4 s.
/// </summary>
internal static class Saloon
{
    public const double Speed = 60.0 / 3.6;

    public static Road Hump { get; } = Road.From(new RoundTopHump { Height = new(0.100), Length = new(3.7) });

    /// <summary>The car with its springs multiplied by a factor, so that cars side by side differ.</summary>
    public static Car Of(double springs = 1.0) => new()
    {
        Name = "bench saloon",
        Wheelbase = new(2.70),
        Weighing = Weighing.PerAxle(new(834.0), new(676.0)),
        Body = new Body
        {
            CentreHeight = new(0.56),
            PitchAxisHeight = new(0.28),
            RollAxisHeight = new(0.08),
            PitchInertia = new(2100.0),
            RollInertia = new(480.0),
        },
        Front = Axle(springs * 24000.0, 1.52, 84.0, 14000.0, 0.045),
        Rear = Axle(springs * 26000.0, 1.50, 76.0, 6000.0, 0.055),
    };

    /// <summary>The car with dry friction of so many newtons at every wheel, which rises to it over a travel, m.</summary>
    public static Car Rubbing(double force, double preSliding = 3e-4)
    {
        var (car, friction) = (Of(), new Friction { HalfWidth = new(force), PreSliding = new(preSliding) });
        return car with { Front = car.Front with { Friction = friction }, Rear = car.Rear with { Friction = friction } };
    }

    private static Axle Axle(double rate, double track, double unsprung, double bar, double clearance) => new()
    {
        Track = new(track),
        UnsprungMass = new(unsprung),
        Spring = new Spring { Law = new LinearSpring { Rate = new(rate) } },
        Damper = new Damper
        {
            Law = new TableDamper(
                new ForceTable([0.025, 0.05, 0.13, 0.26, 0.52, 1.0], [90, 150, 290, 450, 700, 1100]),
                new ForceTable([0.025, 0.05, 0.13, 0.26, 0.52, 1.0], [170, 300, 640, 1000, 1500, 2300])),
        },
        BumpStop = new Stop { Clearance = new(clearance), Table = new ForceTable([0.0, 0.015, 0.025, 0.035], [0.0, 300.0, 900.0, 2400.0]) },
        ReboundStop = new Stop { Clearance = new(0.07), Rate = new(120000.0) },
        AntiRollBar = new(bar),
        Tyre = new Tyre { Rate = new(220000.0), Damping = new(120.0), ContactLength = new(0.12) },
    };
}
