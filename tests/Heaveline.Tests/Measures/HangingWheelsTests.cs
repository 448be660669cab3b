using Heaveline.Cars;
using Heaveline.Files.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;
using Heaveline.Studies;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Measures;

/// <summary>
/// The rear of the Fern saloon by hand. 309 kg on a wheel of 39 kg are 2647.80 N; the damper's gas, 110 N at 0.78, holds 85.80 N of them, the
/// spring the rest over 0.72: 3558.33 N, which press 38 N/mm of 310 mm by 93.64 mm. Its seats are 216.36 mm apart. On stands the wheel, 382.46
/// N, and the gas pull 468.26 N: a stop of 80 N/mm that touches at 70 mm holds them 5.853 mm further down.
/// </summary>
public class HangingWheelsTests
{
    private const double Pull = (39.0 * 9.80665) + (0.78 * 110.0);
    private const double Carried = ((270.0 * 9.80665) - (0.78 * 110.0)) / 0.72;
    private const double Gap = 0.310 - (Carried / 38e3);
    private const double Bare = 0.070 + (Pull / 80e3);

    private static readonly Car Fern =
        CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon.yaml")).Value!;

    // At the touch of the stop 267.2 mm of 70 N/mm are still pressed 0.44 mm, with 31 N: the soft stop gives way, and they are loose.
    [Theory]
    [InlineData(0.2672)]
    [InlineData(0.270)]
    public void A_spring_pressed_where_the_stop_touches_is_loose_where_the_wheel_hangs(double free)
    {
        var touching = 70e3 * (free - Gap - (0.72 * 0.070));
        Assert.InRange(touching, 25.0, 300.0);
        var model = RideModel.Of(Bought(free));
        var coil = CoilStanding.Of(model, AxleEnd.Rear)!;
        Assert.Equal(-Bare, coil.Hanging!.Value, 1e-6);
        Assert.Equal((0.72 * Bare) - (free - Gap), coil.LooseBy, 1e-6);
        Assert.Equal(0.0, coil.DroopForce);
        Assert.True(coil.ComesLoose);
        Assert.Contains("standing on stands, its wheel hanging 76 mm below", CoilTrouble.Loose(coil)!.Where, StringComparison.Ordinal);
        var told = Assert.Single(CoilWords.Of(model, troubleOnly: true), s => s.Id == "rear-droop").Text;
        Assert.Contains("falls out of its seat", told, StringComparison.Ordinal);
        Assert.DoesNotContain("still pressed", told, StringComparison.Ordinal);
    }

    // 275 mm: pull and spring, 0.72·70 N/mm·(58.64 mm − 0.72·S), against 80 N/mm·(S − 70 mm).
    [Fact]
    public void A_longer_one_helps_to_stretch_the_stop_and_stays_pressed()
    {
        var hanging = (Pull + (0.72 * 70e3 * (0.275 - Gap)) + (80e3 * 0.070)) / (80e3 + (0.72 * 0.72 * 70e3));
        var coil = CoilStanding.Of(RideModel.Of(Bought(0.275)), AxleEnd.Rear)!;
        Assert.InRange(hanging, Bare + 1e-3, ((0.275 - Gap) / 0.72) - 1e-3);
        Assert.Equal(-hanging, coil.Hanging!.Value, 1e-6);
        Assert.Equal(70e3 * (0.275 - Gap - (0.72 * hanging)), coil.DroopForce!.Value, 1e-2);
        Assert.False(coil.ComesLoose);
        Assert.Contains(
            CoilWords.Of(RideModel.Of(Bought(0.275)), troubleOnly: false),
            s => s.Id == "rear-droop" && s.Text.Contains("a bump can take the wheel further than it hangs", StringComparison.Ordinal));
    }

    [Fact]
    public void A_stop_that_is_solid_sooner_ends_the_droop_there()
    {
        var car = Bought(0.2672);
        var hard = car with { Rear = car.Rear with { ReboundStop = car.Rear.ReboundStop! with { SolidAfter = new Amount<Length>(0.0005) } } };
        var coil = CoilStanding.Of(RideModel.Of(hard), AxleEnd.Rear)!;
        Assert.Equal(-0.0705, coil.Hanging!.Value, 1e-9);
        Assert.Equal(70e3 * (0.2672 - Gap - (0.72 * 0.0705)), coil.DroopForce!.Value, 1e-2);
        Assert.Contains(
            CoilWords.Of(RideModel.Of(hard), troubleOnly: false),
            s => s.Id == "rear-droop" && s.Text.EndsWith("the hard end of the rebound stop keeps it pressed.", StringComparison.Ordinal));
    }

    [Fact]
    public void What_is_loose_on_stands_is_told_in_a_pass_too()
    {
        var pass = Pass.Of(RideModel.Of(Bought(0.270)), Road.From(new RoundTopHump { Height = new(0.08), Length = new(3.7) }), 8.0);
        Assert.Contains(PassStory.Of(pass, PassMeasures.Of(pass)), s => s.Id == "rear-droop");
    }

    [Fact]
    public void Without_a_rebound_stop_nobody_knows_where_a_wheel_hangs()
    {
        var car = Bought(0.270);
        var coil = CoilStanding.Of(RideModel.Of(car with { Rear = car.Rear with { ReboundStop = null } }), AxleEnd.Rear)!;
        Assert.Null(coil.Hanging);
        Assert.Null(coil.DroopForce);
        Assert.False(coil.ComesLoose);
    }

    private static Car Bought(double free)
    {
        var law = new LinearSpring { Rate = new(70e3) };
        var before = Fern.Rear.Spring with { FreeLength = new Amount<Length>(0.310) };
        var spring = new Spring
        {
            Law = law,
            MotionRatio = before.MotionRatio,
            FreeLength = new Amount<Length>(free),
            Swap = new SpringSwap { Before = before, StandsBy = law },
        };
        return Fern with { Rear = Fern.Rear with { Spring = spring } };
    }
}
