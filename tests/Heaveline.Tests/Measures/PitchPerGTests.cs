using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;

namespace Heaveline.Tests.Measures;

/// <summary>Pitch per g by hand: what m·g·h/L moves between the axles, over the springs that carry it. Wheels of a gram on tyres of rock.</summary>
public class PitchPerGTests
{
    private const double Mass = 1200.0;
    private const double Front = 20000.0;
    private const double Rear = 30000.0;

    // h 0.5 m, L 2.7 m.
    private const double Moved = Mass * 9.80665 * 0.5 / 2.7;

    private static Car Uneven(BrakeGeometry? brakes = null)
    {
        var car = BodyOnSprings.Of(Mass, Front);
        return car with { Rear = car.Rear with { Spring = new Spring { Law = new LinearSpring { Rate = new(Rear) } } }, Brakes = brakes };
    }

    [Fact]
    public void The_front_sinks_and_the_rear_rises_by_the_moved_load_over_their_springs()
    {
        var braking = SideEffects.Of(RideModel.Of(Uneven())).Braking;
        Same(Moved, braking.MovedLoad);
        Same(-Moved / (2.0 * Front), braking.FrontHeight);
        Same(Moved / (2.0 * Rear), braking.RearHeight);
        Same(((Moved / (2.0 * Front)) + (Moved / (2.0 * Rear))) / 2.7, braking.Angle);
        Same(braking.Angle, braking.WithoutLinks);
        Assert.Equal(0.0, braking.LinkShare, 1e-9);
    }

    [Fact]
    public void Driving_is_braking_the_other_way_round()
    {
        var effects = SideEffects.Of(RideModel.Of(Uneven()));
        Same(-effects.Braking.Angle, effects.Driving.Angle);
        Same(-effects.Braking.FrontHeight, effects.Driving.FrontHeight);
        Same(-effects.Braking.RearHeight, effects.Driving.RearHeight);
    }

    // Anti-dive carries a fifth of the front's moved load, anti-lift three tenths of the rear's.
    [Fact]
    public void Links_take_their_share_of_each_end_away()
    {
        var braking = SideEffects.Of(RideModel.Of(Uneven(new BrakeGeometry { AntiDiveFront = new(0.2), AntiLiftRear = new(0.3) }))).Braking;
        Same(-0.8 * Moved / (2.0 * Front), braking.FrontHeight);
        Same(0.7 * Moved / (2.0 * Rear), braking.RearHeight);
        var angle = ((0.8 * Moved / (2.0 * Front)) + (0.7 * Moved / (2.0 * Rear))) / 2.7;
        var free = ((Moved / (2.0 * Front)) + (Moved / (2.0 * Rear))) / 2.7;
        Same(angle, braking.Angle);
        Same(free, braking.WithoutLinks);
        Assert.Equal(1.0 - (angle / free), braking.LinkShare, 1e-5);
    }

    private static void Same(double expected, double actual) => Assert.Equal(expected, actual, 2e-5 * Math.Abs(expected));
}
