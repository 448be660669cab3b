using Heaveline.Cars;
using Heaveline.Quantities;

namespace Heaveline.Tests;

/// <summary>A plain linear car with round numbers, to be changed with <c>with</c> where a test needs something else.</summary>
internal static class PlainCar
{
    public static Axle FrontAxle { get; } = new()
    {
        Track = new(1.5),
        UnsprungMass = new(70.0),
        Spring = new Spring { Law = new LinearSpring { Rate = new(21000.0) } },
        Damper = new Damper { Law = new TableDamper(new ForceTable([1.0, 2.0], [1000.0, 2000.0]), new ForceTable([1.0, 2.0], [2000.0, 4000.0])) },
        AntiRollBar = new(6000.0),
        Tyre = new Tyre { Rate = new(190000.0) },
    };

    public static Axle RearAxle { get; } =
        FrontAxle with { UnsprungMass = new(64.0), Spring = new Spring { Law = new LinearSpring { Rate = new(24000.0) } }, AntiRollBar = new(0.0) };

    /// <summary>670 kg and 580 kg on the axles, 2.6 m wheelbase.</summary>
    public static Car Saloon { get; } = new()
    {
        Name = "plain saloon",
        Wheelbase = new(2.6),
        Weighing = Weighing.PerAxle(new(670.0), new(580.0)),
        Body = new Body { CentreHeight = new(0.55), DynamicIndex = new(0.95), RollInertia = new Amount<Inertia>(420.0) },
        Front = FrontAxle,
        Rear = RearAxle,
    };

    /// <summary>One mass at one place.</summary>
    public static LoadState With(double mass, double behindFrontAxle, double left = 0.0, double height = 0.55) => new()
    {
        Name = "load",
        Loads = [new Load
        {
            Name = "load",
            Mass = new(mass),
            BehindFrontAxle = new(behindFrontAxle),
            LeftOfMiddle = new(left),
            Height = new(height),
        }],
    };
}
