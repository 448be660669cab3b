using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Quantities;

namespace Heaveline.Tests.Models;

public class SolidAxleTests
{
    private const double Track = 1.5;

    [Fact]
    public void Springs_at_the_wheels_of_an_axle_with_all_its_mass_there_are_independent_wheels()
    {
        // Two point masses of m/2 at the wheels: I = m·(track/2)².
        var solid = With(Track, 70.0 * Track * Track / 4.0);
        var (a, b) = (RideModel.Of(solid), RideModel.Of(PlainCar.Saloon));
        Assert.True((a.Tangent.State - b.Tangent.State).FrobeniusNorm() < 1e-12 * b.Tangent.State.FrobeniusNorm());
        Assert.True((a.Tangent.Road - b.Tangent.Road).FrobeniusNorm() < 1e-12 * b.Tangent.Road.FrobeniusNorm());
        Assert.True((a.Tangent.SuspensionRate - b.Tangent.SuspensionRate).FrobeniusNorm() < 1e-9);
    }

    [Theory]
    [InlineData(0.9)]
    [InlineData(1.2)]
    public void Springs_closer_together_resist_roll_less_by_the_square_of_their_base_over_the_track(double spread)
    {
        var wide = BodyModes.Of(RideModel.Of(With(Track, 20.0, bar: 0.0))).Roll!;
        var narrow = BodyModes.Of(RideModel.Of(With(spread, 20.0, bar: 0.0))).Roll!;
        var (wideFront, narrowFront) = (wide.FrontShare * wide.Stiffness, narrow.FrontShare * narrow.Stiffness);
        Assert.Equal(spread * spread / (Track * Track), narrowFront / wideFront, 1e-12);
        Assert.Equal(0.5 * 21000.0 * spread * spread, narrowFront, 1e-6);
    }

    [Fact]
    public void Springs_closer_together_carry_a_car_up_and_down_as_stiffly_as_before()
    {
        Assert.Equal(42000.0, AxleRide.Of(RideModel.Of(With(0.9, 20.0)), AxleEnd.Front).Rates.AxleRate, 1e-9);
    }

    [Fact]
    public void A_bar_of_a_solid_axle_acts_on_the_travel_of_its_wheels()
    {
        var with = BodyModes.Of(RideModel.Of(With(0.9, 20.0, bar: 6000.0))).Roll!;
        var without = BodyModes.Of(RideModel.Of(With(0.9, 20.0, bar: 0.0))).Roll!;
        Assert.Equal(6000.0 * Track * Track, with.Stiffness - without.Stiffness, 1e-6);
    }

    [Fact]
    public void A_narrow_spring_base_leans_further_under_a_one_sided_load()
    {
        var load = PlainCar.With(80.0, 1.2, left: 0.4);
        var wide = RideModel.Of(With(Track, 20.0), load).Trim;
        var narrow = RideModel.Of(With(0.9, 20.0), load).Trim;
        Assert.True(Math.Abs(narrow.Roll) > Math.Abs(wide.Roll));
    }

    [Fact]
    public void A_solid_axle_without_roll_inertia_is_refused()
    {
        var axle = PlainCar.FrontAxle with { Suspension = SuspensionKind.SolidAxle };
        var refusal = Assert.Throws<RefusedValueException>(() => RideModel.Of(PlainCar.Saloon with { Front = axle }));
        Assert.Equal("front axle roll inertia", refusal.What);
    }

    [Fact]
    public void A_spring_base_wider_than_the_track_is_refused()
    {
        var refusal = Assert.Throws<RefusedValueException>(() => RideModel.Of(With(1.6, 20.0)));
        Assert.Equal("front spring base", refusal.What);
    }

    private static Car With(double spread, double inertia, double bar = 6000.0) => PlainCar.Saloon with
    {
        Front = PlainCar.FrontAxle with
        {
            Suspension = SuspensionKind.SolidAxle,
            RollInertia = new Amount<Inertia>(inertia),
            SpringBase = new Amount<Length>(spread),
            AntiRollBar = new(bar),
        },
    };
}
