using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Modes;

namespace Heaveline.Tests.Modes;

public class CoincidenceTests
{
    private static readonly Coincidence Plain = new() { Wheelbase = 2.6, FrontPeriod = 0.90, RearPeriod = 0.80, DynamicIndex = 1.0 };

    [Fact]
    public void Both_phases_are_equal_at_the_speed_for_any_number_of_cycles()
    {
        foreach (var cycles in new[] { 0.5, 0.7, 1.0, 2.0 })
        {
            var speed = Plain.SpeedFor(cycles)!.Value;
            var lag = 2.6 / speed;
            // After n front periods the rear, which began later, has gone through n of its own.
            Assert.Equal(cycles, ((cycles * 0.90) - lag) / 0.80, 1e-12);
            Assert.Equal(cycles, Plain.CyclesAt(speed)!.Value, 1e-12);
        }
    }

    [Fact]
    public void The_suited_speed_lies_in_its_range()
    {
        var range = Plain.SuitedRange!.Value;
        Assert.Equal(2.6 / (0.7 * 0.10), Plain.SuitedSpeed!.Value, 1e-9);
        Assert.True(range.Slowest < Plain.SuitedSpeed && Plain.SuitedSpeed < range.Fastest);
    }

    [Theory]
    [InlineData(0.80, 0.80)]
    [InlineData(0.80, 0.90)]
    [InlineData(null, 0.90)]
    [InlineData(0.90, null)]
    public void A_front_that_is_not_slower_or_does_not_swing_never_falls_into_step_and_says_why(double? front, double? rear)
    {
        var never = Plain with { FrontPeriod = front, RearPeriod = rear };
        Assert.False(never.FallsIntoStep);
        Assert.NotNull(never.WhyNot);
        Assert.Null(never.SuitedSpeed);
        Assert.Null(never.SuitedRange);
        Assert.Null(never.CyclesAt(20.0));
    }

    // Near a ratio of 1 the formula runs away: nobody is sent over a bump at hundreds of km/h.
    [Theory]
    [InlineData(0.90, 0.88, "no speed up to 150 km/h")]
    [InlineData(1.50, 0.50, "only below 20 km/h")]
    public void A_speed_at_which_nobody_drives_over_a_bump_is_not_told_and_why_not(double front, double rear, string why)
    {
        var ends = Plain with { FrontPeriod = front, RearPeriod = rear };
        Assert.True(ends.FallsIntoStep);
        Assert.NotInRange(3.6 * ends.SpeedFor(Coincidence.SuitedCycles)!.Value, 20.0, 150.0);
        Assert.Null(ends.SuitedSpeed);
        Assert.Null(ends.SuitedRange);
        Assert.Contains(why, ends.WhyNot, StringComparison.Ordinal);
    }

    [Fact]
    public void Unequal_cycles_meet_only_at_crawling_speed()
    {
        Assert.Equal(2.6 / ((2.0 * 0.90) - 0.80), Plain.SpeedFor(2.0, 1.0)!.Value, 1e-12);
        Assert.True(Plain.SpeedFor(2.0, 1.0) < 0.25 * Plain.SpeedFor(2.0));
        Assert.Null(Plain.SpeedFor(1.0, 2.0));
    }

    [Fact]
    public void A_cars_periods_are_those_of_its_damped_axles()
    {
        var softFront =
            PlainCar.Saloon with { Front = PlainCar.FrontAxle with { Spring = new Spring { Law = new LinearSpring { Rate = new(15000.0) } } } };
        var model = RideModel.Of(softFront);
        var coincidence = Coincidence.Of(model);
        Assert.Null(coincidence.WhyNot);
        Assert.True(coincidence.FallsIntoStep);
        Assert.Equal(0.95, coincidence.DynamicIndex, 1e-9);
        // At index 1 the axles' quarter cars are the modes of the whole car.
        var one = RideModel.Of(softFront with { Body = softFront.Body with { DynamicIndex = new(1.0) } });
        var periods = DampedModes.Of(one).Swings
            .Where(m => m.Dominant is Motion.Heave or Motion.Pitch).Select(m => 1.0 / m.DampedFrequency).ToArray();
        var of = Coincidence.Of(one);
        Assert.Contains(periods, t => Math.Abs(t - of.FrontPeriod!.Value) < 1e-8);
        Assert.Contains(periods, t => Math.Abs(t - of.RearPeriod!.Value) < 1e-8);
    }

    [Fact]
    public void An_overdamped_front_on_hard_tyres_has_no_period()
    {
        // On soft tyres it would still swing: body and wheels locked together by the damper.
        var heavy = new Damper { Law = new RatioDamper { Ratio = new(1.3) } };
        var coincidence = Coincidence.Of(RideModel.Of(
            PlainCar.Saloon with { Front = PlainCar.FrontAxle with { Damper = heavy, Tyre = new Tyre { Rate = new(1e9) } } }));
        Assert.Null(coincidence.FrontPeriod);
        Assert.Contains("does not swing", coincidence.WhyNot, StringComparison.Ordinal);
    }
}
