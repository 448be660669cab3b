using Heaveline.Gpu.Lanes;
using System.Collections.Concurrent;
using CsCheck;
using Heaveline.Cars;
using Heaveline.Gpu;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Roads;
using Heaveline.Studies;

namespace Heaveline.Tests.Gpu;

/// <summary>Runs on a device, here the processor in a device's place, against the lanes of the processor.</summary>
[Collection(AloneGroup.Name)]
public class MeasureDevicesTests(MeasureDevicesTests.OfProcessor of) : IClassFixture<MeasureDevicesTests.OfProcessor>
{
    private static readonly Road Hump = Road.From(new RoundTopHump { Height = new(0.075), Length = new(3.7) });
    private static readonly Road Left = Road.From(new Versine { Height = new(0.03), Length = new(1.2) }, Tracks.Left);

    // Those whose questions are squares, ranges and times at nothing, on roads with and without an obstacle.
    private static readonly Measure<Pass>[] Measures =
    [
        SettlingCatalogue.RmsPitch, SettlingCatalogue.PeakPitch, HitCatalogue.PeakPitchAcceleration, WholePassCatalogue.PeakPitch,
        WholePassCatalogue.PeakPitchAcceleration, WholePassCatalogue.RmsPitchAcceleration, WholePassCatalogue.RmsHeaveAcceleration,
        WheelCatalogue.LoadVariation(WheelPlace.Of(0, true)), WheelCatalogue.LoadVariation(WheelPlace.Of(3, true)),
        LiftOff(0), LiftOff(3),
    ];

    private static Measure<Pass> LiftOff(int wheel) =>
        WheelCatalogue.Of(WheelPlace.Of(wheel, true)).Single(m => m.Key.EndsWith("-lift-off", StringComparison.Ordinal));

    private static Car Saloon(double springs, bool curved = false, bool rubs = false)
    {
        var (car, stop) = (PlainCar.Saloon, new Stop { Clearance = new(0.02), Rate = new(60e3), Exponent = new(1.6) });
        var table = new Stop { Clearance = new(0.015), Table = new ForceTable([0.0, 0.015, 0.025, 0.035], [0.0, 300.0, 900.0, 2400.0]) };
        var friction = new Friction { HalfWidth = new(60.0) };
        var spring = new Spring { Law = new LinearSpring { Rate = new(springs * 24000.0) } };
        return car with
        {
            Front = car.Front with
            {
                Spring = spring,
                BumpStop = curved ? stop : table,
                ReboundStop = new Stop { Clearance = new(0.02), Rate = new(9e4) },
                Friction = rubs ? friction : car.Front.Friction,
            },
            Rear = car.Rear with { Friction = rubs ? friction : car.Rear.Friction },
        };
    }

    private static List<PassRequest> Runs(Func<double, Car> car, Road road, params double[] speeds) =>
        [.. from speed in speeds from k in Enumerable.Range(0, 3) select new PassRequest(RideModel.Of(car(0.8 + (0.13 * k))), road, speed)];

    private static double Largest(IReadOnlyList<PassRequest> runs, PassOptions options, MeasureDevices devices)
    {
        var stop = TestContext.Current.CancellationToken;
        var twin = BatchedMeasures.Of([.. runs], Measures, options with { Method = FixedStep.Once }, 2, stop);
        var rows = new ConcurrentDictionary<int, double[]>();
        var (left, why) = devices.Of(
            PassGroup.Whole(runs, options), [.. Measures.Select(m => m.InFlight!)], (k, row) => Assert.True(rows.TryAdd(k, row)), stop);
        Assert.Empty(left);
        Assert.Empty(why);
        Assert.Equal(runs.Count, rows.Count);
        var largest = 0.0;
        for (var k = 0; k < runs.Count; k++)
        {
            for (var j = 0; j < Measures.Length; j++)
            {
                var (here, there) = (rows[k][j], twin[k][j]);
                Assert.Equal(double.IsNaN(there), double.IsNaN(here));
                largest = double.IsNaN(there) || (here == 0.0 && there == 0.0)
                    ? largest
                    : Math.Max(largest, Math.Abs(here - there) / Math.Abs(there));
            }
        }

        return largest;
    }

    [Theory]
    [InlineData(false, false)]
    [InlineData(true, false)]
    [InlineData(false, true)]
    [InlineData(true, true)]
    public void A_device_says_what_the_lanes_say(bool curved, bool rubs)
    {
        var runs = Runs(k => Saloon(k, curved, rubs), Hump, 9.0, 17.3);
        Assert.InRange(Largest(runs, new() { Method = FixedStep.Once }, of.Devices), 0.0, 1e-9);
    }

    [Fact]
    public void Cars_whose_dampers_bend_at_places_of_their_own_and_of_one_step_a_sample_too()
    {
        Car Bending(double k)
        {
            var table = new ForceTable([0.0, 0.05 * k, 0.3 * k], [0.0, 180.0, 600.0]);
            return Saloon(k) with { Front = PlainCar.Saloon.Front with { Damper = new Damper { Law = new TableDamper(table, table) } } };
        }

        var options = new PassOptions { Method = FixedStep.Once, Record = new() { SamplesPerSecond = 1500.0, Duration = 1.0 } };
        Assert.InRange(Largest(Runs(Bending, Hump, 9.0, 17.3), options, of.Devices), 0.0, 1e-9);
    }

    [Fact]
    public void Roads_on_one_side_and_cars_that_lean_and_other_samplings_too()
    {
        var leaning = PlainCar.Saloon.Weighing;
        Car Leaning(double k) => Saloon(k) with { Weighing = leaning with { FrontLeft = new(leaning.FrontLeft.Si * 1.06) } };
        var options = new PassOptions { Method = FixedStep.Once, Record = new() { SamplesPerSecond = 333.0, Duration = 2.0 } };
        Assert.InRange(Largest(Runs(Leaning, Left, 12.0, 22.0), options, of.Devices), 0.0, 1e-9);
    }

    [Fact]
    public void Single_precision_adds_no_more_than_it_states()
    {
        var options = new PassOptions { Method = FixedStep.Once with { InSingle = true } };
        Assert.InRange(Largest(Runs(k => Saloon(k), Hump, 17.3), options, of.Devices), 1e-9, 1e-3);
    }

    [Fact]
    public void What_a_device_has_no_text_for_it_names_and_leaves()
    {
        var varying = PlainCar.Saloon.Front.Spring with { MotionRatio = new MotionRatio { AtReference = new(0.9), PerTravel = new(0.5) } };
        List<PassRequest> runs =
        [
            .. Runs(k => Saloon(k), Hump, 12.0),
            .. Runs(k => Saloon(k) with { Front = PlainCar.Saloon.Front with { Spring = varying } }, Hump, 12.0).Take(2),
        ];
        var rows = new ConcurrentDictionary<int, double[]>();
        var (left, why) = of.Devices.Of(
            PassGroup.Whole(runs, new() { Method = FixedStep.Once }),
            [SettlingCatalogue.RmsPitch.InFlight!],
            (k, row) => Assert.True(rows.TryAdd(k, row)),
            TestContext.Current.CancellationToken);
        Assert.Equal([3, 4], left);
        Assert.Equal(["cars with motion ratios that vary run on the processor"], why);
        Assert.Equal(3, rows.Count);
    }

    [Fact]
    public void A_batch_runs_on_the_chosen_device_and_what_that_leaves_on_the_processor()
    {
        var stop = TestContext.Current.CancellationToken;
        var plank = Road.From(new Plank { Height = new(0.02), Length = new(0.6), Edge = new(0.1) });
        List<PassRequest> runs = [.. Runs(k => Saloon(k), Hump, 12.0), .. Runs(k => Saloon(k), plank, 9.0)];
        var device = new Counting(of.Devices);
        var twin = BatchedMeasures.Of([.. runs], [SettlingCatalogue.RmsPitch], null, 2, stop);
        var whole = BatchedMeasures.Of([.. runs], [.. SettlingCatalogue.All], null, 2, stop);
        var words = new List<string>();
        double[][] rows;
        try
        {
            MeasurePlace.Choose(runs.Count, words.Add, () => device);
            rows = BatchedMeasures.Of([.. runs], [SettlingCatalogue.RmsPitch], null, 2, stop);
            // A batch of fewer passes, and one that asks for more of its curves.
            _ = BatchedMeasures.Of([.. runs.Take(2)], [SettlingCatalogue.RmsPitch], null, 2, stop);
            Assert.Equal(runs.Count, device.Given);
            Assert.Equal(
                whole.SelectMany(r => r), BatchedMeasures.Of([.. runs], [.. SettlingCatalogue.All], null, 2, stop).SelectMany(r => r));
        }
        finally
        {
            MeasurePlace.ChooseProcessor();
        }

        Assert.StartsWith("a measure asks for", Assert.Single(words), StringComparison.Ordinal);
        Assert.Equal(twin.Select(r => r[0]), rows.Select(r => r[0]), (a, b) => Math.Abs(a - b) <= 1e-9 * a);
    }

    [Fact]
    public void Wheels_that_leave_the_road_are_timed_as_the_lanes_time_them()
    {
        var runs = Runs(k => Saloon(k), Hump, 17.3, 24.0);
        var measures = new[] { LiftOff(0), LiftOff(3) };
        var stop = TestContext.Current.CancellationToken;
        var twin = BatchedMeasures.Of([.. runs], measures, null, 2, stop);
        var rows = new ConcurrentDictionary<int, double[]>();
        of.Devices.Of(
            PassGroup.Whole(runs, BatchedMeasures.Usual), [.. measures.Select(m => m.InFlight!)], (k, row) => Assert.True(rows.TryAdd(k, row)), stop);
        Assert.Contains(twin, row => row.Any(time => time > 0.0));
        Assert.All(rows, row => Assert.Equal(twin[row.Key], row.Value));
    }

    [Fact]
    public void What_a_choice_measures_of_its_setups_runs_on_a_device_from_several_threads_at_once()
    {
        var guard = new CureGuard(true, ChooseUse.Aims);
        var runs = Runs(k => Saloon(k), Hump, 9.0, 11.0);
        var stop = TestContext.Current.CancellationToken;
        var twin = BatchedMeasures.Of([.. runs], guard.Measured, null, 1, stop);
        var (words, device) = (new ConcurrentQueue<string>(), new Counting(of.Devices));
        try
        {
            MeasurePlace.Choose(1, words.Enqueue, () => device);
            // As its pieces come.
            Parallel.For(0, 3, _ =>
            {
                var rows = BatchedMeasures.Of([.. runs], guard.Measured, null, 1, stop);
                Assert.Equal(
                    twin.SelectMany(row => row), rows.SelectMany(row => row), (a, b) => a.Equals(b) || Math.Abs(a - b) <= 1e-9 * Math.Abs(a));
            });
        }
        finally
        {
            MeasurePlace.ChooseProcessor();
        }

        Assert.Equal(3 * runs.Count, device.Given);
        Assert.Empty(words);
    }

    private sealed class Counting(MeasureDevices devices) : IMeasureDevice
    {
        private int given;

        public int Given => given;

        public (IReadOnlyList<int> Left, IReadOnlyList<string> Why) Of(
            PassGroup group, CurveNumber[] numbers, Action<int, double[]> give, CancellationToken cancellation)
        {
            Interlocked.Add(ref given, group.Requests.Length);
            return devices.Of(group, numbers, give, cancellation);
        }
    }

    [Fact]
    public void A_power_by_arithmetic_is_the_power() => Gen.Select(Gen.Double[1e-15, 1e3], Gen.Double[0.1, 6.0]).Sample((a, b) =>
    {
        var power = Math.Pow(a, b);
        Assert.InRange(DevicePower.Of(a, b), power * (1.0 - 1e-13), power * (1.0 + 1e-13));
    });

    // Two of them, so that runs are split; compiled once.
    public sealed class OfProcessor : IDisposable
    {
        internal MeasureDevices Devices { get; } = MeasureDevices.OfProcessor(2);

        public void Dispose() => Devices.Dispose();
    }
}
