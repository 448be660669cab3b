using System.Collections.Immutable;
using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Passes.Steps;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Tests.Passes;

public class PassProofTests
{
    private static readonly Road Hump = Road.From(new RoundTopHump { Height = new(0.075), Length = new(3.7) });
    private static readonly Road Soft = Road.From(new Versine { Height = new(0.04), Length = new(2.0) });
    private static readonly Road LeftOnly = Road.From(new HalfSine { Height = new(0.03), Length = new(0.8) }, Tracks.Left);

    public static TheoryData<string> Cars => [.. All.Keys];

    private static Dictionary<string, (Car Car, LoadState Load)> All { get; } = new()
    {
        ["saloon"] = (ExactCars.Saloon, LoadState.Reference),
        ["solid axles"] = (ExactCars.SolidAxles, LoadState.Reference),
        ["elastic link"] = (ExactCars.ElasticLinked, LoadState.Reference),
        ["fluid pipe"] = (ExactCars.FluidLinked(LineState.Pipe), LoadState.Reference),
        ["fluid line that resists"] = (ExactCars.OnResistingLine, LoadState.Reference),
        ["fluid open"] = (ExactCars.FluidLinked(LineState.Open), LoadState.Reference),
        ["off centre"] = (ExactCars.Saloon, ExactCars.OffCentre),
        ["two-wheeler"] = (ExactCars.TwoWheeler, LoadState.Reference),
        ["curved"] = (Curved, LoadState.Reference),
    };

    private static Car Curved => ExactCars.Saloon with
    {
        Front = ExactCars.Saloon.Front with
        {
            BumpStop = new Stop { Clearance = new(0.03), Rate = new(60000.0), Exponent = new(2.2) },
            Friction = new Friction { HalfWidth = new(70.0) },
            Spring =
                new Spring { Law = new LinearSpring { Rate = new(48000.0) }, MotionRatio = MotionRatio.Constant(0.7) with { PerTravel = new(0.6) } },
        },
        Rear = ExactCars.Saloon.Rear with { Spring = new Spring { Law = new GasSpring { Area = new(0.008), Volume = new(0.0015) } } },
    };

    [Theory, MemberData(nameof(Cars))]
    public void Wide_and_scalar_passes_agree_to_rounding(string name)
    {
        var (car, load) = All[name];
        // Cars side by side differ a little in the wheelbase, and run at different speeds over different roads, as they are grouped for any study.
        PassRequest[] asked =
        [
            .. Enumerable.Range(0, LaneWidth.All[^1]).Select(k => new PassRequest(
                RideModel.Of(car with { Wheelbase = new(car.Wheelbase.Si * (1.0 + (0.01 * k))) }, load), k % 2 == 0 ? Soft : Hump, 8.0 + k)),
        ];
        var options = new PassOptions { Method = FixedStep.Once };
        var scalar = Array.ConvertAll(asked, request => Run([request], 1)[0]);
        foreach (var width in LaneWidth.All.Where(w => w > 1))
        {
            var wide = Run(asked[..width], width);
            for (var k = 0; k < width; k++)
            {
                // Each lane shares its group's clock: compare where both have samples.
                var alone = Run([asked[k]], width)[0];
                Near(scalar[k].Pitch, wide[k].Pitch, scalar[k].Time, wide[k].Time, 1e-10);
                Near(alone.Pitch, wide[k].Pitch, alone.Time, wide[k].Time, 1e-10);
                Near(scalar[k].TyreLoad(2), wide[k].TyreLoad(2), scalar[k].Time, wide[k].Time, 1e-9);
            }
        }

        Pass[] Run(PassRequest[] some, int width)
        {
            var passes = new Pass[some.Length];
            foreach (var group in PassGroup.Of(some, options, width))
            {
                foreach (var (k, pass) in group.Run(options, width).Index())
                {
                    passes[group.Places[k]] = pass;
                }
            }

            return passes;
        }
    }

    [Theory, MemberData(nameof(Cars))]
    public void Axles_side_by_side_give_what_axles_one_by_one_give(string name)
    {
        var (car, load) = All[name];
        var model = RideModel.Of(car, load);
        var road = RoadUnderWheels.Of(model, Hump);
        var timing = PassTiming.Of(new(model, Hump, 14.0), PassRecord.Default, FixedStep.Default);
        using var beside = Stepper.Of(model.Numbers, timing.StepsPerSample, timing.Step);
        using var scalar = Stepper.Of<ScalarLane>([model.Numbers], timing.StepsPerSample, timing.Step);
        var together = PassRun.Of(beside, road, 14.0, timing);
        var apart = PassRun.Of(scalar, road, 14.0, timing);
        for (var channel = 0; channel < Channel.Count; channel++)
        {
            var peak = Enumerable.Range(0, timing.Samples).Max(k => Math.Abs(apart[(k * Channel.Count) + channel]));
            var off = Enumerable.Range(0, timing.Samples)
                .Max(k => Math.Abs(apart[(k * Channel.Count) + channel] - together[(k * Channel.Count) + channel]));
            Assert.True(off <= 1e-9 * Math.Max(peak, 1e-6), $"channel {channel}: {off:E1} of {peak:E1}");
        }
    }

    [Theory, MemberData(nameof(Cars))]
    public void A_mirrored_road_gives_the_mirrored_motion(string name)
    {
        var (car, load) = All[name];
        var mirrored = load with { Loads = [.. load.Loads.Select(l => l with { LeftOfMiddle = new(-l.LeftOfMiddle.Si) })] };
        var left = Pass.Of(RideModel.Of(car, load), LeftOnly, 10.0);
        var right = Pass.Of(RideModel.Of(car, mirrored), LeftOnly with { Left = LeftOnly.Right, Right = LeftOnly.Left }, 10.0);
        Near(left.Pitch, right.Pitch, left.Time, right.Time, 1e-9);
        Near(left.Roll, [.. right.Roll.Select(r => -r)], left.Time, right.Time, 1e-9);
        Near(left.Travel(0), right.Travel(1), left.Time, right.Time, 1e-9);
    }

    [Fact]
    public void A_two_wheeler_never_rolls()
    {
        var pass = Pass.Of(RideModel.Of(ExactCars.TwoWheeler), LeftOnly, 10.0);
        Assert.All(pass.Roll, roll => Assert.Equal(0.0, roll));
    }

    [Fact]
    public void A_level_road_moves_nothing()
    {
        foreach (var (car, load) in All.Values)
        {
            var pass = Pass.Of(RideModel.Of(car, load), Road.Flat, 20.0);
            // The trim is solved to 1e-9 of the weight; what is left of it is all that may move.
            Assert.All(pass.HeaveAcceleration, a => Assert.InRange(a, -1e-6, 1e-6));
        }
    }

    [Fact]
    public void A_pass_states_an_error_that_covers_its_real_one()
    {
        var model = RideModel.Of(ExactCars.Saloon);
        var pass = Pass.Of(model, Hump, 60.0 / 3.6);
        var certified = Pass.Of(model, Hump, 60.0 / 3.6, new() { Method = new ExactPieces() });
        var peak = certified.Pitch.Max(Math.Abs);
        var real = pass.Pitch.Zip(certified.Pitch, (a, b) => Math.Abs(a - b)).Max() / peak;
        Assert.InRange(real, 0.0, pass.Statistics.PitchError!.Value);
        Assert.InRange(real, 0.0, 1e-3);
    }

    [Fact]
    public void A_body_that_leaves_small_angles_stops_the_pass_with_a_named_outcome()
    {
        var high = Road.From(new Ramp { Height = new(1.4), Length = new(1.6) });
        var pass = Pass.Of(RideModel.Of(ExactCars.TwoWheeler), high, 6.0);
        Assert.NotEqual(PassOutcome.Completed, pass.Outcome);
        Assert.NotEmpty(pass.OutcomeSentence);
        Assert.Contains(" s", pass.OutcomeSentence, StringComparison.Ordinal);
        Assert.All(pass.Pitch, p => Assert.InRange(p, -0.35, 0.35));
    }

    [Fact]
    public void Travel_past_a_hard_end_stops_the_pass_and_names_the_wheel()
    {
        var car = ExactCars.Saloon with
        {
            Front = ExactCars.Saloon.Front with { BumpStop = new Stop { Clearance = new(0.02), Rate = new(1000.0), SolidAfter = new(0.01) } },
        };
        var pass = Pass.Of(RideModel.Of(car), Hump, 20.0);
        Assert.Equal(PassOutcome.TravelOutOfRange, pass.Outcome);
        Assert.Contains("front left", pass.OutcomeSentence, StringComparison.Ordinal);
        Assert.Contains("hard limit of 30.0 mm", pass.OutcomeSentence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(-5.0)]
    [InlineData(500.0)]
    [InlineData(double.NaN)]
    public void A_speed_that_no_car_drives_is_refused(double speed)
    {
        var refused = Assert.Throws<RefusedValueException>(() => Pass.Of(RideModel.Of(ExactCars.Saloon), Hump, speed));
        Assert.Equal("speed", refused.What);
        Assert.Contains("km/h", refused.Limit, StringComparison.Ordinal);
    }

    [Fact]
    public void A_sharp_step_under_a_damped_tyre_is_refused_with_what_to_do()
    {
        var step = Road.From(new Step { Height = new(0.02), Edge = new(0.0) });
        var refused = Assert.Throws<RefusedValueException>(() => Pass.Of(RideModel.Of(ExactCars.Saloon), step, 10.0));
        Assert.Contains("edge length", refused.Advice, StringComparison.Ordinal);
    }

    private static void Near(
        ImmutableArray<double> a, ImmutableArray<double> b, ImmutableArray<double> timeA, ImmutableArray<double> timeB, double relative)
    {
        var peak = a.Max(Math.Abs);
        var shift = (int)Math.Round((timeA[0] - timeB[0]) / (timeA[1] - timeA[0]));
        var from = Math.Max(0, -shift);
        for (var k = from; k < Math.Min(a.Length, b.Length - shift); k++)
        {
            Assert.True(
                Math.Abs(a[k] - b[k + shift]) <= relative * Math.Max(peak, 1e-9), $"sample {k}: {a[k]:R} and {b[k + shift]:R} of peak {peak:E1}");
        }
    }
}
