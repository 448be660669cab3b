using Heaveline.Elements;
using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Quantities;

namespace Heaveline.References.ClosedForms;

/// <summary>Whole cars in states where a closed form gives the answer; the numbers were worked out apart from this program.</summary>
public class ClosedFormTests
{
    /// <summary>Static deflection g/(2πf)²: 0.8, 1.0, 1.2, 1.5, 2.0 Hz.</summary>
    [Theory]
    [InlineData(0.8, 0.3881)]
    [InlineData(1.0, 0.2484)]
    [InlineData(1.2, 0.1725)]
    [InlineData(1.5, 0.1104)]
    [InlineData(2.0, 0.0621)]
    public void An_axle_of_a_given_frequency_has_the_static_deflection_of_that_frequency(double hertz, double deflection)
    {
        var omega = 2.0 * Math.PI * hertz;
        var rates = AxleRide.Of(HalfCar.Single(800.0, 800.0 * omega * omega).Model(), AxleEnd.Front).Rates;
        Assert.Equal(hertz, rates.FrequencyOnRigidTyres, 1e-9);
        Assert.Equal(deflection, rates.Deflection, 5e-5);
    }

    /// <summary>Axle roll stiffness ½·k·t²: 20 kN/m at 1.5 m makes 22 500 N m/rad [university vehicle-dynamics notes].</summary>
    [Fact]
    public void Two_springs_a_track_apart_resist_roll_by_half_k_t_squared()
    {
        var roll = BodyModes.Of(RideModel.Of(Saloon(bar: 0.0))).Roll!;
        Assert.Equal(22500.0, roll.FrontShare * roll.Stiffness, 1e-6);
        Assert.Equal(0.5, roll.FrontShare, 1e-12);
    }

    /// <summary>Anti-roll bar of 22 mm, 1 m long, arms 0.25 m, K 0.7, track 1.5 m: link rate 58 360 N/m, 32 171 N m/rad.</summary>
    [Fact]
    public void An_anti_roll_bar_adds_the_roll_stiffness_of_its_twist()
    {
        var bar = new AntiRollBarDimensions { Diameter = new(0.022), Length = new(1.0), Arm = new(0.25), MotionRatio = new(0.7) };
        Assert.Equal(58360.0, bar.OpposedLinkRate, 0.5);
        var with = BodyModes.Of(RideModel.Of(Saloon(bar.WheelRate))).Roll!;
        var without = BodyModes.Of(RideModel.Of(Saloon(0.0))).Roll!;
        Assert.Equal(32171.0, with.Stiffness - without.Stiffness, 0.5);
        Assert.Equal(561.5, (with.Stiffness - without.Stiffness) * Math.PI / 180.0, 0.05);
        // Bars do not count in an axle's rate.
        Assert.Equal(40000.0, AxleRide.Of(RideModel.Of(Saloon(bar.WheelRate)), AxleEnd.Front).Rates.AxleRate, 1e-6);
    }

    /// <summary>Torsion bar of 24 mm, 1 m, arm 0.35 m: 2582.96 N m/rad, 21 085 N/m.</summary>
    [Fact]
    public void A_torsion_bar_has_its_twisting_and_its_wheel_rate()
    {
        var bar = new TorsionBarDimensions { Diameter = new(0.024), Length = new(1.0), Arm = new(0.35) };
        Assert.Equal(2582.96, bar.TorsionalRate, 5e-3);
        Assert.Equal(21085.0, bar.Rate, 0.5);
    }

    /// <summary>
    /// Gas spring, 6 bar gauge, 0.01 m², 1.5 l: rate from the absolute, force from the gauge pressure, n = 1, 1.38, 1.4; 612 kg on it.
    /// </summary>
    [Theory]
    [InlineData(1.0, 46755.0, 1.391)]
    [InlineData(1.38, 64522.0, 1.634)]
    [InlineData(1.4, 65457.0, 1.646)]
    public void A_gas_spring_has_the_rate_and_frequency_of_its_pressure(double exponent, double rate, double hertz)
    {
        var gas = new GasSpring { Area = new(0.01), Volume = new(0.0015), Exponent = new(exponent) };
        Assert.Equal(rate, gas.RateAtReference(6000.0), 0.5);

        // 6 bar on 0.01 m² hold 6000 N.
        var plain = HalfCar.Single(2.0 * 6000.0 / Gravity.Standard, 1.0).ToCar();
        var axle = plain.Front with { Spring = new Spring { Law = gas } };
        var rates = AxleRide.Of(RideModel.Of(plain with { Front = axle, Rear = axle }), AxleEnd.Front).Rates;
        Assert.Equal(rate, rates.AxleRate, 0.5);
        Assert.Equal(hertz, rates.FrequencyOnRigidTyres, 5e-4);
    }

    /// <summary>Motion ratio from two travels: a spring that moves 60 mm over 80 mm at the wheel gives k·r² = 0.5625·k.</summary>
    [Fact]
    public void A_motion_ratio_from_two_travels_counts_twice_in_the_wheel_rate()
    {
        var ratio = MotionRatio.FromTravels(new Amount<Length>(0.060), new Amount<Length>(0.080));
        var plain = HalfCar.Single(800.0, 2.0 * 40000.0).ToCar();
        var axle = plain.Front with { Spring = plain.Front.Spring with { MotionRatio = ratio } };
        Assert.Equal(0.5625 * 40000.0, AxleRide.Of(RideModel.Of(plain with { Front = axle, Rear = axle }), AxleEnd.Front).Rates.AxleRate, 1e-6);
    }

    private static Car Saloon(double bar)
    {
        var axle = new Axle
        {
            Track = new(1.5),
            UnsprungMass = new(70.0),
            Spring = new Spring { Law = new LinearSpring { Rate = new(20000.0) } },
            Damper = new Damper { Law = new RatioDamper { Ratio = new(0.3) } },
            AntiRollBar = new(bar),
            Tyre = new Tyre { Rate = new(200000.0) },
        };
        return new Car
        {
            Name = "saloon",
            Wheelbase = new(2.6),
            Weighing = Weighing.PerAxle(new(600.0), new(600.0)),
            Body = new Body { CentreHeight = new(0.55) },
            Front = axle,
            Rear = axle with { AntiRollBar = new(0.0) },
        };
    }
}
