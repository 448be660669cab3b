using Heaveline.Elements;
using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Quantities;

namespace Heaveline.Tests.Measures;

/// <summary>
/// Pitch in braking and driving against statics: moments about the ground line, Hooke's law at the axles (docs/theory/side-effects.md).
/// </summary>
public class BrakingTests
{
    private const double Mass = 1200.0;

    private static readonly double Rate = 0.25 * Mass * Math.Pow(2.0 * Math.PI * 1.2, 2);

    private static Car Plain => BodyOnSprings.Of(Mass, Rate);

    // m·a·h = K·(L/2)²·θ with K = m·(2πf)²: θ = a·h/((2πf)²·(L/2)²). At 0.5 g, h 0.5 m, 1.2 Hz, 2.7 m: 1.355°.
    [Fact]
    public void Half_a_g_pitches_a_body_of_1_2_Hz_by_1_35_degrees()
    {
        var expected = 0.5 * Gravity.Standard * 0.5 / (Math.Pow(2.0 * Math.PI * 1.2, 2) * 1.35 * 1.35);
        var angle = 0.5 * SideEffects.Of(RideModel.Of(Plain)).Braking.Angle;
        Assert.Equal(expected, angle, 1e-5 * expected);
        Assert.Equal(1.35, angle * 180.0 / Math.PI, 0.01);
    }

    [Fact]
    public void Half_the_heave_stiffness_in_a_common_spring_doubles_the_pitch()
    {
        // Corner springs of half the rate; a common spring of each side adds 4·k per side in heave and nothing in pitch about the middle.
        var axle = Plain.Front with { Spring = new Spring { Law = new LinearSpring { Rate = new(0.5 * Rate) } } };
        var linked = Plain with { Front = axle, Rear = axle, Interconnection = new ElasticLink { Rate = new(0.25 * Rate) } };
        var change = SideEffectsChange.Between(SideEffects.Of(RideModel.Of(Plain)), SideEffects.Of(RideModel.Of(linked)));
        Assert.Equal(2.0, change.BrakingRatio, 1e-5);
        Assert.Equal(2.70, 0.5 * change.After.Braking.Angle * 180.0 / Math.PI, 0.02);
    }

    [Theory]
    [InlineData(-0.5)]
    [InlineData(0.3)]
    public void Where_all_is_straight_the_whole_balance_gives_the_tangent_times_the_braking(double g)
    {
        var model = RideModel.Of(
            PlainCar.Saloon with { Brakes = Geared, Body = PlainCar.Saloon.Body with { PitchAxisHeight = new Amount<Length>(0.25) } },
            PlainCar.With(150.0, 2.2, 0.3));
        var effects = SideEffects.Of(model);
        var attitude = Attitude.Of(model, g * Gravity.Standard);
        var tangent = g < 0.0 ? effects.Braking : effects.Driving;
        Assert.Equal(Math.Abs(g) * tangent.Angle, attitude.Pitch, 1e-8);
        Assert.Equal(Math.Abs(g) * tangent.FrontHeight, attitude.Trim.FrontHeight - model.Trim.FrontHeight, 1e-6);
    }

    // Moments about the rear contact: what is moved to the front is m·a·h/L of the whole car, whatever springs and links do.
    [Fact]
    public void The_load_moved_is_m_a_h_over_L_with_and_without_anti_dive()
    {
        var car = PlainCar.Saloon;
        var moved = 0.5 * Gravity.Standard * (((1250.0 - 134.0) * 0.55) + (134.0 * 0.31)) / 2.6;
        foreach (var brakes in new[] { Geared, Geared with { AntiDiveFront = new(0.0), AntiLiftRear = new(0.0) } })
        {
            var model = RideModel.Of(car with { Brakes = brakes });
            var load = Attitude.Of(model, -0.5 * Gravity.Standard).Trim.WheelLoad;
            Assert.Equal(moved, load[0] + load[1] - (670.0 * Gravity.Standard), 1e-4);
            Assert.Equal(moved, (580.0 * Gravity.Standard) - load[2] - load[3], 1e-4);
        }
    }

    [Fact]
    public void Links_that_carry_all_leave_only_the_tyres_to_pitch_on()
    {
        var brakes = new BrakeGeometry { AntiDiveFront = new(1.0), AntiLiftRear = new(1.0) };
        var model = RideModel.Of(BodyOnSprings.Of(Mass, Rate, tyre: 2e5, unsprung: 80.0) with { Brakes = brakes });
        var braking = SideEffects.Of(model).Braking;
        Assert.Equal(braking.MovedLoad * (1.0 / 4e5 + 1.0 / 4e5) / 2.7, braking.Angle, 1e-9);
        Assert.True(braking.LinkShare > 0.8);
    }

    [Fact]
    public void Half_the_load_in_the_links_at_both_ends_halves_the_pitch_on_rigid_tyres()
    {
        var braking = SideEffects.Of(RideModel.Of(
            Plain with { Brakes = new BrakeGeometry { AntiDiveFront = new(0.5), AntiLiftRear = new(0.5) } })).Braking;
        Assert.Equal(0.5, braking.LinkShare, 1e-6);
    }

    // Gillespie's rule: 100 % anti-dive asks for tan φ = h/(p·L) in front and h/((1 − p)·L) behind.
    [Fact]
    public void The_slope_of_the_support_follows_from_share_height_and_brake_balance()
    {
        var brakes = new BrakeGeometry { FrontBrakeShare = new Amount<Plain>(0.65), AntiDiveFront = new(0.3), AntiLiftRear = new(1.0) };
        var effects = SideEffects.Of(RideModel.Of(Plain with { Brakes = brakes }));
        Assert.Equal(0.3 * 0.5 / (0.65 * 2.7), Math.Tan(effects.FrontSupportAngle!.Value), 1e-6);
        Assert.Equal(0.5 / (0.35 * 2.7), Math.Tan(effects.RearSupportAngle!.Value), 1e-6);
        Assert.Null(SideEffects.Of(RideModel.Of(Plain)).FrontSupportAngle);
    }

    [Fact]
    public void Anti_squat_counts_only_where_wheels_drive()
    {
        var brakes = new BrakeGeometry { AntiSquatRear = new(0.5), DrivenAxle = DrivenAxle.Front };
        Assert.Equal(0.0, SideEffects.Of(RideModel.Of(Plain with { Brakes = brakes })).Driving.LinkShare, 1e-12);
        Assert.Equal(
            0.25, SideEffects.Of(RideModel.Of(Plain with { Brakes = brakes with { DrivenAxle = DrivenAxle.Rear } })).Driving.LinkShare, 1e-6);
    }

    [Fact]
    public void Braking_that_lifts_the_rear_wheels_is_refused()
    {
        var tall = RideModel.Of(BodyOnSprings.Of(Mass, Rate, wheelbase: 1.3, height: 1.2));
        Assert.Contains(
            "rear axle would leave the ground",
            Assert.Throws<RefusedValueException>(() => Attitude.Of(tall, -9.0)).Message,
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_stop_that_is_met_makes_the_dive_less_than_the_tangent_says()
    {
        var stop = new Stop { Clearance = new(0.010), Rate = new Amount<Stiffness>(60000.0) };
        var car = Plain with { Front = Plain.Front with { BumpStop = stop } };
        var model = RideModel.Of(car);
        var attitude = Attitude.Of(model, -0.7 * Gravity.Standard);
        Assert.True(attitude.Trim.BumpLeft[0] < 0.0);
        Assert.True(attitude.Pitch < 0.7 * SideEffects.Of(model).Braking.Angle * 0.9);
    }

    private static BrakeGeometry Geared { get; } = new()
    {
        FrontBrakeShare = new Amount<Plain>(0.68),
        AntiDiveFront = new(0.25),
        AntiLiftRear = new(0.30),
        AntiSquatRear = new(0.40),
        WheelRadius = new(0.31),
    };
}
