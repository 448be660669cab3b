using Heaveline.Cars;
using Heaveline.Causes;
using Heaveline.Files.Cars;
using Heaveline.Files.Roads;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Roads;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Measures;

/// <summary>The numbers a car is judged by, against the exact run sampled ten times as finely, and the same wherever they are printed.</summary>
public class HeadlineTests
{
    private static readonly Car Saloon = CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon.yaml")).Value!;
    private static readonly Road Hump = RoadFile.Load(Path.Combine(Checkout.Root, "examples", "roads", "village-hump.yaml")).Value!;

    private static readonly LoadState Full = Saloon.LoadStates.Single(load => load.Name == "four up with luggage");

    private static RideModel Own { get; } = RideModel.Of(Saloon, Full);

    // Without its friction and its curved bump stops (which it does not reach here), so that the exact run takes it.
    private static RideModel Straight { get; } =
        RideModel.Of(Saloon with { Front = Straightened(Saloon.Front), Rear = Straightened(Saloon.Rear) }, Full);

    public static TheoryData<bool> Exactly => [false, true];

    [Theory, MemberData(nameof(Exactly))]
    public void The_headline_of_the_demo_car_is_that_of_a_finer_run_and_falls_evenly_with_speed(bool exactly)
    {
        var model = exactly ? Straight : Own;
        var finer = exactly
            ? new PassOptions { Method = new ExactPieces(), Record = new() { SamplesPerSecond = 4000.0 } }
            : new PassOptions { Method = FixedStep.Once with { LargestStep = 5e-5 }, Record = new() { SamplesPerSecond = 3200.0 } };
        double[] speeds = [.. Enumerable.Range(0, 8).Select(i => (40.0 + (0.1 * i)) / 3.6)];
        var pitch = speeds.Select(v => PitchMeasures.Of(Pass.Of(model, Hump, v))).ToArray();
        foreach (var i in new[] { 0, 3, 7 })
        {
            var (own, best) = (pitch[i], PitchMeasures.Of(Pass.Of(model, Hump, speeds[i], finer)));
            // The steps' own error, 2e-5 of the peak at most; the windows and the curve add nothing to it.
            Assert.Equal(best.Settling!.RmsAngle, own.Settling!.RmsAngle, 2e-5 * best.Settling.RmsAngle);
            Assert.Equal(best.Settling.PeakAngle, own.Settling.PeakAngle, 2e-5 * best.Settling.PeakAngle);
            Assert.Equal(best.Settling.LateAngle, own.Settling.LateAngle, 1e-4 * best.Settling.LateAngle);
            Assert.Equal(best.Hit!.PeakAngle, own.Hit!.PeakAngle, 2e-5 * best.Hit.PeakAngle);
            Assert.Equal(best.Hit.PeakRate, own.Hit.PeakRate, 1e-4 * best.Hit.PeakRate);
            // Accelerations jump where a damper turns round: the curve runs round the corner.
            Assert.Equal(best.Hit.PeakAcceleration, own.Hit.PeakAcceleration, 3e-3 * best.Hit.PeakAcceleration);
            Assert.Equal(best.Hit.RmsAcceleration, own.Hit.RmsAcceleration, 1e-3 * best.Hit.RmsAcceleration);
            Assert.Equal(best.Settling.RmsAcceleration, own.Settling.RmsAcceleration, 1e-3 * best.Settling.RmsAcceleration);
            Assert.Equal(best.Settling.TimeFromStart!.Value, own.Settling.TimeFromStart!.Value, 1e-4);
            Assert.Equal(best.Settling.Lobes.Count, own.Settling.Lobes.Count);
        }

        double[] falls = [.. pitch.Zip(pitch.Skip(1), (a, b) => a.Settling!.RmsAngle - b.Settling!.RmsAngle)];
        Assert.All(falls, fall => Assert.InRange(fall / falls.Average(), 0.85, 1.15));
    }

    [Theory]
    [InlineData(31.7)]
    [InlineData(45.0)]
    [InlineData(63.3)]
    public void Passes_causes_and_maps_have_the_same_headline(double speed)
    {
        var (model, stop) = (RideModel.Of(Saloon, Saloon.LoadStates[0]), TestContext.Current.CancellationToken);
        var pitch = PitchMeasures.Of(Pass.Of(model, Hump, speed / 3.6));
        var why = Why.Of(model, Hump, speed / 3.6, degree: 2, cancellation: stop);
        Assert.Equal(pitch.Settling!.RmsAngle, why.Settling.Value, 1e-9 * pitch.Settling.RmsAngle);
        Assert.Equal(pitch.Hit!.PeakAcceleration, why.Hit.Value, 1e-9 * pitch.Hit.PeakAcceleration);
        Measure<Pass>[] measures = [SettlingCatalogue.RmsPitch, SettlingCatalogue.PeakPitch, HitCatalogue.PeakPitch, SettlingCatalogue.LatePitch];
        var row = BatchedMeasures.Of([new(model, Hump, speed / 3.6)], measures, null, 1, stop)[0];
        double[] printed = [pitch.Settling.RmsAngle, pitch.Settling.PeakAngle, pitch.Hit.PeakAngle, pitch.Settling.LateAngle];
        Assert.All(printed.Zip(row), p => Assert.Equal(p.First, p.Second, 1e-9 * p.First));
    }

    /// <summary>Friction costs no shorter step down to 0.05 mm of pre-sliding, and pitch no more than the 1e-4 of its peak allowed.</summary>
    [Theory]
    [InlineData(0.0003)]
    [InlineData(0.00005)]
    public void Steps_are_as_long_with_friction_as_without_and_near_enough(double give)
    {
        Axle Giving(Axle axle) => axle with { Friction = axle.Friction with { PreSliding = new(give) } };
        var model = RideModel.Of(Saloon with { Front = Giving(Saloon.Front), Rear = Giving(Saloon.Rear) }, Full);
        var record = new PassRecord { Duration = 3.0 };
        var shown = Pass.Of(model, Hump, 12.0, new() { Record = record });
        var limit = Pass.Of(model, Hump, 12.0, new() { Method = FixedStep.Once with { LargestStep = 5e-6 }, Record = record });
        Assert.Equal(FixedStep.Default.LargestStep, shown.Statistics.Step, 1e-12);
        var miss = shown.Pitch.Zip(limit.Pitch, (a, b) => Math.Abs(a - b)).Max() / limit.Pitch.Max(Math.Abs);
        Assert.InRange(miss, 1e-9, 1e-4);
    }

    private static Axle Straightened(Axle axle) => axle with { BumpStop = null, Friction = Friction.None };
}
