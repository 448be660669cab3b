using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Quantities;

namespace Heaveline.Tests.Models;

public class TrimRefusalTests
{
    [Fact]
    public void A_load_far_behind_the_rear_axle_tips_the_car_and_is_refused()
    {
        var refusal = Assert.Throws<RefusedValueException>(() => RideModel.Of(PlainCar.Saloon, PlainCar.With(900.0, 6.0)));
        Assert.Contains("tip over an axle", refusal.Advice, StringComparison.Ordinal);
    }

    [Fact]
    public void A_load_far_outside_the_track_has_no_standing_position_and_is_refused()
    {
        var refusal = Assert.Throws<RefusedValueException>(() => RideModel.Of(PlainCar.Saloon, PlainCar.With(1000.0, 1.3, left: 2.0)));
        Assert.Contains("tip over", refusal.Advice, StringComparison.Ordinal);
    }

    [Fact]
    public void A_wheel_lifted_off_the_ground_by_a_stiff_bar_and_a_one_sided_load_is_named()
    {
        var car = PlainCar.Saloon with { Front = PlainCar.FrontAxle with { AntiRollBar = new(3e5) } };
        var refusal = Assert.Throws<RefusedValueException>(() => RideModel.Of(car, PlainCar.With(600.0, 2.6, left: 1.0)));
        Assert.Contains("front right wheel off the ground", refusal.Value, StringComparison.Ordinal);
    }

    [Fact]
    public void A_load_that_bottoms_the_suspension_is_refused_with_the_wheel_and_the_travel()
    {
        var hard = new Stop { Clearance = new(0.020), Rate = new Amount<Stiffness>(30000.0), SolidAfter = new Amount<Length>(0.010) };
        var car = PlainCar.Saloon with { Rear = PlainCar.RearAxle with { BumpStop = hard } };
        var refusal = Assert.Throws<RefusedValueException>(() => RideModel.Of(car, PlainCar.With(250.0, 2.6)));
        Assert.Contains("rear left wheel", refusal.Value, StringComparison.Ordinal);
        Assert.Contains("30 mm", refusal.Limit, StringComparison.Ordinal);
    }

    [Fact]
    public void Unloading_past_the_rebound_stops_end_is_refused()
    {
        var hard = new Stop { Clearance = new(0.005), Rate = new Amount<Stiffness>(1000.0), SolidAfter = new Amount<Length>(0.010) };
        var car = PlainCar.Saloon with { Front = PlainCar.FrontAxle with { ReboundStop = hard } };
        var refusal = Assert.Throws<RefusedValueException>(() => RideModel.Of(car, PlainCar.With(-150.0, 0.0)));
        Assert.Contains("droop", refusal.Value, StringComparison.Ordinal);
    }

    [Fact]
    public void An_open_line_that_carries_nearly_all_of_the_car_cannot_hold_it_level_and_is_named()
    {
        var refusal = Assert.Throws<RefusedValueException>(() => RideModel.Of(OnFluid(LineState.Open, cornerRate: 50.0)));
        Assert.Contains("without stiffness in pitch", refusal.Value, StringComparison.Ordinal);
        Assert.Contains("corner springs", refusal.Advice, StringComparison.Ordinal);
    }

    [Fact]
    public void A_pipe_is_an_open_line_to_a_car_at_rest_and_cannot_hold_it_level_either()
    {
        var refusal = Assert.Throws<RefusedValueException>(() => RideModel.Of(OnFluid(LineState.Pipe, cornerRate: 50.0)));
        Assert.Contains("without stiffness in pitch", refusal.Value, StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_displacers_with_their_line_shut_hold_the_car_level()
    {
        var model = RideModel.Of(OnFluid(LineState.Shut, cornerRate: 50.0));
        Assert.Equal(0.0, model.Trim.Pitch, 1e-9);
    }

    [Fact]
    public void A_link_in_heave_with_corner_springs_too_soft_for_gravitys_tilting_moment_is_named()
    {
        var car = Soft(PlainCar.Saloon, 50.0) with { Interconnection = new ElasticLink { Rate = new(12000.0) } };
        var refusal = Assert.Throws<RefusedValueException>(() => RideModel.Of(car));
        Assert.Contains("without stiffness in pitch", refusal.Value, StringComparison.Ordinal);
        Assert.NotNull(RideModel.Of(Soft(PlainCar.Saloon, 5000.0) with { Interconnection = car.Interconnection }));
    }

    [Fact]
    public void An_interconnection_that_carries_more_than_the_car_weighs_is_refused()
    {
        var car = PlainCar.Saloon with { Interconnection = new ElasticLink { Rate = new(5000.0), Carried = new(5000.0) } };
        var refusal = Assert.Throws<RefusedValueException>(() => RideModel.Of(car));
        Assert.Contains("pulled with", refusal.Value, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(LineState.Pipe)]
    [InlineData(LineState.Open)]
    [InlineData(LineState.Shut)]
    public void A_line_that_would_have_to_suck_is_refused(LineState state)
    {
        // Little pressure in stiff displacers: taking weight out draws the fluid down.
        var link = Fluid(state, area: 1e-3, pressure: 1e5, compliance: 2e-11);
        var car = PlainCar.Saloon with { Interconnection = link };
        var refusal = Assert.Throws<RefusedValueException>(() => RideModel.Of(car, PlainCar.With(-120.0, 1.3)));
        Assert.Equal("line pressure", refusal.What);
    }

    private static Car OnFluid(LineState state, double cornerRate)
    {
        // 4.0 cm² at 45 bar carry 1800 N of the 2491 N or more at each wheel.
        var car = Soft(PlainCar.Saloon, cornerRate);
        return car with { Interconnection = Fluid(state, area: 4e-4, pressure: 4.5e6, compliance: 8e-12) };
    }

    private static FluidLink Fluid(LineState state, double area, double pressure, double compliance)
    {
        var unit = new Accumulator { Compliance = new Amount<Compliance>(compliance) };
        return new FluidLink
        {
            FrontArea = new(area), RearArea = new(area), Front = unit, Rear = unit, BasePressure = new(pressure),
            Line = new FluidLine { State = state, Inertance = new(1e7), Resistance = new(1e8) },
        };
    }

    private static Car Soft(Car car, double rate)
    {
        var spring = new Spring { Law = new LinearSpring { Rate = new(rate) } };
        return car with
        {
            Body = car.Body with { PitchAxisHeight = new Amount<Length>(0.2) },
            Front = car.Front with { Spring = spring },
            Rear = car.Rear with { Spring = spring },
        };
    }
}
