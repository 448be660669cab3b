using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Quantities;

namespace Heaveline.Tests.Measures;

/// <summary>Stress of a coil by Wahl's formula, τ = K_w·8·F·D/(π·d³), with the forces worked out by hand.</summary>
public class SpringStressTests
{
    // Index 10: K_w = 39/36 + 0.0615.
    private static readonly CoilDimensions Coil = new() { Wire = new(0.012), MeanDiameter = new(0.120), ActiveCoils = new(8.0) };

    private static double Stress(double force) => ((39.0 / 36.0) + 0.0615) * 8.0 * force * 0.120 / (Math.PI * 0.012 * 0.012 * 0.012);

    private static Car Standing(Stop? bump, double ratio = 1.0)
    {
        var car = BodyOnSprings.Of(1000.0, 20000.0);
        var spring = new Spring
        {
            Law = new LinearSpring { Rate = new(20000.0), Dimensions = Coil },
            MotionRatio = new MotionRatio { AtReference = new(ratio) },
        };
        return car with { Front = car.Front with { Spring = spring, BumpStop = bump } };
    }

    // 250 kg on each wheel.
    [Fact]
    public void Standing_it_carries_its_wheels_share_of_the_body()
    {
        var stress = SideEffects.Of(RideModel.Of(Standing(null))).Wheels[1].Stress!;
        Assert.Equal("shear", stress.Kind);
        Assert.Equal(250.0 * 9.80665, stress.ForceAtTrim, 1e-2);
        Assert.Equal(Stress(250.0 * 9.80665), stress.AtTrim, 1e-5 * stress.AtTrim);
        Assert.Null(stress.AtFullBump);
        Assert.Null(stress.FullBump);
    }

    [Fact]
    public void Full_bump_is_the_stops_hard_end_or_its_first_touch_where_no_end_is_given()
    {
        var soft = new Stop { Clearance = new(0.07), Rate = new Amount<Stiffness>(40e3) };
        var touch = SideEffects.Of(RideModel.Of(Standing(soft))).Wheels[0].Stress!;
        Assert.Equal(0.07, touch.FullBump!.Value, 1e-12);
        Assert.Equal(Stress((250.0 * 9.80665) + (20000.0 * 0.07)), touch.AtFullBump!.Value, 1e-5 * touch.AtFullBump.Value);
        var end = SideEffects.Of(RideModel.Of(Standing(soft with { SolidAfter = new Amount<Length>(0.04) }))).Wheels[0].Stress!;
        Assert.Equal(0.11, end.FullBump!.Value, 1e-12);
        Assert.Equal(Stress((250.0 * 9.80665) + (20000.0 * 0.11)), end.AtFullBump!.Value, 1e-5 * end.AtFullBump.Value);
    }

    // On a beam both springs go with both wheels: at full bump of both, by the whole way, however near the middle they stand.
    [Fact]
    public void On_a_solid_axle_both_wheels_are_in_full_bump()
    {
        var car = Standing(new Stop { Clearance = new(0.07), Rate = new Amount<Stiffness>(40e3) });
        var beam =
            car.Front with { Suspension = SuspensionKind.SolidAxle, SpringBase = new Amount<Length>(0.9), RollInertia = new Amount<Inertia>(1e-3) };
        var stress = SideEffects.Of(RideModel.Of(car with { Front = beam })).Wheels[0].Stress!;
        Assert.Equal(Stress((250.0 * 9.80665) + (20000.0 * 0.07)), stress.AtFullBump!.Value, 1e-5 * stress.AtFullBump.Value);
    }

    // 120 kg on the front wheel less 15 kg of wheel, on one spring.
    [Fact]
    public void A_two_wheelers_spring_carries_all_of_its_end()
    {
        var car = Standing(null);
        var axle = car.Front with { Track = new(0.0), UnsprungMass = new(15.0) };
        var model = RideModel.Of(car with
        {
            Kind = VehicleKind.TwoWheeler,
            Wheelbase = new(1.4),
            Weighing = Weighing.PerAxle(new(120.0), new(130.0)),
            Body = new Body { CentreHeight = new(0.6) },
            Front = axle,
            Rear = car.Rear with { Track = new(0.0), UnsprungMass = new(15.0) },
        });
        Assert.Equal(105.0 * 9.80665, SideEffects.Of(model).Wheels[0].Stress!.ForceAtTrim, 1e-2);
    }

    // A spring that moves 0.8 of the wheel's way carries the wheel's load over 0.8.
    [Fact]
    public void A_motion_ratio_raises_the_force_and_shortens_the_way()
    {
        var car = Standing(new Stop { Clearance = new(0.07), Rate = new Amount<Stiffness>(40e3) }, 0.8);
        var stress = SideEffects.Of(RideModel.Of(car)).Wheels[0].Stress!;
        Assert.Equal(250.0 * 9.80665 / 0.8, stress.ForceAtTrim, 1e-2);
        Assert.Equal(Stress((250.0 * 9.80665 / 0.8) + (20000.0 * 0.8 * 0.07)), stress.AtFullBump!.Value, 1e-5 * stress.AtFullBump.Value);
    }
}
