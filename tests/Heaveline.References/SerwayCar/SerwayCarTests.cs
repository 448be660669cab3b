using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Quantities;

namespace Heaveline.References.SerwayCar;

/// <summary>A 1300 kg car on four springs of 20 kN/m with two people of together 160 kg in it.</summary>
public class SerwayCarTests
{
    [Fact]
    public void The_car_with_two_people_in_it_bounces_at_the_printed_frequency()
    {
        var axle = new Axle
        {
            Track = new(1.5),
            UnsprungMass = new(1e-3),
            Spring = new Spring { Law = new LinearSpring { Rate = new(20000.0) } },
            Damper = new Damper { Law = new RatioDamper { Ratio = new(0.0) } },
            Tyre = new Tyre { Rate = new(1e11) },
        };
        var car = new Car
        {
            Name = "four springs",
            Wheelbase = new(2.6),
            Weighing = Weighing.PerAxle(new(650.001), new(650.001)),
            Body = new Body { CentreHeight = new(0.5), PitchInertia = new Amount<Inertia>(2000.0), RollInertia = new Amount<Inertia>(500.0) },
            Front = axle,
            Rear = axle,
        };
        var people = new LoadState
        {
            Name = "two people",
            Loads = [new Load { Name = "two people", Mass = new(160.0), BehindFrontAxle = new(1.3), Height = new(0.5) }],
        };
        var bounce = BodyModes.Of(RideModel.Of(car, people)).Bounce;
        Assert.Equal(1.18, bounce.Frequency, 5e-3);
        Assert.Equal(1.17812, bounce.Frequency, 5e-6);
    }
}
