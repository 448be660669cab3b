using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Quantities;

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

    // A fork raked by ε with its brake on the slider: the brake's force F = m·a, backwards at the ground, works F·tan ε per travel and presses the
    // fork
    // together, beside the m·a·h/L that braking moves. Resolved along the leg by hand; four rakes, wheelbases and heights as shares tan ε·L/h.
    [Theory]
    [InlineData(24.5, 1.45, 0.62, 1.066)]
    [InlineData(27.0, 1.50, 0.60, 1.274)]
    [InlineData(22.0, 1.40, 0.66, 0.857)]
    [InlineData(24.62, 1.45, 0.56, 1.187)]
    public void A_raked_fork_dives_as_a_pro_dive_of_its_own_rake(double rake, double wheelbase, double height, double share)
    {
        Assert.Equal(share, Math.Tan(rake * Math.PI / 180.0) * wheelbase / height, 1e-3);
        var car = Uneven(new BrakeGeometry { ForkRake = Angle.FromDegrees(rake) });
        var braking = SideEffects.Of(RideModel.Of(car)).Braking;
        var pressed = (Mass * 9.80665 * Math.Tan(rake * Math.PI / 180.0)) + Moved;
        Same(-pressed / (2.0 * Front), braking.FrontHeight);
        Same(Moved / (2.0 * Rear), braking.RearHeight);
    }

    [Fact]
    public void A_fork_counts_as_the_anti_dive_that_follows_from_it_and_with_the_front_brakes_share()
    {
        var car = Uneven();
        double Angle(BrakeGeometry brakes) => SideEffects.Of(RideModel.Of(car with { Brakes = brakes })).Braking.Angle;
        var rake = Heaveline.Quantities.Angle.FromDegrees(15.0);
        var share = -Math.Tan(rake.Si) * 2.7 / 0.5;
        Assert.InRange(share, -2.0, -1.0);
        Same(Angle(new BrakeGeometry { AntiDiveFront = new(share) }), Angle(new BrakeGeometry { ForkRake = rake }));
        Same(
            Angle(new BrakeGeometry { AntiDiveFront = new(0.6 * share) }),
            Angle(new BrakeGeometry { ForkRake = rake, FrontBrakeShare = new Amount<Plain>(0.6) }));
        // Driving does not use the front brake.
        var driving = SideEffects.Of(RideModel.Of(car with { Brakes = new BrakeGeometry { ForkRake = rake } })).Driving;
        Assert.Equal(0.0, driving.LinkShare, 1e-12);
    }

    // By hand: the front sinks by Moved/2k at one g, the rear rises by its own, and a stop is met when that has used up its clearance.
    [Theory]
    [InlineData(0.040, 0.030, "front bump stop", 0.040 * 2.0 * Front / Moved)]
    [InlineData(0.040, 0.020, "rear rebound stop", 0.020 * 2.0 * Rear / Moved)]
    public void The_first_stop_is_met_where_the_travel_per_g_has_used_up_what_is_left(double bump, double rebound, string stop, double gravities)
    {
        var first = SideEffects.Of(RideModel.Of(Stopped(bump, rebound))).Braking.FirstStop!;
        Assert.Equal(stop, first.Stop);
        Assert.InRange(gravities, 0.1, 0.9);
        Same(gravities * 9.80665, first.Acceleration);
        Assert.Contains(FormattableString.Invariant($"{stop} is met at {gravities:F2} g"), first.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void No_stop_is_told_above_one_g_nor_without_stops_and_one_that_is_pressed_at_rest_is_met_at_nothing()
    {
        Assert.Null(SideEffects.Of(RideModel.Of(Uneven())).Braking.FirstStop);
        Assert.Null(SideEffects.Of(RideModel.Of(Stopped(0.060, 0.040))).Braking.FirstStop);
        Assert.NotNull(SideEffects.Of(RideModel.Of(Stopped(0.060, 0.036))).Braking.FirstStop);
        var pressed = SideEffects.Of(RideModel.Of(Stopped(0.0, 0.040))).Braking.FirstStop!;
        Assert.Equal((0.0, "front bump stop"), (pressed.Acceleration, pressed.Stop));
        Assert.Contains("pressed at rest", pressed.ToString(), StringComparison.Ordinal);
        // Accelerating the rear sinks and the front rises: these stops are at the other ends.
        Assert.Null(SideEffects.Of(RideModel.Of(Stopped(0.040, 0.020))).Driving.FirstStop);
    }

    // A bump stop in front, a rebound stop behind.
    private static Car Stopped(double bump, double rebound)
    {
        static Stop With(double clearance) => new() { Clearance = new(clearance), Rate = new(50000.0) };
        var car = Uneven();
        return car with { Front = car.Front with { BumpStop = With(bump) }, Rear = car.Rear with { ReboundStop = With(rebound) } };
    }

    private static void Same(double expected, double actual) => Assert.Equal(expected, actual, 2e-5 * Math.Abs(expected));
}
