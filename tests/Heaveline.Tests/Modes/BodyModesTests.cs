using Heaveline.Elements;
using CsCheck;
using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Quantities;

namespace Heaveline.Tests.Modes;

public class BodyModesTests
{
    [Fact]
    public void At_dynamic_index_one_each_axle_is_a_mode_and_the_motion_centres_are_the_axles()
    {
        AnyCar.Linear.Sample(drawn =>
        {
            var car = drawn with { Interconnection = null, Body = new Body { CentreHeight = new(0.55), DynamicIndex = new(1.0) } };
            var model = RideModel.Of(car);
            var modes = BodyModes.Of(model);
            var axles = AxleRide.Of(model).Select(a => a.Rates.Frequency).Order().ToArray();
            double[] found = [modes.Bounce.Frequency, modes.Pitch.Frequency];
            Assert.Equal(axles, found.Order(), (a, b) => Math.Abs(a - b) < 1e-9 * a);
            double[] nodes = [modes.Bounce.NodeAhead, modes.Pitch.NodeAhead];
            if (axles[1] - axles[0] > 1e-3 * axles[0])
            {
                Assert.Equal([model.X[2], model.X[0]], nodes.Order(), (a, b) => Math.Abs(a - b) < 1e-6);
            }
        }, iter: 200);
    }

    [Fact]
    public void The_two_motion_centres_lie_at_distances_that_multiply_to_the_square_of_the_gyration()
    {
        AnyCar.Linear.Sample(car =>
        {
            var model = RideModel.Of(car);
            var modes = BodyModes.Of(model);
            var squared = model.Body.PitchInertia / model.Body.Mass;
            // With a fluid line each mode has a stiffness of its own, and the two shapes need not stand square to each other.
            if (double.IsFinite(modes.Bounce.NodeAhead) && model.Numbers.Elements.Line is null)
            {
                Assert.Equal(-squared, modes.Bounce.NodeAhead * modes.Pitch.NodeAhead, 1e-6 * squared);
            }
        }, iter: 200);
    }

    [Fact]
    public void Equal_moments_of_front_and_rear_rates_part_heave_from_pitch()
    {
        // k_f·b = k_r·c with rock-hard tyres: rates in the ratio of the sprung masses.
        var hard = new Tyre { Rate = new(1e12) };
        var car = PlainCar.Saloon with
        {
            Front = PlainCar.FrontAxle with { Tyre = hard, Spring = new Spring { Law = new LinearSpring { Rate = new(30.0 * 600.0) } } },
            Rear = PlainCar.RearAxle with { Tyre = hard, Spring = new Spring { Law = new LinearSpring { Rate = new(30.0 * 516.0) } } },
        };
        var modes = BodyModes.Of(RideModel.Of(car));
        Assert.True(Math.Abs(modes.Bounce.NodeAhead) > 1e5);
        Assert.Equal(Math.Sqrt(2.0 * 30.0), modes.Bounce.Omega, 1e-6);
        Assert.Equal(Math.Sqrt(2.0 * 30.0 / 0.95), modes.Pitch.Omega, 1e-6);
        Assert.Equal(0.0, modes.Pitch.NodeAhead, 1e-5);
    }

    [Fact]
    public void Gravity_takes_its_tilting_moment_off_the_pitch_and_roll_stiffness()
    {
        var tilting = PlainCar.Saloon with
        {
            Body = PlainCar.Saloon.Body with { PitchAxisHeight = new Amount<Length>(0.27), RollAxisHeight = new Amount<Length>(0.07) },
        };
        var (plain, with) = (BodyModes.Of(RideModel.Of(PlainCar.Saloon)), BodyModes.Of(RideModel.Of(tilting)));
        var mass = 1250.0 - 134.0;
        Assert.Equal(mass * Gravity.Standard * 0.28, with.PitchGravity, 1e-6);
        Assert.Equal(mass * Gravity.Standard * 0.48, with.Roll!.Gravity, 1e-6);
        // Roll stands alone: ω² falls by M·g·h/I_xx.
        var fall = (Math.Pow(plain.Roll!.Frequency, 2) - Math.Pow(with.Roll.Frequency, 2)) * Math.Pow(2.0 * Math.PI, 2);
        Assert.Equal(mass * Gravity.Standard * 0.48 / 420.0, fall, 1e-9);
        // Bounce and pitch share theirs: the sum of both ω² is the trace of the 2×2 problem.
        var index = plain.DynamicIndex * mass * RideModel.Of(PlainCar.Saloon).X[0] * -RideModel.Of(PlainCar.Saloon).X[2];
        double Trace(BodyModes m) => Math.Pow(m.Bounce.Omega, 2) + Math.Pow(m.Pitch.Omega, 2);
        Assert.Equal(mass * Gravity.Standard * 0.28 / index, Trace(plain) - Trace(with), 1e-9);
    }

    [Fact]
    public void An_elastic_link_of_equal_ratios_stiffens_heave_by_four_times_its_rate_a_side_and_leaves_pitch_alone()
    {
        // Energy of both sides k·(2s)²: 8·k in heave altogether; s_f = −s_r leaves it idle. A symmetric car, so that heave and pitch stand alone.
        var car = Symmetric();
        var (plain, linked) = (
            BodyModes.Of(RideModel.Of(car)), BodyModes.Of(RideModel.Of(car with { Interconnection = new ElasticLink { Rate = new(5000.0) } })));
        var rise = Math.Pow(linked.Bounce.Omega, 2) - Math.Pow(plain.Bounce.Omega, 2);
        Assert.Equal(8.0 * 5000.0 / 1100.0, rise, 1e-4);
        Assert.Equal(plain.Pitch.Omega, linked.Pitch.Omega, 1e-6);
    }

    [Fact]
    public void A_link_of_opposite_ratios_stiffens_pitch_and_leaves_heave_alone()
    {
        var car = Symmetric();
        var link = new ElasticLink { Rate = new(5000.0), RearRatio = new(-1.0) };
        var (plain, linked) = (BodyModes.Of(RideModel.Of(car)), BodyModes.Of(RideModel.Of(car with { Interconnection = link })));
        var inertia = 0.9 * 1100.0 * 1.3 * 1.3;
        // Pitch by θ: s_f − s_r = L·θ on each side.
        Assert.Equal(2.0 * 5000.0 * 2.6 * 2.6 / inertia, Math.Pow(linked.Pitch.Omega, 2) - Math.Pow(plain.Pitch.Omega, 2), 1e-4);
        Assert.Equal(plain.Bounce.Omega, linked.Bounce.Omega, 1e-6);
    }

    private static Car Symmetric()
    {
        var axle = PlainCar.RearAxle with { Tyre = new Tyre { Rate = new(1e11) }, UnsprungMass = new(60.0) };
        return PlainCar.Saloon with
        {
            Weighing = Weighing.PerAxle(new(610.0), new(610.0)),
            Body = new Body { CentreHeight = new(0.55), DynamicIndex = new(0.9) },
            Front = axle,
            Rear = axle,
        };
    }
}
