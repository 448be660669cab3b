using Heaveline.Cars;
using Heaveline.Quantities;

namespace Heaveline.Tests.Measures;

/// <summary>A car of textbooks: a rigid body on four like springs, wheels of a gram, tyres as stiff as rock unless a test says otherwise.</summary>
internal static class BodyOnSprings
{
    public static Car Of(
        double mass,
        double wheelRate,
        double wheelbase = 2.7,
        double track = 1.5,
        double height = 0.5,
        double? rollAxis = 0.1,
        double bar = 0.0,
        double tyre = 1e10,
        double unsprung = 1e-3)
    {
        var axle = new Axle
        {
            Track = new(track),
            UnsprungMass = new(unsprung),
            Spring = new Spring { Law = new LinearSpring { Rate = new(wheelRate) } },
            Damper = new Damper { Law = new RatioDamper { Ratio = new(0.3) } },
            AntiRollBar = new(bar),
            Tyre = new Tyre { Rate = new(tyre) },
        };
        return new Car
        {
            Name = "a body on springs",
            Wheelbase = new(wheelbase),
            Weighing = Weighing.PerAxle(new((0.5 * mass) + unsprung), new((0.5 * mass) + unsprung)),
            Body = new Body { CentreHeight = new(height), RollAxisHeight = rollAxis is { } axis ? new Amount<Length>(axis) : null },
            Front = axle,
            Rear = axle,
        };
    }
}
