using Heaveline.Elements;
using CsCheck;
using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Quantities;

namespace Heaveline.Tests.Models;

public class TrimTests
{
    [Fact]
    public void Wheel_loads_sum_to_the_weight_and_balance_about_the_loaded_centre()
    {
        Gen.Select(AnyCar.Any, AnyCar.Loads).Sample((car, loads) =>
        {
            var state = car.Kind == VehicleKind.TwoWheeler ? OnTwoWheels(loads) : loads;
            var model = RideModel.Of(car, state);
            var weight = (car.Weighing.Total + state.Loads.Sum(l => l.Mass.Si)) * Gravity.Standard;
            // Every wheel once: a two-wheeler's left corners are its two wheels.
            int[] wheels = model.Rolls ? [0, 1, 2, 3] : [0, 2];
            Assert.Equal(weight, wheels.Sum(i => model.Trim.WheelLoad[i]), 1e-6 * weight);
            Assert.Equal(weight, model.Trim.Weight, 1e-6 * weight);
            Assert.Equal(model.Body.Mass * Gravity.Standard, wheels.Sum(i => model.Trim.SprungLoad[i]), 1e-6 * weight);
            Assert.Equal(model.Body.Mass * Gravity.Standard, model.Trim.AxleSprungLoad.Sum(), 1e-6 * weight);
            var pitch = wheels.Sum(i => model.X[i] * model.Trim.SprungLoad[i]) - (model.PitchGravity * model.Trim.Pitch);
            var roll = Enumerable.Range(0, 4).Sum(i => model.Y[i] * model.Trim.SprungLoad[i]) + (model.RollGravity * model.Trim.Roll);
            Assert.Equal(0.0, pitch, 1e-6 * weight);
            Assert.Equal(0.0, roll, 1e-6 * weight);
        }, iter: 300);
    }

    [Fact]
    public void A_car_as_described_stands_with_no_travel_used_up()
    {
        AnyCar.Any.Sample(car =>
        {
            var trim = RideModel.Of(car).Trim;
            Assert.All(trim.Travel, s => Assert.Equal(0.0, s, 1e-9));
            Assert.Equal(0.0, trim.Pitch, 1e-9);
            Assert.Equal(0.0, trim.Roll, 1e-9);
            var onWheel = car.Kind == VehicleKind.TwoWheeler ? car.Weighing.Front : car.Weighing.FrontLeft.Si;
            Assert.Equal(onWheel * Gravity.Standard, trim.WheelLoad[0], 1e-3);
            Assert.Equal(car.Weighing.Rear * Gravity.Standard, trim.AxleLoad[1], 1e-3);
        }, iter: 300);
    }

    [Fact]
    public void A_mirrored_car_under_mirrored_loads_stands_mirrored()
    {
        Gen.Select(AnyCar.FourWheeled, AnyCar.Loads).Sample((car, loads) =>
        {
            var trim = RideModel.Of(car, loads).Trim;
            var mirrored = RideModel.Of(AnyCar.Mirrored(car), AnyCar.Mirrored(loads)).Trim;
            Assert.Equal(trim.Pitch, mirrored.Pitch, 1e-7);
            Assert.Equal(trim.Roll, -mirrored.Roll, 1e-7);
            for (var i = 0; i < 4; i++)
            {
                Assert.Equal(trim.Travel[i], mirrored.Travel[i ^ 1], 1e-7);
                Assert.Equal(trim.WheelLoad[i], mirrored.WheelLoad[i ^ 1], 1e-2);
            }
        }, iter: 200);
    }

    [Fact]
    public void Loads_at_one_place_add_up_in_a_linear_car()
    {
        // With gravity's arms the equations stay linear only while the heights of all loads agree with the body's: leave the axes out.
        Gen.Select(AnyCar.Linear, AnyCar.Loads, AnyCar.Loads).Sample((drawn, one, two) =>
        {
            var car = drawn with { Body = new Body { CentreHeight = drawn.Body.CentreHeight } };
            var a = RideModel.Of(car, one).Trim;
            var b = RideModel.Of(car, two).Trim;
            var both = RideModel.Of(car, new LoadState { Name = "both", Loads = [.. one.Loads, .. two.Loads] }).Trim;
            for (var i = 0; i < 4; i++)
            {
                Assert.Equal(a.Travel[i] + b.Travel[i], both.Travel[i], 1e-7);
            }

            Assert.Equal(a.Pitch + b.Pitch, both.Pitch, 1e-7);
            Assert.Equal(a.Roll + b.Roll, both.Roll, 1e-7);
        }, iter: 200);
    }

    [Fact]
    public void A_load_over_the_front_axle_presses_its_springs_and_tyres_and_leaves_the_rear_alone()
    {
        var trim = RideModel.Of(PlainCar.Saloon, PlainCar.With(100.0, 0.0)).Trim;
        var (springs, tyres) = (2.0 * 21000.0, 2.0 * 190000.0);
        Assert.Equal(100.0 * Gravity.Standard / springs, trim.Travel[0], 1e-9);
        Assert.Equal(0.0, trim.Travel[2], 1e-9);
        Assert.Equal(-100.0 * Gravity.Standard * ((1.0 / springs) + (1.0 / tyres)), trim.FrontHeight, 1e-9);
        Assert.Equal(0.0, trim.RearHeight, 1e-9);
        Assert.True(trim.Pitch > 0.0, "nose-down is positive");
    }

    [Fact]
    public void A_load_on_the_left_presses_the_left_wheels_and_rolls_the_body_to_the_left()
    {
        var trim = RideModel.Of(PlainCar.Saloon, PlainCar.With(80.0, 1.2, left: 0.4)).Trim;
        Assert.True(trim.WheelLoad[0] > trim.WheelLoad[1] && trim.WheelLoad[2] > trim.WheelLoad[3]);
        Assert.True(trim.Roll < 0.0, "right side down is positive");
        // Moments about the middle line.
        var moment = 0.75 * (trim.WheelLoad[0] - trim.WheelLoad[1] + trim.WheelLoad[2] - trim.WheelLoad[3]);
        Assert.Equal(80.0 * Gravity.Standard * 0.4, moment, 1e-6);
    }

    [Fact]
    public void A_load_uses_up_the_clearance_of_the_stops()
    {
        var stop = new Stop { Clearance = new(0.060), Rate = new Amount<Stiffness>(1e5) };
        var car = PlainCar.Saloon with { Front = PlainCar.FrontAxle with { BumpStop = stop, ReboundStop = stop } };
        var trim = RideModel.Of(car, PlainCar.With(100.0, 0.0)).Trim;
        Assert.Equal(0.060 - trim.Travel[0], trim.BumpLeft[0], 1e-12);
        Assert.Equal(0.060 + trim.Travel[0], trim.ReboundLeft[0], 1e-12);
        Assert.Equal(double.PositiveInfinity, trim.BumpLeft[2]);
    }

    [Fact]
    public void A_touched_stop_carries_its_part_of_the_load()
    {
        var stop = new Stop { Clearance = new(0.010), Rate = new Amount<Stiffness>(80000.0) };
        var car = PlainCar.Saloon with { Front = PlainCar.FrontAxle with { BumpStop = stop } };
        var trim = RideModel.Of(car, PlainCar.With(150.0, 0.0)).Trim;
        var force = 0.5 * 150.0 * Gravity.Standard;
        // 21000·S + 80000·(S − 0.01) = force.
        Assert.Equal((force + 800.0) / 101000.0, trim.Travel[0], 1e-9);
        Assert.Equal(101000.0, RideModel.Of(car, PlainCar.With(150.0, 0.0)).Tangent.WheelRate[0], 1e-6);
    }

    [Fact]
    public void Friction_leaves_a_band_of_its_force_over_the_wheel_rate()
    {
        var car = PlainCar.Saloon with { Front = PlainCar.FrontAxle with { Friction = new Friction { HalfWidth = new(63.0) } } };
        Assert.Equal([63.0 / 21000.0, 0.0], RideModel.Of(car).Trim.FrictionBand);
    }

    [Fact]
    public void A_pipe_at_rest_is_an_open_line_and_lets_the_nose_rise_further_than_a_shut_one()
    {
        var unit = new Accumulator { Compliance = new Amount<Compliance>(2e-11) };
        Trim Standing(LineState state) => RideModel.Of(
            PlainCar.Saloon with
            {
                Interconnection = new FluidLink
                {
                    FrontArea = new(4e-4), RearArea = new(4e-4), Front = unit, Rear = unit, BasePressure = new(2e6),
                    Line = new FluidLine { State = state, Inertance = new(1e7), Resistance = new(1e8) },
                },
            },
            PlainCar.With(200.0, 2.4)).Trim;
        var (pipe, open, shut) = (Standing(LineState.Pipe), Standing(LineState.Open), Standing(LineState.Shut));
        Assert.Equal(open.Pitch, pipe.Pitch, 1e-9);
        Assert.Equal(open.Travel, pipe.Travel, (a, b) => Math.Abs(a - b) < 1e-9);
        Assert.Equal(open.LinePressure, pipe.LinePressure, (a, b) => Math.Abs(a - b) < 1.0);
        Assert.True(pipe.Pitch < 1.2 * shut.Pitch && shut.Pitch < 0.0);
        Assert.Equal(pipe.LinePressure[0], pipe.LinePressure[2], 1.0);
        Assert.True(shut.LinePressure[2] > shut.LinePressure[0]);
        Assert.Equal(2e6 + (4e-4 * shut.Travel[2] / 2e-11), shut.LinePressure[2], 1.0);
    }

    [Fact]
    public void A_load_that_doubles_a_gas_springs_pressure_finds_its_balance_short_of_the_springs_end()
    {
        // A straight step from the reference rate would end past the volume's end, V/A = 0.35 m; F = A·(p₀·(V/(V − A·x))ⁿ − p_atm) gives the place.
        var gas = new GasSpring { Area = new(1.28794e-3), Volume = new(4.52864e-4) };
        var rear = PlainCar.RearAxle with { Track = new(0.0), UnsprungMass = new(8.0), Spring = new Spring { Law = gas } };
        var car = new Car
        {
            Name = "gas at the rear", Kind = VehicleKind.TwoWheeler, Wheelbase = new(1.64496), Weighing = Weighing.PerAxle(new(86.0), new(73.5)),
            Body = new Body { CentreHeight = new(0.7) }, Front = rear with { Spring = new Spring { Law = new LinearSpring { Rate = new(4000.0) } } },
            Rear = rear,
        };
        var trim = RideModel.Of(car, PlainCar.With(148.0, 1.36)).Trim;
        var before = (73.5 - 8.0) * Gravity.Standard;
        var after = before + (148.0 * 1.36 / 1.64496 * Gravity.Standard);
        var ratio = (after + (1.28794e-3 * 101325.0)) / (before + (1.28794e-3 * 101325.0));
        Assert.Equal(4.52864e-4 / 1.28794e-3 * (1.0 - Math.Pow(ratio, -1.0 / 1.38)), trim.Travel[2], 1e-8);
    }

    private static LoadState OnTwoWheels(LoadState state) => state with
    {
        Loads = [.. state.Loads
            .Select(l => l with { LeftOfMiddle = new(0.0), Mass = new(0.3 * l.Mass.Si), BehindFrontAxle = new(0.5 * l.BehindFrontAxle.Si) })],
    };
}
