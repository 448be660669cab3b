using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Passes.Exact;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Tests.Passes;

/// <summary>The certified run against itself, and what it refuses.</summary>
public class ExactRunTests
{
    private const double Speed = 60.0 / 3.6;

    private static readonly Road Hump = Road.From(new RoundTopHump { Height = new(0.10), Length = new(3.7) });

    /// <summary>Stops, lift-off and landings on both axles. Tolerance: rounding through some hundred kinks, no source.</summary>
    [Fact]
    public void Orders_10_and_14_agree_through_stops_lift_off_and_landing()
    {
        var model = RideModel.Of(ExactCars.Saloon);
        var low = ExactRun.Of(model, Hump, Speed, -0.1, 0.005, 620, order: 10, cancellation: TestContext.Current.CancellationToken);
        var high = ExactRun.Of(model, Hump, Speed, -0.1, 0.005, 620, cancellation: TestContext.Current.CancellationToken);
        TestContext.Current.TestOutputHelper?.WriteLine($"order 10: {low.Statistics}; order 14: {high.Statistics}");
        for (var channel = 0; channel < Channel.Count; channel++)
        {
            var miss = SteppedPass.Miss(low.Samples, high.Samples, channel);
            Assert.True(miss < 1e-11, $"channel {channel}: {miss:E1}");
        }

        // The case is as violent as it says: every wheel off the ground at some output, every stop touched.
        for (var i = 0; i < 4; i++)
        {
            var corner = i;
            Assert.Contains(Enumerable.Range(0, 620), k => high.At(k, Channel.Tyre + corner) == -model.Trim.WheelLoad[corner]);
            Assert.Contains(Enumerable.Range(0, 620), k => Travel(high, model, k, corner) > model.BumpTouch[corner]);
            Assert.Contains(Enumerable.Range(0, 620), k => Travel(high, model, k, corner) < model.ReboundTouch[corner]);
        }
    }

    [Fact]
    public void A_car_on_a_level_road_stays_exactly_at_rest()
    {
        var run = ExactRun.Of(
            RideModel.Of(ExactCars.SolidAxles, ExactCars.OffCentre),
            Road.Flat,
            Speed,
            0.0,
            0.01,
            100,
            cancellation: TestContext.Current.CancellationToken);
        Assert.All(run.Samples, value => Assert.Equal(0.0, value));
        Assert.Equal(0, run.Statistics.Events);
    }

    /// <summary>Newton's second law at the outputs: wheels' forces must sum to the body's acceleration.</summary>
    [Fact]
    public void Recorded_forces_and_accelerations_obey_newton()
    {
        var model = RideModel.Of(ExactCars.SolidAxles, ExactCars.OffCentre);
        var run = ExactRun.Of(
            model,
            Road.From(new Versine { Height = new(0.08), Length = new(2.0) }, Tracks.Left),
            10.0,
            0.0,
            0.01,
            150,
            cancellation: TestContext.Current.CancellationToken);
        for (var k = 0; k < 150; k++)
        {
            var body = Enumerable.Range(0, 4).Sum(i => run.At(k, Channel.Force + i));
            Assert.Equal(body, model.Body.Mass * run.At(k, Channel.Accelerations), 1e-7);
            for (var axle = 0; axle < 4; axle += 2)
            {
                var wheels = 0.5 * 140.0
                    * (run.At(k, Channel.Accelerations + Channel.Wheel + axle) + run.At(k, Channel.Accelerations + Channel.Wheel + axle + 1));
                var net = Enumerable.Range(axle, 2).Sum(i => run.At(k, Channel.Tyre + i) - run.At(k, Channel.Force + i));
                Assert.Equal(net, wheels, 1e-7);
            }
        }
    }

    [Fact]
    public void A_sharp_step_is_taken_by_an_undamped_tyre_and_refused_under_a_damped_one()
    {
        var step = Road.From(new Plank { Height = new(0.03), Length = new(0.5), Edge = new(0.0) });
        var run = ExactRun.Of(RideModel.Of(ExactCars.Linear), step, 10.0, 0.0, 0.01, 50, cancellation: TestContext.Current.CancellationToken);
        Assert.Equal(215000.0 * 0.03, run.At(0, Channel.Tyre), 1e-6);
        var refusal = Assert.Throws<RefusedValueException>(() => ExactRun.Of(
            RideModel.Of(ExactCars.Saloon), step, 10.0, 0.0, 0.01, 50, cancellation: TestContext.Current.CancellationToken));
        Assert.Contains("edge length", refusal.Message, StringComparison.Ordinal);
        var patch = new Tyre { Rate = new(215000.0), Damping = new(140.0), ContactLength = new(0.12) };
        var averaged =
            ExactCars.Saloon with { Front = ExactCars.Saloon.Front with { Tyre = patch }, Rear = ExactCars.Saloon.Rear with { Tyre = patch } };
        Assert.True(ExactRun.Of(
            RideModel.Of(averaged), step, 10.0, -0.01, 0.01, 50, cancellation: TestContext.Current.CancellationToken).Statistics.Events > 0);
    }

    /// <summary>A measured road may begin anywhere above its datum: the car starts level and at rest on it.</summary>
    [Fact]
    public void Tracks_count_from_their_first_heights()
    {
        var low = ExactRun.Of(RideModel.Of(ExactCars.Saloon), Hump, Speed, -0.1, 0.01, 100, cancellation: TestContext.Current.CancellationToken);
        Profile Raised(double by)
        {
            var coefficients = Hump.Left.Coefficients.ToArray();
            for (var at = 0; at < coefficients.Length; at += 4)
            {
                coefficients[at] += by;
            }

            return Profile.FromCubics(Hump.Left.Knots, coefficients);
        }

        var high = ExactRun.Of(
            RideModel.Of(ExactCars.Saloon),
            Hump with { Left = Raised(0.5), Right = Raised(-0.25) },
            Speed,
            -0.1,
            0.01,
            100,
            cancellation: TestContext.Current.CancellationToken);
        Assert.True(SteppedPass.Miss(high.Samples, low.Samples, Channel.Pitch) < 1e-9);
        Assert.True(SteppedPass.Miss(high.Samples, low.Samples, Channel.Tyre, 4) < 1e-9);
    }

    [Fact]
    public void A_curved_element_is_refused_by_name()
    {
        var car = ExactCars.Saloon with
        {
            Front = ExactCars.Saloon.Front with { Friction = new() { HalfWidth = new(60.0) } },
            Rear = ExactCars.Saloon.Rear with { BumpStop = new() { Clearance = new(0.05), Rate = new(30000.0), Exponent = new(1.8) } },
        };
        var refusal = Assert.Throws<RefusedValueException>(() => ExactRun.Of(
            RideModel.Of(car), Hump, Speed, 0.0, 0.01, 10, cancellation: TestContext.Current.CancellationToken));
        Assert.Contains("front friction", refusal.Message, StringComparison.Ordinal);
        Assert.Contains("rear bump stop with an exponent", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_start_on_the_obstacle_is_refused() =>
        Assert.Throws<RefusedValueException>(() => ExactRun.Of(
            RideModel.Of(ExactCars.Saloon), Hump, Speed, 0.05, 0.01, 10, cancellation: TestContext.Current.CancellationToken));

    [Fact]
    public void A_cancelled_run_stops()
    {
        using var source = new CancellationTokenSource();
        source.Cancel();
        Assert.Throws<OperationCanceledException>(() => ExactRun.Of(
            RideModel.Of(ExactCars.Saloon), Hump, Speed, 0.0, 0.01, 10, cancellation: source.Token));
    }

    [Fact]
    public void A_body_that_topples_is_a_named_failure()
    {
        var n = RideModel.Of(ExactCars.Saloon).Numbers;
        var toppling = new RideNumbers
        {
            Body = n.Body,
            Elements = n.Elements,
            X = n.X,
            Y = n.Y,
            PerWheel = n.PerWheel,
            AcrossAxle = n.AcrossAxle,
            TyreRate = n.TyreRate,
            TyreDamping = n.TyreDamping,
            PitchGravity = 1e9,
            RollGravity = n.RollGravity,
            Rolls = n.Rolls,
            TrimLoad = n.TrimLoad,
        };
        var road = new ExactRoad(Hump.Left, Hump.Right, Hump.Left, Hump.Right);
        var failure = Assert.Throws<RunFailedException>(() => ExactRun.Of(
            toppling, road, Speed, 0.0, 0.01, 300, cancellation: TestContext.Current.CancellationToken));
        Assert.Contains("runs away", failure.Message, StringComparison.Ordinal);
        Assert.Contains("unstable", failure.Advice, StringComparison.Ordinal);
    }

    private static double Travel(ExactRun run, RideModel model, int k, int i) =>
        model.Trim.Travel[i] + run.At(k, Channel.Wheel + i)
        - (run.At(k, Channel.Heave) - (model.X[i] * run.At(k, Channel.Pitch)) + (model.Y[i] * run.At(k, Channel.Roll)));
}
