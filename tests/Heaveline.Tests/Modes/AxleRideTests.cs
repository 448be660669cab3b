using Heaveline.Elements;
using CsCheck;
using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Quantities;

namespace Heaveline.Tests.Modes;

public class AxleRideTests
{
    [Fact]
    public void The_frequency_on_rigid_tyres_is_that_of_the_effective_deflection_for_every_spring()
    {
        Gen.Select(AnyCar.FourWheeled, AnyCar.Loads).Sample((car, loads) =>
        {
            foreach (var axle in AxleRide.Of(RideModel.Of(car, loads)))
            {
                Assert.Equal(Math.Sqrt(Gravity.Standard / axle.Rates.Deflection) / (2.0 * Math.PI), axle.Rates.FrequencyOnRigidTyres, 1e-9);
                Assert.Equal(0.4984 / Math.Sqrt(axle.Rates.Deflection), axle.Rates.FrequencyOnRigidTyres, 1e-4);
                Assert.True(axle.Rates.Frequency < axle.Rates.FrequencyOnRigidTyres);
            }
        }, iter: 100);
    }

    [Fact]
    public void A_quickening_motion_ratio_raises_the_frequency_by_the_springs_static_force()
    {
        // r = 0.75, r₁ = 0.6 per metre: P·r₁ over r²·k is g·r₁/(r·ω²) of the plain rate, whatever the mass; 1.182 Hz becomes √(1 + that) as much.
        var omega = 2.0 * Math.PI * 1.182;
        var rate = 300.0 * omega * omega / (0.75 * 0.75);
        var spring = new Spring { Law = new LinearSpring { Rate = new(rate) }, MotionRatio = MotionRatio.Constant(0.75) };
        var car = PlainCar.Saloon with { Front = PlainCar.FrontAxle with { Spring = spring } };
        var quick = PlainCar.Saloon with
        {
            Front = PlainCar.FrontAxle with { Spring = spring with { MotionRatio = spring.MotionRatio with { PerTravel = new(0.6) } } },
        };
        Assert.Equal(1.182, Front(car), 1e-9);
        Assert.Equal(1.182 * Math.Sqrt(1.0 + (Gravity.Standard * 0.6 / (0.75 * omega * omega))), Front(quick), 1e-9);

        static double Front(Car car) => AxleRide.Of(RideModel.Of(car), AxleEnd.Front).Rates.FrequencyOnRigidTyres;
    }

    [Fact]
    public void Bump_and_rebound_slopes_are_told_apart_and_their_mean_is_the_linear_models()
    {
        var model = RideModel.Of(PlainCar.Saloon);
        var damping = AxleRide.Of(model, AxleEnd.Front).Damping;
        Assert.Equal(2000.0, damping.Bump, 1e-9);
        Assert.Equal(4000.0, damping.Rebound, 1e-9);
        Assert.Equal(model.Tangent.SuspensionDamping[0, 0] + model.Tangent.SuspensionDamping[1, 1], damping.Mean, 1e-9);
        Assert.Equal(2.0 * Math.Sqrt(42000.0 * 600.0), damping.Critical, 1e-6);
        Assert.Equal(3000.0 / (2.0 * Math.Sqrt(42000.0 * 600.0)), damping.Ratio, 1e-12);
    }

    [Fact]
    public void A_damping_ratio_given_to_the_car_comes_back_from_its_axles()
    {
        var damper = new Damper { Law = new RatioDamper { Ratio = new(0.27), ReboundPerBump = new(2.5) } };
        var damping = AxleRide.Of(RideModel.Of(PlainCar.Saloon with { Rear = PlainCar.RearAxle with { Damper = damper } }), AxleEnd.Rear).Damping;
        Assert.Equal(0.27, damping.Ratio, 1e-12);
        Assert.Equal(2.5, damping.Rebound / damping.Bump, 1e-12);
    }

    [Fact]
    public void A_damping_ratio_counts_all_of_the_sprung_mass_even_when_a_link_carries_part_of_it()
    {
        // The link adds ½·k·ρ² of its own to the axle's rate, so the reference differs only by that.
        var damper = new Damper { Law = new RatioDamper { Ratio = new(0.3) } };
        var car = PlainCar.Saloon with
        {
            Front = PlainCar.FrontAxle with { Damper = damper },
            Interconnection = new ElasticLink { Rate = new(1e-6), Carried = new(800.0) },
        };
        Assert.Equal(0.3, AxleRide.Of(RideModel.Of(car), AxleEnd.Front).Damping.Ratio, 1e-9);
    }

    // Closed form, by hand from the equations of FluidLink: with the other axle held the flow is q = (A/C)·s/(κ − I·ω² + jωR), κ = 1/C_f + 1/C_r,
    // and takes A·q/C off the force.
    [Theory]
    [InlineData(2e7, 1e8)]
    [InlineData(2e7, 5e9)]
    [InlineData(5e8, 1e8)]
    [InlineData(3e10, 1e9)]
    public void A_fluid_line_gives_way_at_the_ride_frequency_and_counts_open_at_rest_and_shut_in_a_blow(double inertance, double resistance)
    {
        var (cf, cr, area) = (3e-11, 2e-11, 4e-4);
        var link = Link(cf, cr, area, inertance, resistance);
        var car = PlainCar.Saloon with { Interconnection = link };
        foreach (var axle in AxleRide.Of(RideModel.Of(car)))
        {
            var (own, spring) = axle.End == AxleEnd.Front ? (cf, 42000.0) : (cr, 48000.0);
            var stiff = spring + (2.0 * area * area / own);
            Assert.Equal(stiff, axle.RatesShut!.AxleRate, 1e-6);
            Assert.Equal(spring + (2.0 * area * area / (cf + cr)), axle.RatesAtRest!.AxleRate, 1e-6);
            System.Numerics.Complex At(double omega) => stiff - (2.0 * area * area / (own * own)
                / new System.Numerics.Complex((1.0 / cf) + (1.0 / cr) - (inertance * omega * omega), omega * resistance));
            var ride = 2.0 * Math.PI * axle.Rates.Frequency;
            Assert.Equal(At(ride).Real, axle.Rates.AxleRate, 1e-6 * stiff);
            Assert.Equal(At(2.0 * Math.PI * axle.Rates.HopFrequency).Real, axle.Rates.HopRate, 1e-6 * stiff);
            var dampers = AxleRide.Of(RideModel.Of(PlainCar.Saloon), axle.End).Damping;
            Assert.Equal(dampers.Bump + (At(ride).Imaginary / ride), axle.Damping.Bump, 1e-6 * dampers.Bump);
        }

        var open = AxleRide.Of(
            RideModel.Of(car with { Interconnection = link with { Line = link.Line with { State = LineState.Open } } }), AxleEnd.Front);
        Assert.Null(open.RatesAtRest);
        Assert.Equal(42000.0 + (2.0 * area * area / (cf + cr)), open.Rates.AxleRate, 1e-6);
        var shut = AxleRide.Of(
            RideModel.Of(car with { Interconnection = link with { Line = link.Line with { State = LineState.Shut } } }), AxleEnd.Front);
        Assert.Null(shut.RatesAtRest);
        Assert.Equal(42000.0 + (2.0 * area * area / cf), shut.Rates.AxleRate, 1e-6);
    }

    // Without any damping and with next to no wheels the body's frequencies are roots of the whole model, however thin the pipe; two routes.
    [Fact]
    public void A_fluid_car_rides_at_frequencies_that_the_whole_model_has()
    {
        Gen.Select(Gen.Double[6.0, 10.5], Gen.Double[2e-11, 9e-11], Gen.Double[2e-11, 9e-11], Gen.Double[2e-4, 6e-4]).Sample((power, cf, cr, area) =>
        {
            var link = Link(cf, cr, area, Math.Pow(10.0, power), 0.0);
            static Axle Light(Axle axle) => axle with
            {
                UnsprungMass = new(0.01),
                Damper = new Damper { Law = new TableDamper(new([1.0, 2.0], [0.0, 0.0]), new([1.0, 2.0], [0.0, 0.0])) },
                Tyre = new Tyre { Rate = new(1e9) },
            };
            var car = PlainCar.Saloon with { Interconnection = link, Front = Light(PlainCar.FrontAxle), Rear = Light(PlainCar.RearAxle) };
            var model = RideModel.Of(car);
            double[] whole = [.. DampedModes.Of(model).All.Select(mode => mode.Frequency)];
            var body = BodyModes.Of(model);
            foreach (var found in new[] { body.Bounce.Frequency, body.Pitch.Frequency, body.Roll!.Frequency })
            {
                Assert.Contains(whole, mode => Math.Abs(mode - found) < 2e-4 * found);
            }
        }, iter: 100);
    }

    private static FluidLink Link(double cf, double cr, double area, double inertance, double resistance) => new()
    {
        FrontArea = new(area), RearArea = new(area),
        Front = new Accumulator { Compliance = new Amount<Compliance>(cf) }, Rear = new Accumulator { Compliance = new Amount<Compliance>(cr) },
        BasePressure = new(1.5e6), Line = new FluidLine { Inertance = new(inertance), Resistance = new(resistance) },
    };

    [Fact]
    public void The_one_wheel_of_a_two_wheelers_axle_has_the_whole_axles_rate()
    {
        var axle = PlainCar.RearAxle with { Track = new(0.0), UnsprungMass = new(15.0) };
        var car = new Car
        {
            Name = "two wheels", Kind = VehicleKind.TwoWheeler, Wheelbase = new(1.4), Weighing = Weighing.PerAxle(new(110.0), new(130.0)),
            Body = new Body { CentreHeight = new(0.7) }, Front = axle, Rear = axle,
        };
        var front = AxleRide.Of(RideModel.Of(car), AxleEnd.Front);
        Assert.Equal(24000.0, front.Rates.WheelRate, 1e-9);
        Assert.Equal(24000.0, front.Rates.AxleRate, 1e-9);
        Assert.Equal(95.0, front.Rates.SprungMass, 1e-9);
        Assert.Equal(190000.0, front.Rates.TyreRate, 1e-9);
        Assert.Equal(1500.0, front.Damping.Mean, 1e-9);
    }
}
