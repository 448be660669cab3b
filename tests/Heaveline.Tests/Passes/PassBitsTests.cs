using CsCheck;
using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Passes.Steps;
using Heaveline.Roads;

namespace Heaveline.Tests.Passes;

/// <summary>A pass is the same bits alone and beside others; but for powers in curved laws, in registers of any width too.</summary>
public class PassBitsTests
{
    private static readonly Road[] Roads =
    [
        Road.From(new RoundTopHump { Height = new(0.06), Length = new(3.7) }),
        Road.From(new Versine { Height = new(0.03), Length = new(1.2) }, Tracks.Left),
    ];

    // No lead: every speed begins at another sample of the grid, half a contact length before the road.
    private static PassOptions Options { get; } = new() { Method = FixedStep.Once, Record = new() { SettlingTime = 0.6, LeadTime = 0.0 } };

    private static Gen<PassRequest[]> Asked { get; } = Gen.Select(AnyCar.Any, Gen.Int[0, 1], Gen.Double[1.0, 25.0])
        .Select((car, road, speed) => new PassRequest(RideModel.Of(OnPatches(car)), Roads[road], speed))
        .Array[3, 12];

    [Fact]
    public void Beside_others_a_pass_has_the_bits_that_it_has_alone() => Asked.Sample(
        requests =>
        {
            foreach (var width in LaneWidth.All)
            {
                foreach (var group in PassGroup.Of(requests, Options, width))
                {
                    var together = group.Run(Options, width, TestContext.Current.CancellationToken);
                    for (var k = 0; k < together.Length; k++)
                    {
                        var (model, road, speed) = requests[group.Places[k]];
                        var alone = PassGroup.Of([requests[group.Places[k]]], Options, width)[0];
                        Same(alone.Run(Options, width, TestContext.Current.CancellationToken)[0], together[k]);
                        if ((model.Numbers.Slots.Needs & (Needs.Gas | Needs.FluidGas | Needs.CurvedStop)) == 0)
                        {
                            Same(Pass.Of(model, road, speed, Options, TestContext.Current.CancellationToken), together[k]);
                        }
                    }
                }
            }
        },
        iter: 40,
        threads: 1);

    [Fact]
    public void Axles_in_one_register_give_the_bits_of_axles_one_by_one() => Gen.Select(AnyCar.Any, Gen.Double[4.0, 25.0]).Sample(
        (car, speed) =>
        {
            var model = RideModel.Of(car);
            var wheels = RoadUnderWheels.Of(model, Roads[1]);
            var timing = PassTiming.Of(new(model, Roads[1], speed), Options.Record, Options.Steps);
            using var register = Stepper.Of(model.Numbers, timing.StepsPerSample, timing.Step);
            using var scalar = Stepper.Of<ScalarLane>([model.Numbers], timing.StepsPerSample, timing.Step);
            Assert.Equal(
                PassRun.Of(register, wheels, speed, timing, TestContext.Current.CancellationToken),
                PassRun.Of(scalar, wheels, speed, timing, TestContext.Current.CancellationToken));
        },
        iter: 150,
        threads: 1);

    [Fact]
    public void Long_passes_of_which_nothing_is_recorded_run_as_many_side_by_side_as_short_ones()
    {
        var model = RideModel.Of(ExactCars.Saloon);
        PassRequest[] requests = [.. Enumerable.Range(0, 8).Select(i => new PassRequest(model, Roads[0], 10.0 + i))];
        var hours = new PassOptions { Method = FixedStep.Once, Record = new() { Duration = 3600.0 } };
        Assert.Single(PassGroup.Of(requests, hours, 8, recorded: false));
        Assert.True(PassGroup.Of(requests, hours, 8).Count > 1);
    }

    // Of a length, so that slow cars begin earlier than fast ones.
    private static Car OnPatches(Car car) => car with
    {
        Front = car.Front with { Tyre = car.Front.Tyre with { ContactLength = new(0.15) } },
        Rear = car.Rear with { Tyre = car.Rear.Tyre with { ContactLength = new(0.15) } },
    };

    [Fact]
    public void Where_there_are_no_lanes_of_single_precision_no_rounding_of_it_is_stated()
    {
        PassRequest[] one = [new(RideModel.Of(ExactCars.Saloon), Roads[0], 14.0)];
        Pass Run(bool single)
        {
            var options = new PassOptions { Method = FixedStep.Default with { InSingle = single }, Record = Options.Record };
            return PassGroup.Of(one, options, 1)[0].Run(options, 1, TestContext.Current.CancellationToken)[0];
        }

        var (inDouble, asked) = (Run(false), Run(true));
        Same(inDouble, asked);
        Assert.Equal(inDouble.Statistics, asked.Statistics);
    }

    private static void Same(Pass alone, Pass together)
    {
        Assert.Equal(alone.Time, together.Time);
        Assert.Equal(alone.Outcome, together.Outcome);
        foreach (var signal in new[] { RideSignal.Pitch, RideSignal.PitchAcceleration, RideSignal.Heave, RideSignal.Roll })
        {
            Assert.Equal(alone.Trace(signal).AsSpan(), together.Trace(signal).AsSpan());
        }

        for (var wheel = 0; wheel < 4; wheel++)
        {
            Assert.Equal(alone.TyreLoad(wheel).AsSpan(), together.TyreLoad(wheel).AsSpan());
        }
    }
}
