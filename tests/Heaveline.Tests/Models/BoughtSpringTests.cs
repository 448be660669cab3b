using Heaveline.Cars;
using Heaveline.Doubts;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Passes.Exact;
using Heaveline.Quantities;
using Heaveline.Roads;
using Heaveline.Tests.Measures;
using Heaveline.Tests.Passes;

namespace Heaveline.Tests.Models;

/// <summary>
/// Bought springs by hand. 250 kg on every wheel are P = 2451.6625 N. The spring that was weighed, 20 N/mm and 380 mm free, is pressed 122.583 mm:
/// its seats are 257.417 mm apart. The bought one, 25 N/mm and 360 mm free, is pressed 102.583 mm between them and pushes with 2564.578 N; under P it
/// is pressed 98.067 mm and 261.934 mm long, 4.517 mm more than there is.
/// </summary>
public class BoughtSpringTests
{
    private const double P = 250.0 * 9.80665;
    private const double Gap = 0.380 - (P / 20e3);
    private const double Up = 0.360 - (P / 25e3) - Gap;

    private static readonly Spring Weighed = new() { Law = Linear(20e3), FreeLength = new Amount<Length>(0.380) };

    [Fact]
    public void A_spring_that_is_too_long_lifts_its_end_and_the_nose_and_the_lamp_go_with_it()
    {
        Assert.Equal(0.0045166, Up, 1e-6);
        var car = Car(Bought(25e3, 0.360)) with { Headlamp = new Headlamp { Height = new(0.66), AheadOfFrontAxle = new(0.70), Drop = new(0.012) } };
        var trim = RideModel.Of(car).Trim;
        Assert.Equal(Up, trim.FrontHeight, 2e-6);
        Assert.Equal(0.0, trim.RearHeight, 2e-6);
        Assert.Equal(-Up / 2.7, trim.Pitch, 1e-6);
        Assert.Equal(0.012 - (Up / 2.7), HeadlampAim.Of(RideModel.Of(car))!.Drop, 1e-6);
        Assert.Equal(P, trim.SprungLoad[0], 1e-2);
    }

    [Fact]
    public void The_packing_that_gives_the_height_back_is_the_difference_of_the_lengths_under_the_load()
    {
        // (P/k_new − L₀new) − (P/k_old − L₀old).
        var packing = (P / 25e3) - 0.360 - ((P / 20e3) - 0.380);
        Assert.Equal(-0.0045166, packing, 1e-6);
        Assert.Equal(packing, Assert.Single(SwapEffect.Of(RideModel.Of(Car(Bought(25e3, 0.360))))).Packing!.Value, 1e-9);
        var packed = RideModel.Of(Car(Bought(25e3, 0.360, seat: packing)));
        Assert.Equal(0.0, packed.Trim.FrontHeight, 1e-6);
        Assert.Equal(0.0, SwapEffect.Of(packed)[0].Packing!.Value, 1e-9);
    }

    [Fact]
    public void An_installed_length_says_the_same_as_the_free_one()
    {
        var byGap = Bought(25e3, 0.360, before: new Spring { Law = Linear(20e3), InstalledLength = new Amount<Length>(Gap) });
        Assert.Equal(RideModel.Of(Car(Bought(25e3, 0.360))).Trim.FrontHeight, RideModel.Of(Car(byGap)).Trim.FrontHeight, 1e-9);
    }

    // The same spring bought anew changes nothing, however unevenly the car stands on its wheels.
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void The_same_spring_bought_anew_changes_nothing(bool byGap)
    {
        var before = byGap ? new Spring { Law = Linear(20e3), InstalledLength = new Amount<Length>(Gap) } : Weighed;
        var bought = Bought(20e3, 0.380, before: before);
        var uneven = new Weighing { FrontLeft = new(270.0), FrontRight = new(230.0), RearLeft = new(260.0), RearRight = new(240.0) };
        var car = Car(bought) with { Weighing = uneven };
        var trim = RideModel.Of(car).Trim;
        Assert.Equal(0.0, trim.FrontHeight, 2e-6);
        Assert.Equal(0.0, trim.Roll, 2e-6);
        Assert.Equal(0.0, trim.Pitch, 2e-6);
    }

    [Fact]
    public void Preload_at_full_droop_places_the_spring_without_any_length()
    {
        // Full droop 80 mm + 10 mm below: 15 mm of preload are 105 mm in the reference state, 2625 N; under P 98.067 mm, 6.933 mm higher.
        var spring = new Spring
        {
            Law = Linear(25e3),
            Swap = new SpringSwap { Before = new Spring { Law = Linear(20e3) }, StandsBy = Linear(25e3), Preload = new Amount<Length>(0.015) },
        };
        var model = RideModel.Of(Car(spring, Droop(0.08, 0.01)));
        Assert.Equal(0.105 - (P / 25e3), model.Trim.FrontHeight, 2e-6);
        // Hung up, 80 N/mm from 80 mm on and 25 N/mm that would still be pressed 25 mm there meet 25·25/105 = 5.952 mm further: 19.048 mm are left.
        Assert.Equal(25e3 * 0.025 * 80.0 / 105.0, CoilStanding.Of(model, AxleEnd.Front)!.DroopForce!.Value, 1e-2);
        Assert.Equal(-0.0069335, SwapEffect.Of(model)[0].Packing!.Value, 1e-6);
        Assert.Contains("rebound stop", Assert.Throws<RefusedValueException>(() => RideModel.Of(Car(spring))).Limit, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_length_the_height_is_kept_and_what_that_takes_is_told()
    {
        var free = new Amount<Length>(0.360);
        SwapEffect Told(Amount<Length>? bought, Spring before)
        {
            var model = RideModel.Of(Car(Bought(25e3, 0.360, before: before) with { FreeLength = bought }));
            Assert.Equal(0.0, model.Trim.FrontHeight, 1e-6);
            var effect = SwapEffect.Of(model)[0];
            Assert.True(effect.KeepsHeight);
            Assert.Null(effect.Packing);
            return effect;
        }

        var unmeasured = new Spring { Law = Linear(20e3) };
        Assert.Equal(0.360 - 0.0980665, Told(free, unmeasured).SeatsNeeded!.Value, 1e-7);
        Assert.Equal(Gap + 0.0980665, Told(null, Weighed).FreeLengthNeeded!.Value, 1e-7);
        Assert.Equal(0.0980665 - 0.122583125, Told(null, unmeasured).LongerNeeded!.Value, 1e-7);
    }

    [Fact]
    public void Coils_touch_where_the_seats_are_a_block_length_apart()
    {
        // 257.417 mm less 160 mm: 97.417 mm of travel; the stop is solid at 60 + 45 mm, 7.583 mm later.
        var stop = new Stop { Clearance = new(0.060), Rate = new Amount<Stiffness>(40e3), SolidAfter = new Amount<Length>(0.045) };
        var spring = Bought(25e3, 0.360) with { BlockLength = new Amount<Length>(0.160) };
        var car = Car(spring);
        var model = RideModel.Of(car with { Front = car.Front with { BumpStop = stop } });
        var coil = CoilStanding.Of(model, AxleEnd.Front)!;
        Assert.Equal(Gap - 0.160, coil.Block!.Value, 1e-9);
        Assert.Equal(Gap - 0.160 - 0.105, coil.BlockPastFullBump!.Value, 1e-9);
        Assert.Equal(Gap - 0.160 + Up, coil.BlockLeft!.Value, 2e-6);
        Assert.Contains("8 mm before the bump stop is solid", CoilTrouble.Block(coil)!.Where, StringComparison.Ordinal);
        Assert.Equal(Gap - 0.160, model.Numbers.Elements.BumpLimit[0], 1e-9);
        // 14 mm of packing more and the car rides 14 mm higher, but its seats are as much closer: the coils touch 14 mm sooner.
        var packed = RideModel.Of(Car(Bought(25e3, 0.360, seat: 0.014) with { BlockLength = new Amount<Length>(0.160) }));
        Assert.Equal(Gap - 0.160 - 0.014, CoilStanding.Of(packed, AxleEnd.Front)!.Block!.Value, 1e-9);
        Assert.Null(CoilTrouble.Block(CoilStanding.Of(
            RideModel.Of(car with { Front = car.Front with { BumpStop = stop, Spring = spring with { BlockLength = new Amount<Length>(0.150) } } }),
            AxleEnd.Front)!));
    }

    [Fact]
    public void On_stands_it_is_pressed_by_what_is_left_past_the_soft_stop_or_falls_loose()
    {
        // 102.583 mm pressed: a stop of 80 N/mm at 90 mm gives way 25·12.583/105 = 2.996 mm under the spring and leaves it 9.587 mm, 239.7 N. One at
        // 110 mm with no weight on it leaves it 7.417 mm short, and a strap must end the droop 8 mm sooner.
        var coil = CoilStanding.Of(RideModel.Of(Car(Bought(25e3, 0.360), Droop(0.09, 0.0))), AxleEnd.Front)!;
        Assert.Equal(25e3 * (0.360 - Gap - 0.09) * 80.0 / 105.0, coil.DroopForce!.Value, 1e-2);
        Assert.Null(CoilTrouble.Loose(coil));
        Assert.Equal(0.5 * P * P / 25e3, coil.Energy!.Value, 1e-2);
        var loose = CoilStanding.Of(RideModel.Of(Car(Bought(25e3, 0.360), Droop(0.11, 0.0))), AxleEnd.Front)!;
        Assert.Equal(0.0, loose.DroopForce);
        Assert.Equal(0.110 - (0.360 - Gap), loose.LooseBy, 1e-6);
        Assert.Contains(
            "is 7.4 mm shorter than the way between its seats with the car standing on stands, its wheel hanging 110 mm below",
            CoilTrouble.Loose(loose)!.Where,
            StringComparison.Ordinal);
        Assert.Contains("at least 8 mm sooner", CoilTrouble.Loose(loose)!.Advice, StringComparison.Ordinal);
    }

    [Fact]
    public void A_spring_too_short_for_its_seats_lets_the_car_down_until_it_carries()
    {
        // 240 mm free are 17.417 mm short of both seats.
        var trim = RideModel.Of(Car(Bought(25e3, 0.240))).Trim;
        Assert.Equal(0.240 - (P / 25e3) - Gap, trim.FrontHeight, 2e-6);
    }

    [Fact]
    public void A_car_whose_bought_springs_are_solid_under_its_weight_is_refused()
    {
        var spring = Bought(9e3, 0.360) with { BlockLength = new Amount<Length>(0.130) };
        var refused = Assert.Throws<RefusedValueException>(() => RideModel.Of(Car(spring)));
        Assert.Contains("at which the coils of its spring touch", refused.Limit, StringComparison.Ordinal);
    }

    // A ratio that varies, a table and a gas-filled damper, against the wheel's own balance solved apart by halving: r(S)·F(x(S)) + r_d·G = W.
    [Fact]
    public void A_table_at_a_varying_ratio_stands_where_a_solver_of_its_own_finds_it()
    {
        var before = new TableSpring(new ForceTable([0.0, 0.08, 0.16], [0.0, 1600.0, 4200.0]));
        var bought = new TableSpring(new ForceTable([0.0, 0.05, 0.12], [0.0, 1500.0, 4500.0]));
        var ratio = new MotionRatio { AtReference = new(0.8), PerTravel = new(0.9) };
        var spring = new Spring
        {
            Law = bought,
            MotionRatio = ratio,
            FreeLength = new Amount<Length>(0.365),
            Swap = new SpringSwap
            {
                Before = new Spring { Law = before, MotionRatio = ratio, FreeLength = new Amount<Length>(0.380) },
                StandsBy = bought,
            },
        };
        var car = Car(spring);
        var damper = car.Front.Damper with { GasForce = new(120.0), MotionRatio = new MotionRatio { AtReference = new(0.9) } };
        car = car with { Front = car.Front with { Damper = damper } };
        var carried = (P - (0.9 * 120.0)) / 0.8;
        var gap = 0.380 - (0.08 + ((carried - 1600.0) * 0.08 / 2600.0));
        double Push(double wheel)
        {
            var x = (0.8 * wheel) + (0.5 * 0.9 * wheel * wheel);
            var pressed = 0.365 - gap + x;
            var force = pressed <= 0.0 ? 0.0 : pressed <= 0.05 ? 30e3 * pressed : 1500.0 + ((pressed - 0.05) * 3000.0 / 0.07);
            return ((0.8 + (0.9 * wheel)) * force) + (0.9 * 120.0);
        }

        var (low, high) = (-0.2, 0.2);
        for (var turn = 0; turn < 60; turn++)
        {
            var middle = 0.5 * (low + high);
            (low, high) = Push(middle) < P ? (middle, high) : (low, middle);
        }

        Assert.True(Math.Abs(low) > 5e-3);
        Assert.Equal(low, RideModel.Of(car).Trim.Travel[0], 2e-6);
    }

    [Fact]
    public void Tuning_a_bought_spring_keeps_the_height_and_another_law_in_its_place_finds_its_own()
    {
        var bought = Bought(25e3, 0.360);
        Assert.Equal(Up, RideModel.Of(Car(bought with { Law = Linear(26e3) })).Trim.FrontHeight, 2e-4);
        Assert.Equal(0.360 - (P / 26e3) - Gap, RideModel.Of(Car(bought.WithLaw(Linear(26e3)))).Trim.FrontHeight, 2e-6);
    }

    [Fact]
    public void A_millimetre_of_doubt_in_a_free_length_is_a_millimetre_of_doubt_in_the_height()
    {
        var spring = Bought(25e3, 0.360);
        var doubted = spring with { FreeLength = new Amount<Length>(0.360, new Doubt(0.002)) };
        var height = RestCatalogue.All.Index().Single(m => m.Item.Key == "front-height").Index;
        var slopes = FirstOrder.Of(Car(doubted), null, RestCatalogue.All).Results[height];
        Assert.Equal(0.001, slopes.StandardDeviation, 1e-6);
        Assert.Contains(CarDoubts.Of(Car(doubted)).Sources, s => s.Name == "front bought spring free length");
    }

    [Fact]
    public void Doubts_of_both_springs_bear_their_own_names_and_a_tuned_law_keeps_its_distance()
    {
        var rate = new LinearSpring { Rate = new(25e3, new Doubt(1e3)) };
        var before = new Spring
        {
            Law = new LinearSpring { Rate = new(20e3, new Doubt(1e3)) },
            InstalledLength = new Amount<Length>(Gap, new Doubt(0.001)),
        };
        var spring = new Spring
        {
            Law = new LinearSpring { Rate = new(50e3) },
            FreeLength = new Amount<Length>(0.360),
            Swap = new SpringSwap { Before = before, StandsBy = rate, Seat = new(0.006, new Doubt(0.001)) },
        };
        var doubts = CarDoubts.Of(Car(spring));
        string[] names = [.. doubts.Sources.Select(s => s.Name)];
        foreach (var name in new[] { "front spring rate", "front spring installed length", "front bought spring rate", "front bought spring seat" })
        {
            Assert.Contains(name, names);
        }

        var errors = names.Select(name => name == "front bought spring rate" ? 2.0 : 0.0).ToArray();
        var drawn = doubts.At(errors).Car.Front.Spring;
        Assert.Equal(26e3, ((LinearSpring)drawn.Swap!.StandsBy).Rate.Si, 1e-6);
        Assert.Equal(52e3, ((LinearSpring)drawn.Law).Rate.Si, 1e-6);
        Assert.Equal(20e3, ((LinearSpring)drawn.Swap.Before.Law).Rate.Si, 1e-6);
    }

    // In rebound off the hump the fronts come loose: the spring pushes no more, and both runs know it.
    [Fact]
    public void A_loose_spring_does_not_pull_in_the_stepped_run_nor_in_the_exact_one()
    {
        var saloon = ExactCars.Saloon;
        var stubby = new Spring { Law = Linear(120e3), FreeLength = new Amount<Length>(0.300) };
        var car = saloon with { Front = saloon.Front with { Spring = stubby, ReboundStop = null } };
        var model = RideModel.Of(car);
        var road = Road.From(new RoundTopHump { Height = new(0.10), Length = new(3.7) });
        var exact = ExactRun.Of(model, road, 15.0, -0.1, 0.005, 400, cancellation: TestContext.Current.CancellationToken);
        var pass = Pass.Of(model, road, 15.0);
        Assert.Equal(PassOutcome.Completed, pass.Outcome);
        Assert.True(pass.Travel(0).Min() < model.Numbers.Elements.Springs[0].Touch);
        var pulling = Pass.Of(RideModel.Of(car with { Front = car.Front with { Spring = new Spring { Law = Linear(120e3) } } }), road, 15.0);
        Assert.NotEqual(pulling.Travel(0).Min(), pass.Travel(0).Min(), 1e-4);
        Assert.True(exact.Statistics.Events > 10);
        Assert.Equal(exact.Samples.Where((_, i) => i % Channel.Count == Channel.Pitch).Max(), pass.Pitch.Max(), 5e-4);
    }

    private static Car Car(Spring front, Stop? rebound = null)
    {
        var car = BodyOnSprings.Of(1000.0, 20000.0);
        return car with { Front = car.Front with { Spring = front, ReboundStop = rebound } };
    }

    private static Stop Droop(double clearance, double solid) => new()
    {
        Clearance = new(clearance),
        Rate = new Amount<Stiffness>(80e3),
        SolidAfter = solid > 0.0 ? new Amount<Length>(solid) : null,
    };

    private static Spring Bought(double rate, double free, double seat = 0.0, Spring? before = null) => new()
    {
        Law = Linear(rate),
        FreeLength = new Amount<Length>(free),
        Swap = new SpringSwap { Before = before ?? Weighed, StandsBy = Linear(rate), Seat = new(seat) },
    };

    private static LinearSpring Linear(double rate) => new() { Rate = new(rate) };
}
