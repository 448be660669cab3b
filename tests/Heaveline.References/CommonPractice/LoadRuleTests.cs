using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Modes;

namespace Heaveline.References.CommonPractice;

/// <summary>Common practice, no source: deflections equal at the greatest load, the rear's 70 % of the front's at the lightest.</summary>
public class LoadRuleTests
{
    [Fact]
    public void A_rear_with_70_percent_of_the_fronts_deflection_at_light_load_has_1_20_times_its_frequency()
    {
        var axle = new Axle
        {
            Track = new(1.5),
            UnsprungMass = new(60.0),
            Spring = new Spring { Law = new LinearSpring { Rate = new(18000.0) } },
            Damper = new Damper { Law = new RatioDamper { Ratio = new(0.3) } },
            Tyre = new Tyre { Rate = new(190000.0) },
        };
        var car = new Car
        {
            Name = "light tail",
            Wheelbase = new(2.6),
            Weighing = Weighing.PerAxle(new(700.0 + 60.0), new(490.0 + 60.0)),
            Body = new Body { CentreHeight = new(0.55) },
            Front = axle,
            Rear = axle,
        };
        var full =
            new LoadState { Name = "full", Loads = [new Load { Name = "boot", Mass = new(210.0), BehindFrontAxle = new(2.6), Height = new(0.55) }] };

        var light = AxleRide.Of(RideModel.Of(car));
        Assert.Equal(0.70, light[1].Rates.Deflection / light[0].Rates.Deflection, 1e-9);
        Assert.Equal(1.195, light[1].Rates.FrequencyOnRigidTyres / light[0].Rates.FrequencyOnRigidTyres, 5e-4);

        var laden = AxleRide.Of(RideModel.Of(car, full));
        Assert.Equal(1.0, laden[1].Rates.Deflection / laden[0].Rates.Deflection, 1e-9);
        Assert.Equal(1.0, laden[1].Rates.Frequency / laden[0].Rates.Frequency, 1e-9);
    }
}
