using System.Numerics;
using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Measures;
using Heaveline.Rides;
using Heaveline.Roads;
using MathNet.Numerics.LinearAlgebra;

namespace Heaveline.Tests.Rides;

public class ClosedSettlingTests
{
    // Dampers alike in bump and rebound, no friction: the pass is the linear car as long as no wheel leaves the road.
    private static Car Linear(double damping) => PlainCar.Saloon with
    {
        Front = PlainCar.FrontAxle with { Damper = Straight(damping) },
        Rear = PlainCar.RearAxle with { Damper = Straight(1.1 * damping) },
    };

    private static Damper Straight(double damping) => new()
    {
        Law = new TableDamper(new ForceTable([1.0, 2.0], [damping, 2.0 * damping]), new ForceTable([1.0, 2.0], [damping, 2.0 * damping])),
    };

    private static readonly Road Hump = Road.From(new RoundTopHump { Height = new(0.03), Length = new(3.7) });

    [Fact]
    public void Its_poles_are_those_of_the_whole_car()
    {
        var model = RideModel.Of(Linear(1400.0));
        var ride = LinearRide.Of(model);
        var n = ride.Count;
        var states = Matrix<double>.Build.Dense(2 * n, 2 * n, (i, j) => i < n
            ? (j == i + n ? 1.0 : 0.0)
            : j < n ? ride.ByPlace[((i - n) * n) + j] : ride.BySpeed[((i - n) * n) + (j - n)]);
        var all = Eigenpairs.Of(states).Values;
        Assert.All(
            ClosedSettling.Of(SymmetricRide.MeanOf(model))!.Poles,
            pole => Assert.Contains(all, one => (one - pole).Magnitude < 1e-7 * pole.Magnitude));
    }

    [Theory]
    [InlineData(25.0, 1000.0)]
    [InlineData(40.0, 1000.0)]
    [InlineData(60.0, 1500.0)]
    [InlineData(80.0, 2000.0)]
    public void It_is_within_two_per_cent_of_the_pass_where_wheel_hop_is_dead_by_then(double kilometresPerHour, double damping)
    {
        var model = RideModel.Of(Linear(damping));
        var speed = kilometresPerHour / 3.6;
        var closed = ClosedSettling.Of(SymmetricRide.MeanOf(model))!.Rms(SettlingBump.Of(Hump, speed, model.Car)!);
        var driven = SettlingCatalogue.RmsPitch.Of(Pass.Of(model, Hump, speed));
        Assert.Equal(driven, closed, 0.02 * driven);
    }

    [Fact]
    public void It_is_known_wrong_where_a_short_bump_leaves_a_wheel_hopping()
    {
        var model = RideModel.Of(Linear(300.0));
        var bump = Road.From(new HalfSine { Height = new(0.005), Length = new(0.4) });
        var closed = ClosedSettling.Of(SymmetricRide.MeanOf(model))!.Rms(SettlingBump.Of(bump, 22.0, model.Car)!);
        var driven = SettlingCatalogue.RmsPitch.Of(Pass.Of(model, bump, 22.0));
        Assert.True(Math.Abs((closed / driven) - 1.0) > 0.02);
    }

    [Fact]
    public void A_road_that_ends_on_another_level_has_none()
    {
        Assert.Null(SettlingBump.Of(Road.Flat, 10.0, PlainCar.Saloon));
        Assert.NotNull(SettlingBump.Of(Hump, 10.0, PlainCar.Saloon));
    }

    [Fact]
    public void A_body_damped_past_swinging_has_none()
    {
        Assert.Null(ClosedSettling.Of(SymmetricRide.MeanOf(RideModel.Of(Linear(30000.0)))));
    }

    [Fact]
    public void The_slope_of_the_determinant_is_its_derivative()
    {
        var car = SymmetricRide.MeanOf(RideModel.Of(Linear(1200.0)));
        var (s, h) = (new Complex(-1.3, 7.1), 1e-6);
        var by = (new BodyDeterminant(car, s + h).Value - new BodyDeterminant(car, s - h).Value) / (2.0 * h);
        Assert.Equal(0.0, ((by / new BodyDeterminant(car, s).Slope) - 1.0).Magnitude, 1e-6);
    }
}
