using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Quantities;
using Heaveline.Tests.Measures;
using Heaveline.Tuning;

namespace Heaveline.Tests.Tuning;

/// <summary>
/// Years on a body that stands level on springs of 20 N/mm, 250 kg on each: what a spring has lost of its length the body sinks by.
/// </summary>
public class AgedCarTests
{
    private static readonly Car New = BodyOnSprings.Of(1000.0, 20000.0);

    [Fact]
    public void An_end_stands_lower_by_what_it_loses_a_year_and_pushes_as_before()
    {
        var old = RideModel.Of(AgedCar.After(New, new YearlyWear { RearSag = new(0.002), BushCreep = new(0.0005) }, 8.0));
        Assert.Equal(-0.004, old.Trim.FrontHeight, 1e-9);
        Assert.Equal(-0.020, old.Trim.RearHeight, 1e-9);
        Assert.Equal(RideModel.Of(New).Trim.SprungLoad[2], old.Trim.SprungLoad[2], 1e-6);
        Assert.Equal(AxleCatalogue.FrequencyRatio.Of(new CarAtRest(RideModel.Of(New))), AxleCatalogue.FrequencyRatio.Of(new CarAtRest(old)), 1e-12);
    }

    [Fact]
    public void A_spring_that_moves_by_less_than_its_wheel_loses_less_for_the_same_sinking()
    {
        var geared = New.With(AxleEnd.Front, New.Front with
        {
            Spring = new Spring { Law = new LinearSpring { Rate = new(20000.0 / 0.49) }, MotionRatio = MotionRatio.Constant(0.7) },
        });
        var aged = AgedCar.After(geared, new YearlyWear { FrontSag = new(0.003) }, 4.0);
        Assert.Equal(0.7 * 0.012, aged.Front.Spring.LostLength, 1e-12);
        Assert.Equal(-0.012, RideModel.Of(aged).Trim.FrontHeight, 1e-9);
    }

    // Its seats stay where they are: 380 mm less 122.583 mm; a spring 12 mm shorter is loose as much later, and its coils touch at the same travel.
    [Fact]
    public void A_spring_of_known_lengths_keeps_its_seats_and_its_block()
    {
        var front = New.Front with { Spring = New.Front.Spring with { FreeLength = new(0.380), BlockLength = new(0.150) } };
        var (known, aged) = (New with { Front = front }, AgedCar.After(New with { Front = front }, new YearlyWear { FrontSag = new(0.003) }, 4.0));
        var (before, after) = (RideModel.Of(known), RideModel.Of(aged));
        Assert.Equal(-0.012, after.Trim.FrontHeight, 1e-9);
        var (was, now) = (before.Numbers.Elements.Stances[0]!, after.Numbers.Elements.Stances[0]!);
        Assert.Equal(was.Length, now.Length);
        Assert.Equal(was.BlockAt, now.BlockAt);
        Assert.Equal(was.LooseBelow + 0.012, now.LooseBelow, 1e-9);
        Assert.Equal(was.Carried - (20000.0 * 0.012), now.Carried, 1e-6);
    }

    [Fact]
    public void Dampers_lose_of_what_is_left()
    {
        var aged = AgedCar.After(PlainCar.Saloon, new YearlyWear { DamperLoss = new(0.1) }, 2.0);
        Assert.Equal(0.81 * 1000.0, ((TableDamper)aged.Front.Damper.Law).Bump.Force[0], 1e-9);
        Assert.Equal(0.81 * 4000.0, ((TableDamper)aged.Rear.Damper.Law).Rebound.Force[^1], 1e-9);
        Assert.Equal(PlainCar.Saloon.Front.Spring, aged.Front.Spring);
    }

    [Fact]
    public void Gas_loses_no_length()
    {
        var gas = New.With(AxleEnd.Rear, New.Rear with { Spring = new Spring { Law = new GasSpring { Area = new(0.002), Volume = new(0.0006) } } });
        Assert.Equal("rear sag", Assert.Throws<RefusedValueException>(() => AgedCar.After(gas, new YearlyWear { RearSag = new(0.001) }, 1.0)).What);
        Assert.Equal(gas.Rear.Spring, AgedCar.After(gas, new YearlyWear { FrontSag = new(0.001) }, 1.0).Rear.Spring);
    }
}
