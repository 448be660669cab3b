using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Passes.Exact;
using Heaveline.Roads;

namespace Heaveline.Tests.Passes;

/// <summary>
/// The stepped run against the certified one, which is written apart from it. A scheme of order four keeps it on a smooth problem; where a law bends
/// between two steps the error falls with the step's square, where a force jumps (a damped tyre at a corner of the road, or landing) with the step
/// itself (Hairer, Nørsett, Wanner, Solving Ordinary Differential Equations I, II.6 and III.2). Bounds at one step are measured here, no source.
/// </summary>
public class ExactAgainstSteppedTests
{
    private const double Step = 0.000625;
    private const double OutputStep = 0.005;
    private const int Outputs = 400;

    // Halvings of the step over which the order is read off: how an event falls between two steps shakes each single error.
    private const int Halvings = 5;

    private static readonly Road Hump = Road.From(new RoundTopHump { Height = new(0.10), Length = new(3.7) });
    private static readonly Road Bump = Road.From(new Versine { Height = new(0.05), Length = new(2.5) });
    private static readonly Road OneSided = Road.From(new Versine { Height = new(0.08), Length = new(2.0) }, Tracks.Left);

    public static TheoryData<string, bool> Cases => new()
    {
        { "violent", true },
        { "violent on undamped tyres", false },
        { "independent left only", false },
        { "solid axles", false },
        { "elastic link", true },
        { "elastic link with a damper", true },
        { "fluid pipe", false },
        { "fluid line that resists", false },
        { "fluid shut", true },
        { "fluid open", false },
        { "off-centre load", true },
        { "two-wheeler", true },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void The_stepped_run_closes_in_on_the_exact_one_as_its_step_falls(string name, bool forceJumps)
    {
        var (car, load, road, speed) = Case(name);
        var model = RideModel.Of(car, load);
        var exact = ExactRun.Of(model, road, speed, -0.1, OutputStep, Outputs, cancellation: TestContext.Current.CancellationToken);
        var coarse = Stepped(model, road, speed, 1);
        var middle = Stepped(model, road, speed, 2);
        var finest = Stepped(model, road, speed, 1 << Halvings);
        double Pitch(double[] samples) => SteppedPass.Miss(samples, exact.Samples, Channel.Pitch);
        TestContext.Current.TestOutputHelper?.WriteLine($"{name}: pitch {Pitch(coarse):E2} {Pitch(middle):E2} {Pitch(finest):E2}, "
            + $"tyre {SteppedPass.Miss(coarse, exact.Samples, Channel.Tyre, 4):E2} "
            + $"{SteppedPass.Miss(finest, exact.Samples, Channel.Tyre, 4):E2}; {exact.Statistics}");
        Assert.True(exact.Statistics.Events > 50, $"{exact.Statistics}");
        Assert.True(Pitch(coarse) <= 2e-4, $"0.625 ms: {Pitch(coarse):E2}");
        Assert.True(Pitch(coarse) / Pitch(finest) >= Math.Pow(forceJumps ? 1.5 : 2.5, Halvings), $"{Pitch(coarse):E2} to {Pitch(finest):E2}");
        foreach (var (channel, count) in ((int, int)[])
        [
            (Channel.Heave, 1), (Channel.Roll, 1), (Channel.Wheel, 4), (Channel.Flow, 2), (Channel.Rates, 3), (Channel.Tyre, 4), (Channel.Force, 4),
        ])
        {
            var miss = SteppedPass.Miss(finest, exact.Samples, channel, count);
            Assert.True(miss < 5e-5, $"channel {channel}: {miss:E2}");
        }
    }

    [Fact]
    public void On_a_smooth_problem_the_stepped_run_has_order_four()
    {
        var model = RideModel.Of(ExactCars.Linear);
        var road = Road.Flat with { Left = Smooth, Right = Smooth };
        var exact = ExactRun.Of(model, road, 15.0, -0.1, OutputStep, Outputs, cancellation: TestContext.Current.CancellationToken);
        var misses = new[] { 1, 2, 4 }
            .Select(divided => SteppedPass.Miss(Stepped(model, road, 15.0, divided), exact.Samples, Channel.Pitch)).ToArray();
        TestContext.Current.TestOutputHelper?.WriteLine($"smooth: pitch {string.Join(' ', misses.Select(m => $"{m:E2}"))}; {exact.Statistics}");
        Assert.Equal(0, exact.Statistics.Events);
        Assert.True(misses[0] < 1e-5);
        Assert.True(misses[0] / misses[1] >= 8.0, $"{misses[0] / misses[1]:F1}");
        Assert.True(misses[1] / misses[2] >= 8.0, $"{misses[1] / misses[2]:F1}");
    }

    // h/4·(1 − cos kx)²: four derivatives are continuous but the last at its feet; drawn in pieces a tenth as long
    // as usual, for their corners in curvature.
    private static Profile Smooth
    {
        get
        {
            const double A = 0.02 / 4.0;
            const double K = 2.0 * Math.PI / 2.5;
            return new Outline(0.0, 0.0)
                .CurveTo(
                    2.5,
                    0.0,
                    x => A * Math.Pow(1.0 - Math.Cos(K * x), 2),
                    x => 2.0 * A * K * (1.0 - Math.Cos(K * x)) * Math.Sin(K * x),
                    1e4 * 10.0 * A * Math.Pow(K, 4))
                .Close();
        }
    }

    private static (Car Car, LoadState? Load, Road Road, double Speed) Case(string name) => name switch
    {
        "violent" => (ExactCars.Saloon, null, Hump, 60.0 / 3.6),
        "violent on undamped tyres" => (ExactCars.OnUndampedTyres, null, Hump, 60.0 / 3.6),
        "independent left only" => (ExactCars.Saloon, null, OneSided, 12.0),
        "solid axles" => (ExactCars.SolidAxles, ExactCars.OffCentre, OneSided, 9.0),
        "elastic link" => (ExactCars.ElasticLinked, null, Hump, 11.0),
        "elastic link with a damper" => (ExactCars.DamperLinked, null, Hump, 11.0),
        "fluid pipe" => (ExactCars.FluidLinked(LineState.Pipe), ExactCars.OffCentre, OneSided, 12.0),
        "fluid line that resists" => (ExactCars.OnResistingLine, ExactCars.OffCentre, OneSided, 12.0),
        "fluid shut" => (ExactCars.FluidLinked(LineState.Shut), null, Hump, 10.0),
        "fluid open" => (ExactCars.FluidLinked(LineState.Open), null, OneSided, 12.0),
        "off-centre load" => (ExactCars.Saloon, ExactCars.OffCentre, Hump, 11.0),
        "two-wheeler" => (ExactCars.TwoWheeler, null, Bump, 12.0),
        _ => throw new ArgumentOutOfRangeException(nameof(name), name, "No such case."),
    };

    private static double[] Stepped(RideModel model, Road road, double speed, int divided) =>
        SteppedPass.Of(
            model.Numbers,
            ExactRoad.From(RoadUnderWheels.Of(model, road)),
            speed,
            -0.1,
            Step / divided,
            divided * (int)Math.Round(OutputStep / Step),
            Outputs);
}
