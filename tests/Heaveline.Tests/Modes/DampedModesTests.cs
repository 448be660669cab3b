using System.Numerics;
using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Quantities;

namespace Heaveline.Tests.Modes;

public class DampedModesTests
{
    [Fact]
    public void Every_mode_solves_the_equations_of_motion_of_the_tangent()
    {
        Gen.Select(AnyCar.FourWheeled, AnyCar.Loads, Gen.Bool).Sample((car, loads, laden) =>
        {
            var model = RideModel.Of(car, laden ? loads : null);
            var n = model.Tangent.Positions;
            var modes = DampedModes.Of(model);
            Assert.Equal(model.Tangent.State.RowCount, (2 * modes.Swings.Count) + modes.Creeps.Count);
            Assert.Equal(
                model.Tangent.State.Trace(),
                modes.Swings.Sum(m => 2.0 * m.Root.Real) + modes.Creeps.Sum(m => m.Root.Real),
                1e-6 * Math.Abs(model.Tangent.State.Trace()));
            var (byPlace, bySpeed) = (model.Tangent.ByPlace, model.Tangent.BySpeed);
            foreach (var mode in modes.All)
            {
                Complex[] q = [mode.Shape.Heave, mode.Shape.Pitch, mode.Shape.Roll, .. mode.Shape.Wheels, .. mode.Shape.Flow];
                for (var i = 0; i < n; i++)
                {
                    // A flow without inertance has no acceleration in its row.
                    var sum = i < model.Tangent.Rates ? mode.Root * mode.Root * q[i] : Complex.Zero;
                    var size = sum.Magnitude + 1.0;
                    for (var j = 0; j < n; j++)
                    {
                        var term = (byPlace[i, j] + (mode.Root * bySpeed[i, j])) * q[j];
                        sum -= term;
                        size = Math.Max(size, term.Magnitude);
                    }

                    Assert.True(sum.Magnitude < 1e-6 * size, $"{mode.Dominant} at {mode.Frequency} Hz, row {i}: {sum.Magnitude} of {size}");
                }
            }
        }, iter: 100);
    }

    /// <summary>A flow without inertance has no rate of its own: one root a side instead of two.</summary>
    [Fact]
    public void Modes_with_a_line_that_only_resists_solve_the_tangent_with_one_state_less_a_side()
    {
        foreach (var load in new[] { LoadState.Reference, Passes.ExactCars.OffCentre })
        {
            var model = RideModel.Of(Passes.ExactCars.OnResistingLine, load);
            var state = model.Tangent.State;
            Assert.Equal((9, 16), (model.Tangent.Positions, state.RowCount));
            var modes = DampedModes.Of(model);
            Assert.Equal(16, (2 * modes.Swings.Count) + modes.Creeps.Count);
            foreach (var mode in modes.All)
            {
                Assert.Equal(1.0, mode.Shares.Values.Sum(), 1e-9);
                Complex[] q = [mode.Shape.Heave, mode.Shape.Pitch, mode.Shape.Roll, .. mode.Shape.Wheels, .. mode.Shape.Flow];
                Complex[] x = [.. q, .. q.Take(7).Select(place => mode.Root * place)];
                for (var i = 0; i < 16; i++)
                {
                    Complex[] terms = [.. x.Select((value, j) => state[i, j] * value)];
                    var miss = terms.Aggregate(-mode.Root * x[i], (sum, term) => sum + term).Magnitude;
                    var size = Math.Max((mode.Root * x[i]).Magnitude, terms.Max(term => term.Magnitude));
                    Assert.True(miss <= (1e-7 * size) + 1e-9, $"{mode.Name}, row {i}: {miss}");
                }
            }
        }
    }

    [Fact]
    public void Shares_sum_to_one_and_the_largest_motion_is_one_with_phase_zero()
    {
        AnyCar.Any.Sample(car =>
        {
            foreach (var mode in DampedModes.Of(RideModel.Of(car)).All)
            {
                Assert.Equal(1.0, mode.Shares.Values.Sum(), 1e-9);
                Assert.Equal(1.0, mode.Shape.Motions.Values.Max(m => m.Magnitude), 1e-9);
                Assert.Contains(Complex.One, mode.Shape.Motions.Values);
                Assert.False(mode.Grows);
            }
        }, iter: 100);
    }

    [Fact]
    public void A_car_alike_on_both_sides_has_pure_side_view_and_pure_front_view_modes()
    {
        var modes = DampedModes.Of(RideModel.Of(PlainCar.Saloon));
        Assert.Equal(7, modes.Swings.Count);
        Assert.Empty(modes.Creeps);
        Assert.Equal(7, modes.All.Select(m => m.Name).Distinct().Count());
        Motion[] expected = [Motion.Heave, Motion.Pitch, Motion.Roll, Motion.FrontHop, Motion.RearHop, Motion.FrontTramp, Motion.RearTramp];
        Assert.Equal(expected.Order(), modes.Swings.Select(m => m.Dominant).Order());
        foreach (var mode in modes.Swings)
        {
            var front = mode.Dominant is Motion.Roll or Motion.FrontTramp or Motion.RearTramp;
            Motion[] others = front
                ? [Motion.Heave, Motion.Pitch, Motion.FrontHop, Motion.RearHop]
                : [Motion.Roll, Motion.FrontTramp, Motion.RearTramp];
            Assert.All(others, m => Assert.Equal(Complex.Zero, mode.Shape.Motions[m]));
        }
    }

    [Fact]
    public void Undamped_modes_have_still_nodes_and_energy_shares()
    {
        var undamped = new Damper { Law = new RatioDamper { Ratio = new(0.0) } };
        var car = PlainCar.Saloon with { Front = PlainCar.FrontAxle with { Damper = undamped }, Rear = PlainCar.RearAxle with { Damper = undamped } };
        var model = RideModel.Of(car);
        var modes = DampedModes.Of(model);
        Assert.DoesNotContain(modes.All, m => m.Grows);
        Assert.Equal(7, modes.Swings.Count);
        foreach (var mode in modes.Swings)
        {
            Assert.Equal(0.0, mode.DampingRatio, 1e-9);
            var heave = model.Body.Mass * Math.Pow(mode.Shape.Heave.Magnitude, 2);
            var pitch = model.Body.PitchInertia * Math.Pow(mode.Shape.Pitch.Magnitude, 2);
            var roll = model.Body.RollInertia * Math.Pow(mode.Shape.Roll.Magnitude, 2);
            var wheels = mode.Shape.Wheels.Select((u, i) => (i < 2 ? 35.0 : 32.0) * Math.Pow(u.Magnitude, 2)).Sum();
            Assert.Equal(heave / (heave + pitch + roll + wheels), mode.Shares[Motion.Heave], 1e-9);
            if (mode.Node is { } node)
            {
                Assert.Equal(0.0, node.Remaining, 1e-6);
                Assert.Equal(model.X[0], node.Ahead + node.BehindFrontAxle, 1e-9);
            }
        }
    }

    [Fact]
    public void Light_wheels_on_stiff_tyres_leave_the_body_modes_of_the_textbook()
    {
        var undamped = new Damper { Law = new RatioDamper { Ratio = new(0.0) } };
        var car = PlainCar.Saloon with
        {
            Weighing = Weighing.PerAxle(new(600.1), new(516.1)),
            Front = PlainCar.FrontAxle with { Damper = undamped, UnsprungMass = new(0.1) },
            Rear = PlainCar.RearAxle with { Damper = undamped, UnsprungMass = new(0.1) },
        };
        var model = RideModel.Of(car);
        var (body, modes) = (BodyModes.Of(model), DampedModes.Of(model));
        double[] textbook = [body.Bounce.Frequency, body.Pitch.Frequency, body.Roll!.Frequency];
        Assert.Equal(textbook.Order(), modes.Swings.Take(3).Select(m => m.Frequency).Order(), (a, b) => Math.Abs(a - b) < 1e-4 * a);
        var bounce = modes.Swings.Single(m => m.Dominant == Motion.Heave);
        Assert.Equal(body.Bounce.NodeAhead, bounce.Node!.Ahead, 1e-2 * Math.Abs(body.Bounce.NodeAhead));
    }

    [Fact]
    public void A_damped_mode_whose_heave_and_pitch_are_out_of_phase_has_no_still_point()
    {
        var soft = PlainCar.RearAxle with { Damper = new Damper { Law = new RatioDamper { Ratio = new(0.05) } } };
        var modes = DampedModes.Of(RideModel.Of(PlainCar.Saloon with { Rear = soft }));
        Assert.Contains(modes.Swings, m => m.Dominant is Motion.Heave or Motion.Pitch && m.Node!.Remaining > 0.01);
    }

    [Fact]
    public void Dampers_past_critical_turn_a_swing_into_two_creeping_roots()
    {
        var stiff = new Damper { Law = new RatioDamper { Ratio = new(1.6) } };
        var modes = DampedModes.Of(RideModel.Of(
            PlainCar.Saloon with { Front = PlainCar.FrontAxle with { Damper = stiff }, Rear = PlainCar.RearAxle with { Damper = stiff } }));
        Assert.NotEmpty(modes.Creeps);
        Assert.Equal(14, (2 * modes.Swings.Count) + modes.Creeps.Count);
        Assert.All(modes.Creeps, m => Assert.True(m.TimeConstant > 0.0 && !m.Swings && m.DampingRatio == 1.0));
    }

    [Fact]
    public void A_two_wheeler_has_four_motions_and_no_roll()
    {
        AnyCar.Any.Where(c => c.Kind == VehicleKind.TwoWheeler).Sample(car =>
        {
            var modes = DampedModes.Of(RideModel.Of(car));
            Assert.Equal(8, (2 * modes.Swings.Count) + modes.Creeps.Count);
            Assert.All(modes.All, m => Assert.Equal(Complex.Zero, m.Shape.Roll));
            Assert.All(modes.All, m => Assert.Equal(m.Shape.Wheels[0], m.Shape.Wheels[1]));
        }, iter: 30);
    }

    [Fact]
    public void A_two_wheeler_moves_as_the_side_view_of_the_car_made_of_two_of_it()
    {
        var axle = PlainCar.RearAxle with { UnsprungMass = new(30.0) };
        var car = PlainCar.Saloon with
        {
            Weighing = Weighing.PerAxle(new(300.0), new(260.0)),
            Front = axle,
            Rear = axle,
            Body = new Body { CentreHeight = new(0.6), DynamicIndex = new(0.9) },
        };
        var wheel = axle with { Track = new(0.0), UnsprungMass = new(15.0) };
        var half = car with { Kind = VehicleKind.TwoWheeler, Weighing = Weighing.PerAxle(new(150.0), new(130.0)), Front = wheel, Rear = wheel };
        var side = DampedModes.Of(RideModel.Of(car)).Swings
            .Where(m => m.Dominant is Motion.Heave or Motion.Pitch or Motion.FrontHop or Motion.RearHop);
        Assert.Equal(
            side.Select(m => m.Root),
            DampedModes.Of(RideModel.Of(half)).Swings.Select(m => m.Root),
            (a, b) => (a - b).Magnitude < 1e-8 * a.Magnitude);
    }

    [Fact]
    public void A_motion_fed_with_energy_grows()
    {
        var model = RideModel.Of(PlainCar.Saloon);
        var system = ModalSystem.Of(model);
        var fed = system.BySpeed.Clone();
        fed[2, 2] = +0.5;
        var modes = DampedModes.Of(model, system with { BySpeed = fed });
        Assert.All(modes.All.Where(m => m.Grows), m => Assert.True(m is { Dominant: Motion.Roll, Swings: true }));
        Assert.Contains(modes.All, m => m.Grows);
        Assert.DoesNotContain(DampedModes.Of(model).All, m => m.Grows);
    }

    [Fact]
    public void An_off_centre_load_couples_pitch_and_roll_by_its_product_of_inertia_as_a_dense_two_by_two_problem_says()
    {
        // A car whose springs couple nothing: its loaded centre in the middle of four equal springs, so only −P_xy joins pitch and roll. Two equal
        // loads on a diagonal keep the centre where it is.
        var undamped = new Damper { Law = new RatioDamper { Ratio = new(0.0) } };
        var axle = PlainCar.RearAxle with { UnsprungMass = new(0.01), Damper = undamped, Tyre = new Tyre { Rate = new(1e9) } };
        var car = PlainCar.Saloon with
        {
            Weighing = Weighing.PerAxle(new(600.01), new(600.01)),
            Front = axle,
            Rear = axle,
            Body = new Body { CentreHeight = new(0.55), PitchInertia = new Amount<Inertia>(1900.0), RollInertia = new Amount<Inertia>(500.0) },
        };
        Load At(string name, double behind, double left) =>
            new() { Name = name, Mass = new(250.0), BehindFrontAxle = new(behind), LeftOfMiddle = new(left), Height = new(0.55) };
        var model = RideModel.Of(car, new LoadState { Name = "diagonal", Loads = [At("front left", 0.3, 0.45), At("rear right", 2.3, -0.45)] });

        var product = 2.0 * 250.0 * 1.0 * 0.45;
        Assert.Equal(product, model.Body.InertiaProduct, 1e-9);
        var mass = Matrix<double>.Build.DenseOfArray(new[,] { { 1900.0 + (500.0 * 1.0), -product }, { -product, 500.0 + (500.0 * 0.45 * 0.45) } });
        var rate = Matrix<double>.Build.DenseOfDiagonalArray([4.0 * 24000.0 * 1.3 * 1.3, 4.0 * 24000.0 * 0.75 * 0.75]);
        var coupled = mass.Solve(rate).Evd().EigenValues.Select(v => Math.Sqrt(v.Real) / (2.0 * Math.PI)).Order().ToArray();

        var modes = DampedModes.Of(model).Swings.Where(m => m.Dominant is Motion.Pitch or Motion.Roll).Select(m => m.Frequency).Order().ToArray();
        Assert.Equal(coupled, modes, (a, b) => Math.Abs(a - b) < 1e-3 * a);
        var apart = new[] { Math.Sqrt(rate[0, 0] / mass[0, 0]), Math.Sqrt(rate[1, 1] / mass[1, 1]) }
            .Select(w => w / (2.0 * Math.PI)).Order().ToArray();
        Assert.True(modes[0] < apart[0] && modes[1] > apart[1], "coupling drives the two frequencies apart");
    }

    [Fact]
    public void A_line_with_much_resistance_moves_as_one_shut_and_with_little_as_one_open()
    {
        Assert.Equal(Body(LineState.Shut, 0.0, 0.0), Body(LineState.Pipe, 1e6, 1e13), (a, b) => Math.Abs(a - b) < 1e-3 * a);
        Assert.Equal(Body(LineState.Open, 0.0, 0.0), Body(LineState.Pipe, 1e2, 1e3), (a, b) => Math.Abs(a - b) < 1e-3 * a);
        // The same without inertance, and a line of no weight that has next to none.
        Assert.Equal(Body(LineState.Shut, 0.0, 0.0), Body(LineState.Pipe, 0.0, 1e13), (a, b) => Math.Abs(a - b) < 1e-3 * a);
        Assert.Equal(Body(LineState.Open, 0.0, 0.0), Body(LineState.Pipe, 0.0, 1.1e7), (a, b) => Math.Abs(a - b) < 1e-3 * a);
        Assert.Equal(Body(LineState.Pipe, 1.0, 3e9), Body(LineState.Pipe, 0.0, 3e9), (a, b) => Math.Abs(a - b) < 1e-6 * a);

        static double[] Body(LineState state, double inertance, double resistance)
        {
            var unit = new Accumulator { Compliance = new Amount<Compliance>(2e-11) };
            var link = new FluidLink
            {
                FrontArea = new(4e-4), RearArea = new(4e-4), Front = unit, Rear = unit, BasePressure = new(1.5e6),
                Line = new FluidLine { State = state, Inertance = new(inertance), Resistance = new(resistance) },
            };
            var modes = DampedModes.Of(RideModel.Of(PlainCar.Saloon with { Interconnection = link }));
            return [.. modes.Swings.Where(m => m.Dominant is Motion.Heave or Motion.Pitch or Motion.Roll).Select(m => m.Frequency).Order()];
        }
    }
}
