using Heaveline.Elements;
using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Quantities;

namespace Heaveline.Tests.Measures;

public class StandingTests
{
    // Wahl's formula by hand: wire 12.7 mm, mean diameter 120 mm, 2349 N: 404.3 MPa; 7.73 coils of G 79.3 GPa: 19.305 N/mm.
    [Fact]
    public void A_spring_of_known_wire_tells_its_stress_under_the_car()
    {
        var coil = new CoilDimensions { Wire = new(0.0127), MeanDiameter = new(0.120), ActiveCoils = new(7.73) };
        var car = BodyOnSprings.Of(4.0 * 2349.0 / Gravity.Standard, coil.Rate);
        var axle = car.Front with
        {
            Spring = new Spring { Law = new LinearSpring { Rate = new(coil.Rate), Dimensions = coil } },
            BumpStop = new Stop { Clearance = new(0.05), Rate = new Amount<Stiffness>(40000.0), SolidAfter = new Amount<Length>(0.03) },
        };
        var wheel = SideEffects.Of(RideModel.Of(car with { Front = axle })).Wheels[0];
        Assert.Equal(404.3e6, wheel.Stress!.AtTrim, 0.05e6);
        Assert.Equal(2349.0, wheel.Stress.ForceAtTrim, 1e-2);
        Assert.Equal(404.3e6 * (2349.0 + (19305.0 * 0.08)) / 2349.0, wheel.Stress.AtFullBump!.Value, 0.1e6);
        Assert.Equal(0.08, wheel.BumpLeftToMetal!.Value, 1e-9);
        Assert.Equal(0.05, wheel.BumpLeft!.Value, 1e-9);
        Assert.Null(wheel.DroopLeft);
    }

    // Torsion: τ = T·r/J with J = π·d⁴/32.
    [Fact]
    public void A_torsion_bar_is_sheared_by_its_torque()
    {
        var bar = new TorsionBarDimensions { Diameter = new(0.024), Length = new(1.0), Arm = new(0.35) };
        Assert.Equal(3000.0 * 0.35 * 0.012 / (Math.PI * Math.Pow(0.024, 4) / 32.0), bar.StressUnder(3000.0), 1.0);
    }

    [Fact]
    public void A_load_at_the_middle_sinks_every_wheel_by_its_share_over_the_rate()
    {
        var wheels = SideEffects.Of(RideModel.Of(BodyOnSprings.Of(1200.0, 20000.0), PlainCar.With(80.0, 1.35))).Wheels;
        Assert.All(wheels, w => Assert.Equal(20.0 * Gravity.Standard / 20000.0, w.Sag, 1e-6));
        Assert.All(wheels, w => Assert.Equal(-w.Sag, w.HeightChange, 1e-6));
        Assert.All(wheels, w => Assert.Equal(320.0 * Gravity.Standard / 20000.0, w.Deflection, 1e-6));
    }

    [Fact]
    public void A_load_on_the_left_sinks_the_left_more()
    {
        var wheels = SideEffects.Of(RideModel.Of(BodyOnSprings.Of(1200.0, 20000.0), PlainCar.With(80.0, 1.35, left: 0.4))).Wheels;
        Assert.True(wheels[0].HeightChange < wheels[1].HeightChange - 1e-3);
        Assert.Equal(-wheels[0].Sag, wheels[0].HeightChange, 1e-6);
        Assert.Equal(-wheels[1].Sag, wheels[1].HeightChange, 1e-6);
    }
}
