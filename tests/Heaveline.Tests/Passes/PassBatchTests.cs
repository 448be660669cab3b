using System.Collections.Immutable;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Passes.Steps;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Tests.Passes;

public class PassBatchTests
{
    private static readonly Road Hump = Road.From(new RoundTopHump { Height = new(0.075), Length = new(3.7) });
    private static readonly Road Raised = Road.From(new Ramp { Height = new(0.03), Length = new(1.5) }, Tracks.Right);

    private static List<PassRequest> Asked { get; } =
    [
        .. from car in new[]
        {
            ExactCars.Saloon,
            ExactCars.Saloon with { Wheelbase = new(2.9) },
            ExactCars.ElasticLinked,
            ExactCars.SolidAxles,
            ExactCars.TwoWheeler,
        }
           from road in new[] { Hump, Raised }
           from speed in new[] { 8.0, 21.0 }
           select new PassRequest(RideModel.Of(car), road, speed),
    ];

    // 1e-9 of the peak, as wide and scalar passes are held to elsewhere.
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Among_others_a_pass_keeps_its_own_clock_step_error_and_numbers(bool statesError)
    {
        var options = new PassOptions { Method = FixedStep.Default with { StatesError = statesError }, Record = new() { SettlingTime = 1.0 } };
        var together = PassBatch.Of(Asked, options, TestContext.Current.CancellationToken);
        for (var i = 0; i < Asked.Count; i++)
        {
            var alone = Pass.Of(Asked[i].Model, Asked[i].Road, Asked[i].Speed, options);
            Assert.Equal(alone.Time, together[i].Time);
            Assert.Equal(alone.Outcome, together[i].Outcome);
            Assert.Equal((alone.Statistics.Step, alone.Statistics.Steps), (together[i].Statistics.Step, together[i].Statistics.Steps));
            Near(alone.Pitch, together[i].Pitch);
            Near(alone.TyreLoad(3), together[i].TyreLoad(3));
            Near(alone.Trace(RideSignal.PitchAcceleration), together[i].Trace(RideSignal.PitchAcceleration));
            Assert.Equal(statesError, together[i].Statistics.PitchError is not null);
            Assert.Equal(alone.Statistics.PitchError ?? 0.0, together[i].Statistics.PitchError ?? 0.0, 1e-8);
        }
    }

    [Fact]
    public void Only_passes_of_one_step_and_kind_of_link_stand_side_by_side()
    {
        var groups = PassGroup.Of(Asked, PassOptions.Default, 4);
        Assert.Equal(Enumerable.Range(0, Asked.Count), groups.SelectMany(g => g.Places).Order());
        Assert.All(groups, g => Assert.Single(g.Clocks.Select(c => c.StepsPerSample).Distinct()));
        Assert.All(
            groups,
            g => Assert.Single(g.Requests.Select(r => r.Model.Numbers.Slots.Needs & (Needs.ElasticLink | Needs.FluidLink)).Distinct()));
        Assert.All(groups, g => Assert.InRange(g.Places.Length, 1, 4));
    }

    [Fact]
    public void Steps_on_the_level_need_no_table()
    {
        var model = RideModel.Of(ExactCars.Saloon);
        var road = RoadUnderWheels.Of(model, Raised);
        var timing = PassTiming.Of(new(model, Raised, 14.0), PassRecord.Default, FixedStep.Default);
        var steps = timing.Samples * timing.StepsPerSample;
        var (first, last) = road.Moving(14.0, timing.Start, timing.Step, steps);
        Assert.InRange(last - first, 1, steps / 4);
        var whole = new ScalarLane[timing.Samples * Channel.Count];
        using var stepper = Stepper.Of<ScalarLane>([model.Numbers], timing.StepsPerSample, timing.Step);
        stepper.Run(new(0, road.Table(14.0, timing.Start, timing.Step, steps), default), timing.Samples, whole);
        Assert.Equal(whole.Select(lane => lane.Value), PassRun.Of(model, road, 14.0, timing));
    }

    [Fact]
    public void A_speed_that_no_car_drives_is_refused_among_others_too()
    {
        var refused = Assert.Throws<RefusedValueException>(() => PassBatch.Of(
            [Asked[0], Asked[1] with { Speed = -1.0 }], cancellation: TestContext.Current.CancellationToken));
        Assert.Equal("speed", refused.What);
    }

    [Fact]
    public void Exact_pieces_do_not_run_side_by_side()
    {
        var exact = new PassOptions { Method = new ExactPieces() };
        var refused = Assert.Throws<RefusedValueException>(() => PassBatch.Of(Asked, exact, TestContext.Current.CancellationToken));
        Assert.Equal("method of passes side by side", refused.What);
    }

    private static void Near(ImmutableArray<double> alone, ImmutableArray<double> together)
    {
        Assert.Equal(alone.Length, together.Length);
        var peak = alone.Max(Math.Abs);
        Assert.All(alone.Zip(together), p => Assert.Equal(p.First, p.Second, 1e-9 * Math.Max(peak, 1e-6)));
    }
}
