using Heaveline.Elements;
using CsCheck;
using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Tests.Passes;

namespace Heaveline.Tests.Models;

public class TangentTests
{
    [Fact]
    public void The_tangent_equals_central_differences_of_the_kernels_accelerations()
    {
        Gen.Select(AnyCar.FourWheeled, AnyCar.Loads).Sample((car, loads) =>
        {
            var model = RideModel.Of(car, loads);
            var n = model.Tangent.Positions;
            for (var k = 0; k < model.Tangent.State.ColumnCount; k++)
            {
                // Dampers bend at zero speed, where the mean of both slopes is meant. A flow is a volume: a thousandth of a cubic centimetre moves a
                // displacer by some micrometres.
                var h = k % n >= 7 ? 1e-9 : 1e-6;
                var up = Accelerations(model, k, +h);
                var down = Accelerations(model, k, -h);
                var middle = Accelerations(model, k, 0.0);
                for (var i = 0; i < n; i++)
                {
                    var row = i < model.Tangent.Rates ? n + i : i;
                    var tangent = model.Tangent.State[row, k];
                    var size = model.Tangent.State.Row(row).AbsoluteMaximum();
                    if (k < n && Math.Abs(up[i] - (2.0 * middle[i]) + down[i]) > 1e-4 * size * h)
                    {
                        // A corner of a spring or stop within a micrometre of the trim: the tangent is the slope on one side of it.
                        double[] sides = [(up[i] - middle[i]) / h, (middle[i] - down[i]) / h];
                        Assert.InRange(tangent, sides.Min() - (1e-4 * size), sides.Max() + (1e-4 * size));
                        continue;
                    }

                    Assert.Equal((up[i] - down[i]) / (2.0 * h), tangent, 1e-4 * size);
                }
            }
        }, iter: 60);
    }

    [Fact]
    public void A_car_at_its_trim_stays_there()
    {
        AnyCar.Any.Sample(car =>
        {
            var model = RideModel.Of(car);
            Assert.All(Accelerations(model, 0, 0.0), a => Assert.Equal(0.0, a, 1e-5));
        }, iter: 200);
    }

    [Fact]
    public void Suspension_rates_are_the_same_both_ways()
    {
        // Every element has an energy, so ∂F_i/∂s_j = ∂F_j/∂s_i.
        Gen.Select(AnyCar.FourWheeled, AnyCar.Loads).Sample((car, loads) =>
        {
            var rate = RideModel.Of(car, loads).Tangent.SuspensionRate;
            Assert.True((rate - rate.Transpose()).FrobeniusNorm() < 1e-9 * rate.FrobeniusNorm());
        }, iter: 100);
    }

    [Fact]
    public void A_rising_motion_ratio_adds_the_springs_whole_static_force_times_its_slope()
    {
        // Wheel rate r²·k + P·dr/dS; r = 0.8, r₁ = 0.6 per metre, k = 30 N/mm, P·r the sprung load of 2942 N.
        var spring = new Spring
        {
            Law = new LinearSpring { Rate = new(30000.0) },
            MotionRatio = MotionRatio.Constant(0.8) with { PerTravel = new(0.6) },
        };
        var car = PlainCar.Saloon with { Front = PlainCar.FrontAxle with { Spring = spring } };
        var model = RideModel.Of(car);
        var force = 0.5 * (670.0 - 70.0) * Gravity.Standard / 0.8;
        Assert.Equal((0.64 * 30000.0) + (force * 0.6), model.Tangent.WheelRate[0], 1e-6);

        // Under a load both the ratio and the force have grown: compare with the law itself.
        var loaded = RideModel.Of(car, PlainCar.With(120.0, 0.2));
        var s = loaded.Trim.Travel[0];
        var ratio = 0.8 + (0.6 * s);
        var carried = force + (30000.0 * ((0.8 * s) + (0.3 * s * s)));
        Assert.Equal(ratio * carried, loaded.Trim.SprungLoad[0], 1e-5);
        Assert.Equal((ratio * ratio * 30000.0) + (carried * 0.6), loaded.Tangent.WheelRate[0], 1e-6);
    }

    [Fact]
    public void The_gas_force_of_a_damper_counts_with_the_slope_of_its_own_ratio()
    {
        var damper = PlainCar.FrontAxle.Damper with { GasForce = new(200.0), MotionRatio = MotionRatio.Constant(0.9) with { PerTravel = new(0.5) } };
        var model = RideModel.Of(PlainCar.Saloon with { Front = PlainCar.FrontAxle with { Damper = damper } });
        Assert.Equal(21000.0 + (200.0 * 0.5), model.Tangent.WheelRate[0], 1e-6);
        Assert.Equal(0.81 * 1500.0, model.Tangent.SuspensionDamping[0, 0], 1e-9);
    }

    [Fact]
    public void A_damping_ratio_holds_at_the_wheel_whatever_the_dampers_own_ratio_and_its_gas_carries()
    {
        var damper = new Damper { Law = new RatioDamper { Ratio = new(0.3) }, MotionRatio = MotionRatio.Constant(0.7), GasForce = new(150.0) };
        var model = RideModel.Of(PlainCar.Saloon with { Front = PlainCar.FrontAxle with { Damper = damper } });
        Assert.Equal(2.0 * 0.3 * Math.Sqrt(21000.0 * 300.0), model.Tangent.SuspensionDamping[0, 0], 1e-6);
    }

    // Rates of change by the kernel without friction: accelerations, and the flow itself where a line only resists.
    private static double[] Accelerations(RideModel model, int variable, double value)
    {
        var n = model.Tangent.Positions;
        var (place, rate) = (new double[9], new double[9]);
        (variable < n ? place : rate)[variable % n] = value;
        using var kernel = new OpenKernel(model.Numbers, rubs: false);
        var sample = kernel.At(place, rate);
        return [.. Enumerable.Range(0, n).Select(i => sample[i + (i < model.Tangent.Rates ? Channel.Accelerations : Channel.Rates)])];
    }
}
