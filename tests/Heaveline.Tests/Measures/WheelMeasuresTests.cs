using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Tests.Measures;

/// <summary>Travel, stops and tyre load of given motions, by hand.</summary>
public class WheelMeasuresTests
{
    private static readonly Road Hump = Road.From(new RoundTopHump { Height = new(0.075), Length = new(3.7) });

    // Bump stop after 60 mm, rebound stop after 70 mm, straight.
    private static readonly Axle Stopped = PlainCar.FrontAxle with
    {
        BumpStop = new Stop { Clearance = new(0.060), Rate = new Amount<Stiffness>(40e3) },
        ReboundStop = new Stop { Clearance = new(0.070), Rate = new Amount<Stiffness>(40e3) },
    };

    private static readonly RideModel Model = RideModel.Of(PlainCar.Saloon with { Front = Stopped });

    private static WheelMeasures Of(int wheel, params (int Channel, Func<double, double> At)[] traces) => Of(Model, wheel, traces);

    private static WheelMeasures Of(double last, (int Channel, Func<double, double> At) trace) =>
        WheelMeasures.Of(GivenPass.Of(Model, Hump, 10.0, last, 400.0, trace))[0];

    private static WheelMeasures Of(RideModel model, int wheel, params (int Channel, Func<double, double> At)[] traces) =>
        WheelMeasures.Of(GivenPass.Of(model, Hump, 10.0, 2.0, 400.0, traces))[wheel];

    // Five swings of 65 mm up and 55 mm down: the bump stop is met five times and pressed by 5 mm, the rebound stop stays 15 mm away.
    [Fact]
    public void A_wheel_that_meets_its_bump_stop_five_times_has_five_contacts_and_a_negative_margin()
    {
        var wheel = Of(0, (Channel.Wheel, t => 0.005 + (0.060 * Math.Cos(2.0 * Math.PI * 2.5 * (t - 0.1031)))));
        Assert.Equal("front left", wheel.Wheel);
        Assert.Equal(5, wheel.BumpContacts);
        Assert.Equal(0, wheel.ReboundContacts);
        Assert.Equal(0.065, wheel.Bump, 1e-7);
        Assert.Equal(-0.055, wheel.Rebound, 1e-7);
        Assert.Equal(-0.005, wheel.BumpMargin!.Value, 1e-7);
        Assert.Equal(0.015, wheel.ReboundMargin!.Value, 1e-7);
    }

    [Fact]
    public void A_wheel_that_hangs_in_its_rebound_stop_three_times_has_three_contacts()
    {
        var wheel = Of(1, (Channel.Wheel + 1, t => -0.030 - (0.042 * Math.Sin(2.0 * Math.PI * 1.5 * (t - 0.05)))));
        Assert.Equal("front right", wheel.Wheel);
        Assert.Equal((0, 3), (wheel.BumpContacts, wheel.ReboundContacts));
        Assert.Equal(-0.002, wheel.ReboundMargin!.Value, 1e-6);
        Assert.Equal(0.048, wheel.BumpMargin!.Value, 1e-6);
    }

    // A touch of some microseconds between two samples counts, and a margin and its contacts never disagree.
    [Fact]
    public void A_touch_between_two_samples_counts()
    {
        for (var i = 0; i < 10; i++)
        {
            var top = 0.5 + (0.00025 * i);
            var wheel = Of(0, (Channel.Wheel, t => t is > 0.0 and < 1.0 ? 0.0600001 - (40.0 * (t - top) * (t - top) / 100.0) : 0.0));
            Assert.Equal(1, wheel.BumpContacts);
            Assert.Equal(-1e-7, wheel.BumpMargin!.Value, 1e-11);
        }
    }

    // Travel is the wheel's rise less the body's over it: z − x·θ + y·φ, x forward of and y left of the centre of gravity.
    [Fact]
    public void The_body_moves_the_wheels_the_other_way()
    {
        const double ahead = 2.6 * 516.0 / 1116.0;
        var wheels = WheelMeasures.Of(GivenPass.Of(
            Model, Hump, 10.0, 2.0, 400.0, (Channel.Heave, _ => 0.010), (Channel.Pitch, _ => 0.02), (Channel.Roll, _ => 0.03)));
        var (front, rear, side) = (0.02 * ahead, -0.02 * (2.6 - ahead), 0.03 * 0.75);
        double[] expected = [-0.010 + front - side, -0.010 + front + side, -0.010 + rear - side, -0.010 + rear + side];
        Assert.All(wheels.Zip(expected), p => Assert.Equal(p.Second, p.First.Bump, 1e-9));
        Assert.All(wheels.Zip(expected), p => Assert.Equal(p.Second, p.First.Rebound, 1e-9));
        Assert.All(wheels.Take(2).Zip(expected), p => Assert.Equal(0.060 - p.Second, p.First.BumpMargin!.Value, 1e-9));
        Assert.All(wheels.Take(2).Zip(expected), p => Assert.Equal(0.070 + p.Second, p.First.ReboundMargin!.Value, 1e-9));
        Assert.All(wheels.Skip(2), w => Assert.Equal((null, null, 0, 0), (w.BumpMargin, w.ReboundMargin, w.BumpContacts, w.ReboundContacts)));
    }

    // 335 kg on each front wheel; ± 800 N of sine over the hump, 2 kN before: the variation is 800/√2 over 3285 N.
    [Fact]
    public void The_load_varies_about_the_load_that_stands()
    {
        const double still = 335.0 * 9.80665;
        var wheel = Of(4.0, (Channel.Tyre, t => t < -0.05 ? 2000.0 : 800.0 * Math.Sin(2.0 * Math.PI * 3.0 * t)));
        Assert.Equal(still, wheel.StaticLoad, 1e-6);
        Assert.Equal(still - 800.0, wheel.LeastLoad, 1e-2);
        Assert.Equal(still + 2000.0, wheel.GreatestLoad, 1e-6);
        Assert.Equal(800.0 / Math.Sqrt(2.0) / still, wheel.LoadVariation, 1e-3 * 0.17);
        Assert.Equal(0.0, wheel.LiftOff);
    }

    // Off the road from 0.5 to 0.6 s: 41 samples of 2.5 ms, so that the time is told to a sample.
    [Fact]
    public void A_wheel_off_the_road_has_no_load_for_as_long()
    {
        const double still = 290.0 * 9.80665;
        var wheel = Of(2, (Channel.Tyre + 2, t => t is > 0.4999 and < 0.6001 ? -still : -100.0));
        Assert.Equal("rear left", wheel.Wheel);
        Assert.Equal(0.1, wheel.LiftOff, 0.0026);
        Assert.Equal(0.0, wheel.LeastLoad, 1e-9);
        Assert.Equal(still - 100.0, wheel.GreatestLoad, 1e-6);
    }

    // Hardly any load at the samples, and between two of them the curve would have the tyre pull by 1 N: it cannot.
    [Fact]
    public void A_tyre_does_not_pull_between_two_samples()
    {
        const double still = 335.0 * 9.80665;
        var wheel = Of(0, (Channel.Tyre, t => Math.Min(0.0, -still - 1.0 + (2e6 * (t - 0.50125) * (t - 0.50125)))));
        Assert.Equal(0.0, wheel.LeastLoad);
        Assert.Equal(0.0, wheel.LiftOff);
    }

    // Its corners are halves of one wheel: 2 × 60 kg in front, and both halves' change of load.
    [Fact]
    public void A_two_wheeler_has_two_wheels_with_their_whole_load()
    {
        var axle = Stopped with { Track = new(0.0), AntiRollBar = new(0.0), UnsprungMass = new(12.0) };
        var model = RideModel.Of(PlainCar.Saloon with
        {
            Kind = VehicleKind.TwoWheeler,
            Wheelbase = new(1.4),
            Weighing = Weighing.PerAxle(new(120.0), new(130.0)),
            Body = new Body { CentreHeight = new(0.6) },
            Front = axle,
            Rear = axle,
        });
        var wheels = WheelMeasures.Of(GivenPass.Of(model, Hump, 10.0, 4.0, 400.0, (Channel.Tyre, _ => -150.0), (Channel.Tyre + 1, _ => -150.0)));
        Assert.Equal(["front", "rear"], wheels.Select(w => w.Wheel.Split(' ')[0]));
        Assert.Equal(120.0 * 9.80665, wheels[0].StaticLoad, 1e-6);
        Assert.Equal((120.0 * 9.80665) - 300.0, wheels[0].LeastLoad, 1e-6);
        Assert.Equal(300.0 / (120.0 * 9.80665), wheels[0].LoadVariation, 1e-9);
        Assert.Equal(130.0 * 9.80665, wheels[1].LeastLoad, 1e-6);
    }

    // 200, 300, 400 and 500 N more all the time on 335 and 290 kg: each wheel its own, of two the worse.
    [Fact]
    public void The_catalogues_load_variation_is_of_the_wheel_it_names()
    {
        var pass = GivenPass.Of(
            Model,
            Hump,
            10.0,
            4.0,
            400.0,
            [.. Enumerable.Range(0, 4).Select(i => (Channel.Tyre + i, (Func<double, double>)(_ => 200.0 + (100.0 * i))))]);
        double[] expected = [.. Enumerable.Range(0, 4).Select(i => (200.0 + (100.0 * i)) / ((i < 2 ? 335.0 : 290.0) * 9.80665))];
        Assert.All(Enumerable.Range(0, 4), i => Assert.Equal(expected[i], WheelCatalogue.LoadVariation(WheelPlace.Of(i, true)).Of(pass), 1e-9));
        Assert.Equal(
            [expected[1], expected[3]],
            WheelPlace.Axles(true).Select(axle => WheelCatalogue.LoadVariation(axle).Of(pass)),
            (x, y) => Math.Abs(x - y) < 1e-9);
    }
}
