using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Passes.Steps;
using Heaveline.Roads;

namespace Heaveline.Tests.Passes;

/// <summary>Two groups of passes that run beside each other on one thread have the bits of each alone.</summary>
public class BesideTests
{
    private static readonly Road Hump = Road.From(new RoundTopHump { Height = new(0.11), Length = new(3.7) });

    private static PassOptions Options { get; } = new() { Method = FixedStep.Once, Record = new() { SettlingTime = 0.8 } };

    private static readonly Stop Curved = new() { Clearance = new(0.03), Rate = new(60e3), Exponent = new(2.2) };

    public static TheoryData<string> Kinds => ["plain", "friction", "curved stops", "curved stops and friction"];

    [Theory, MemberData(nameof(Kinds))]
    public void Steppers_beside_each_other_record_what_each_records_alone(string kind)
    {
        RideNumbers[] some = [.. Cars(kind, 1.0).Select(car => RideModel.Of(car).Numbers)];
        RideNumbers[] others = [.. Cars("plain", 1.1).Take(3).Select(car => RideModel.Of(car).Numbers)];
        Same<ScalarLane>(some[..1], others[..1]);
        Same<Lane128>(some[..2], others[..2]);
        Same<Lane256>(some[..4], others);
        Same<FloatLane256>(some, others);
        if (LaneWidth.All.Contains(8))
        {
            Same<Lane512>(some, others);
            Same<FloatLane512>(some, others);
        }
    }

    [Fact]
    public void Measures_of_two_groups_at_once_are_those_of_each_and_one_that_ends_early_does_not_end_the_other()
    {
        var solid = new Stop { Clearance = new(0.02), Rate = new(60e3), SolidAfter = new(0.02) };
        var low = ExactCars.Saloon with { Front = ExactCars.Saloon.Front with { BumpStop = solid } };
        Car[] cars = [.. Enumerable.Repeat(low, 8), .. Cars("friction", 1.0), .. Cars("curved stops", 1.0), .. Cars("plain", 1.0)];
        PassRequest[] requests = [.. cars.Select(car => new PassRequest(RideModel.Of(car), Hump, 14.0))];
        CurveNumber[] numbers = [SettlingCatalogue.RmsPitch.InFlight!, HitCatalogue.PeakPitchAcceleration.InFlight!];
        foreach (var width in LaneWidth.All)
        {
            var groups = PassGroup.Of(requests, Options, width, recorded: false);
            using var memory = new RoadMemory();
            for (var i = 0; i + 1 < groups.Count; i++)
            {
                var alone = (Of(groups[i]), Of(groups[i + 1]));
                var (first, second) = (new List<string>(), new List<string>());
                MeasureFlight.Of(
                    (groups[i], groups[i + 1]),
                    width,
                    numbers,
                    ((k, outcome, row) => first.Add(Line(k, outcome, row)), (k, outcome, row) => second.Add(Line(k, outcome, row))),
                    memory,
                    TestContext.Current.CancellationToken);
                Assert.Equal(alone, (string.Join('\n', first), string.Join('\n', second)));
            }

            string Of(PassGroup group)
            {
                var lines = new List<string>();
                MeasureFlight.Of(
                    group, width, numbers, (k, outcome, row) => lines.Add(Line(k, outcome, row)), memory, TestContext.Current.CancellationToken);
                return string.Join('\n', lines);
            }
        }

        Assert.Equal(PassOutcome.TravelOutOfRange, Pass.Of(requests[0].Model, Hump, 14.0, Options, TestContext.Current.CancellationToken).Outcome);
        Assert.Equal(PassOutcome.Completed, Pass.Of(requests[^1].Model, Hump, 14.0, Options, TestContext.Current.CancellationToken).Outcome);
    }

    private static string Line(int k, PassOutcome outcome, ReadOnlySpan<double> row) =>
        $"{k} {outcome} {string.Join(' ', row.ToArray().Select(BitConverter.DoubleToInt64Bits))}";

    private static void Same<T>(RideNumbers[] some, RideNumbers[] others)
        where T : unmanaged, ILane<T>
    {
        // Records of different lengths, in two goes; the road ends before the run does.
        const int outputs = 300;
        var timing = PassTiming.Of(new(RideModel.Of(ExactCars.Saloon), Hump, 14.0), Options.Record, Options.Steps);
        double[] road = [.. RoadUnderWheels.Of(RideModel.Of(ExactCars.Saloon), Hump).Table(14.0, timing.Start, timing.Step, 1100)
            .SelectMany(q => Enumerable.Range(0, 4).Select(i => q.At(i).Value))];
        var (all, motion) = (new T[outputs * Channel.Count], new T[outputs * Channel.Motion]);
        var (alone, alsoAlone) = (new T[all.Length], new T[motion.Length]);
        using (var one = Of(some, Channel.Count))
        {
            one.Run(Steps(), outputs, alone, TestContext.Current.CancellationToken);
        }

        using (var two = Of(others, Channel.Motion))
        {
            two.Run(Steps(), outputs, alsoAlone, TestContext.Current.CancellationToken);
        }

        using var first = Of(some, Channel.Count);
        using var second = Of(others, Channel.Motion);
        const int half = outputs / 2;
        first.RunBeside(second, Steps(), half, all, motion, TestContext.Current.CancellationToken);
        first.RunBeside(
            second,
            Steps(),
            half,
            all.AsSpan(half * Channel.Count),
            motion.AsSpan(half * Channel.Motion),
            TestContext.Current.CancellationToken);
        Assert.Equal(alone, all);
        Assert.Equal(alsoAlone, motion);

        BlockStepper<T> Of(RideNumbers[] cars, int channels) => Stepper.Of<T>(cars, timing.StepsPerSample, timing.Step, channels);
        RoadSteps<T> Steps() => new(0, default, default) { Shared = road };
    }

    private static Car[] Cars(string kind, double factor) =>
    [
        .. Enumerable.Range(0, 8).Select(i => ExactCars.Saloon with
        {
            Front = Of(ExactCars.Saloon.Front, kind, factor + (0.01 * i)), Rear = Of(ExactCars.Saloon.Rear, kind, factor - (0.01 * i)),
        }),
    ];

    private static Axle Of(Axle axle, string kind, double factor)
    {
        axle = axle with { Spring = axle.Spring with { Law = new LinearSpring { Rate = new(25e3 * factor) } } };
        axle = kind.Contains("friction", StringComparison.Ordinal)
            ? axle with { Friction = new Friction { HalfWidth = new(80.0 * factor), PreSliding = new(3e-4) } }
            : axle;
        return kind.Contains("curved", StringComparison.Ordinal) ? axle with { BumpStop = Curved } : axle;
    }
}
