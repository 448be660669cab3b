using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Parts;
using Heaveline.Quantities;

namespace Heaveline.Tests.Parts;

public class FittingDamperTests
{
    [Theory]
    [InlineData(2, 0.0)]
    [InlineData(6, 0.5)]
    [InlineData(9, 0.875)]
    [InlineData(10, 1.0)]
    public void Between_two_clicks_the_force_at_each_velocity_lies_on_the_straight_line(int click, double share)
    {
        var law = Assert.IsType<TableDamper>(Shelf.Fits(PartPlace.FrontDamper, Shelf.Damper.At(click)).Car.Front.Damper.Law);
        var (soft, hard) = (Shelf.Damper.Clicks[0].Law.Whole, Shelf.Damper.Clicks[1].Law.Whole);
        foreach (var velocity in new[] { -1.0, -0.5, -0.3, -0.1, -0.02, 0.0, 0.02, 0.1, 0.3, 0.5, 1.0 })
        {
            Assert.Equal(((1.0 - share) * soft.ForceAt(velocity)) + (share * hard.ForceAt(velocity)), law.Whole.ForceAt(velocity), 1e-9);
        }
    }

    [Fact]
    public void Sheets_of_other_velocities_are_read_where_either_has_a_row()
    {
        var uneven = Shelf.Damper with
        {
            Clicks =
            [
                new(0, Shelf.Table(100.0, 260.0, 300.0, 700.0)),
                new(4, new TableDamper(new ForceTable([0.05, 0.2, 1.0], [80.0, 200.0, 700.0]), new ForceTable([0.3, 0.6], [500.0, 900.0]))),
            ],
        };
        var law = Assert.IsType<TableDamper>(uneven.At(1).Damping).Whole;
        var (soft, hard) = (uneven.Clicks[0].Law.Whole, uneven.Clicks[1].Law.Whole);
        for (var velocity = -1.5; velocity <= 1.5; velocity += 0.01)
        {
            Assert.Equal((0.75 * soft.ForceAt(velocity)) + (0.25 * hard.ForceAt(velocity)), law.ForceAt(velocity), 1e-9);
        }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(11)]
    public void A_click_beyond_the_measured_ones_is_refused(int click)
    {
        var refused = Assert.Throws<RefusedValueException>(() => Shelf.Damper.At(click));
        Assert.Contains("between 2 and 10", refused.Message, StringComparison.Ordinal);
        Assert.Equal(9, Shelf.Damper.Options.Count);
        Assert.Equal("Wren W3 at click 6", Shelf.Damper.Options[4].Name);
        var plain = Shelf.Damper with { Clicks = [Shelf.Damper.Clicks[0]] };
        Assert.Equal("Wren W3", plain.Only().Name);
        Assert.Throws<RefusedValueException>(() => plain.At(2));
    }

    [Fact]
    public void Clicks_stand_in_their_order() => Assert.Throws<RefusedValueException>(
        () => Shelf.Damper with { Clicks = [Shelf.Damper.Clicks[1], Shelf.Damper.Clicks[0]] });

    // What the springs carried on the scales they carry still: the gas lifts the car until they carry as much less.
    [Theory]
    [InlineData(0.0)]
    [InlineData(60.0)]
    public void More_gas_lifts_the_car_by_what_it_pushes_over_the_wheel_rate(double before)
    {
        var damper = Shelf.Car.Front.Damper with { MotionRatio = MotionRatio.Constant(0.9), GasForce = new(before) };
        foreach (var spring in new[] { Shelf.Car.Front.Spring, PlainCar.FrontAxle.Spring })
        {
            var car = Shelf.Car with { Front = Shelf.Car.Front with { Damper = damper, Spring = spring } };
            var fitted = Assert.IsType<Fitted>(Shelf.Fit(car, PartPlace.FrontDamper, Shelf.Damper.At(2)));
            Assert.Equal(-(150.0 - before) * 0.9 / 21e3, RideModel.Of(fitted.Car).Trim.Travel[0], 1e-9);
            Assert.Equal(before, fitted.Car.Front.Damper.WeighedGasForce!.Value.Si);
            // Set anew or exchanged once more, the dampers weighed stay those weighed.
            var again = Assert.IsType<Fitted>(Shelf.Fit(fitted.Car, PartPlace.FrontDamper, Shelf.Damper.At(2)));
            Assert.Equal(fitted.Car, again.Car);
        }
    }

    [Fact]
    public void Both_spring_and_gas_change_and_the_seats_stay_those_of_the_car_weighed()
    {
        var car = Shelf.Car with { Front = Shelf.Car.Front with { Damper = Shelf.Car.Front.Damper with { GasForce = new(60.0) } } };
        var fitted = Assert.IsType<Fitted>(Fitting.Of(
            car, [new(PartPlace.FrontDamper, Shelf.Damper.At(2)), new(PartPlace.FrontSpring, Shelf.Coil.Only())]));
        var (load, carried) = (Shelf.Carried, Shelf.Carried - 60.0);
        var gap = 0.390 - (carried / 21e3);
        var travel = ((load - 150.0) / 24e3) - (0.380 - gap);
        Assert.Equal(travel, RideModel.Of(fitted.Car).Trim.Travel[0], 1e-9);
    }

    [Fact]
    public void Gas_that_nobody_knows_is_that_of_the_dampers_that_are_there_and_is_told()
    {
        var fitted = Shelf.Fits(PartPlace.FrontDamper, (Shelf.Damper with { GasForce = null }).At(2));
        Assert.Null(fitted.Car.Front.Damper.WeighedGasForce);
        Assert.Contains(fitted.Remarks, remark => remark.Id == "gas" && remark.Place == PartPlace.FrontDamper);
    }

    [Fact]
    public void All_gas_that_counts_as_new_since_none_was_given_before_is_told_with_its_lift()
    {
        var fitted = Shelf.Fits(PartPlace.FrontDamper, Shelf.Damper.At(2));
        var said = Assert.Single(fitted.Remarks, remark => remark.Id == "gas").Text;
        Assert.Contains("150 N", said, StringComparison.Ordinal);
        var lift = -1e3 * RideModel.Of(fitted.Car).Trim.Travel[0];
        Assert.Contains(FormattableString.Invariant($"lift the front by {lift:F1} mm"), said, StringComparison.Ordinal);
        var given = Shelf.Car with { Front = Shelf.Car.Front with { Damper = Shelf.Car.Front.Damper with { GasForce = new(60.0) } } };
        Assert.DoesNotContain(Assert.IsType<Fitted>(Shelf.Fit(given, PartPlace.FrontDamper, Shelf.Damper.At(2))).Remarks, r => r.Id == "gas");
    }

    // From the touch of the rebound stop at −80 mm to the solid bump stop at 110 mm, through a damper at 0.9 of the wheel.
    [Theory]
    [InlineData(0.1709, true)]
    [InlineData(0.1711, false)]
    public void A_stroke_must_hold_the_whole_travel_at_the_damper(double stroke, bool isMisfit)
    {
        var damper = Shelf.Car.Front.Damper with { MotionRatio = MotionRatio.Constant(0.9) };
        var car = Shelf.Car with { Front = Shelf.Car.Front with { Damper = damper } };
        var result = Shelf.Fit(car, PartPlace.FrontDamper, (Shelf.Damper with { Stroke = new Amount<Length>(stroke) }).At(2));
        Assert.Equal(isMisfit, result is Misfit { Kind: MisfitKind.ShortStroke });
        if (result is Misfit misfit)
        {
            Assert.Equal(stroke, misfit.Value);
            Assert.Equal(0.9 * 0.190, misfit.Limit, 1e-12);
        }
    }

    [Fact]
    public void A_damping_ratio_says_not_how_far_a_damper_moves()
    {
        var car = Shelf.Car with { Front = Shelf.Car.Front with { Damper = new Damper { Law = new RatioDamper { Ratio = new(0.3) } } } };
        Assert.Equal(MisfitKind.NoDamperRatio, Shelf.Misfits(car, PartPlace.FrontDamper, Shelf.Damper.At(2)).Kind);
        Assert.Equal(MisfitKind.NoDamperRatio, Shelf.Misfits(car, PartPlace.FrontStop, Shelf.Stop.CutBy(new(0.0))).Kind);
        // What is missing is named, and where it is written.
        Assert.Contains("under front: damper:", Shelf.Misfits(car, PartPlace.FrontDamper, Shelf.Damper.At(2)).Advice, StringComparison.Ordinal);
        Assert.Contains(
            "stop-per-wheel in the list of parts",
            Shelf.Misfits(car, PartPlace.FrontStop, Shelf.Stop.CutBy(new(0.0))).Advice,
            StringComparison.Ordinal);
    }

    // At full droop 1 N keeps the spring in its seat, with the pull that the car has now; more gas stretches the stop.
    [Fact]
    public void Gas_that_pushes_a_wheel_past_the_reach_of_its_spring_is_no_fit()
    {
        var hangs = 0.080 + (35.0 * 9.80665 / 80e3);
        var law = new LinearSpring { Rate = new(Shelf.Carried / (hangs + 1e-4)) };
        var front = Shelf.Car.Front with { Spring = Shelf.Car.Front.Spring with { Law = law } };
        var misfit = Shelf.Misfits(Shelf.Car with { Front = front }, PartPlace.FrontDamper, Shelf.Damper.At(2));
        Assert.Equal(MisfitKind.LooseSpring, misfit.Kind);
        Assert.Equal(-hangs - 1e-4, misfit.Value, 1e-9);
        Assert.Equal(-hangs - (150.0 / 80e3), misfit.Limit, 1e-9);
    }
}
