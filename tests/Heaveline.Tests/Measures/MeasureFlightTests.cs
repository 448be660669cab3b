using CsCheck;
using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Roads;
using Heaveline.Tests.Doubts;

namespace Heaveline.Tests.Measures;

/// <summary>Measures gathered while passes run are, bit for bit, those of the recorded passes.</summary>
public class MeasureFlightTests
{
    private static readonly Road[] Roads =
    [
        Road.From(new RoundTopHump { Height = new(0.06), Length = new(3.7) }),
        Road.From(new Versine { Height = new(0.03), Length = new(1.2) }, Tracks.Left),
        Road.From(new Ramp { Height = new(0.04), Length = new(2.0) }),
        Road.From(new SineRoad { Amplitude = new(0.01), Wavelength = new(6.0), Waves = 5 }),
    ];

    // Every sampling that changes a piece of the work: changes over 10 ms lie 2, 4 and 40 samples apart.
    private static readonly PassRecord[] Records =
    [
        new() { SettlingTime = 1.1 },
        new() { SettlingTime = 0.5, SamplesPerSecond = 200.0, LeadTime = 0.0 },
        new() { Duration = 1.3, SamplesPerSecond = 333.0 },
        new() { SettlingTime = 0.6, SamplesPerSecond = 4000.0 },
    ];

    // Neighbours of other roads and speeds, so that windows begin and end apart and groups do not fill their lanes.
    private static Gen<PassRequest[]> Passes { get; } =
        Gen.Select(AnyCar.Any, Gen.Int[0, Roads.Length - 1], Gen.Double[2.0, 30.0], Gen.Bool)
            .Select((car, road, speed, same) => (Car: car, Road: road, Speed: same ? 12.0 : speed))
            .Array[3, 9]
            .Select(all => all.Select(p => new PassRequest(RideModel.Of(Furnished(p.Car)), Roads[p.Road], p.Speed)).ToArray());

    [Fact]
    public void Every_measure_in_flight_is_that_of_the_traces_bit_for_bit()
    {
        Gen.Select(Passes, Gen.Int[0, Records.Length - 1], Gen.Int[0, LaneWidth.All.Count - 1]).Sample(
            (requests, record, width) => Agree(requests, new PassOptions { Method = FixedStep.Once, Record = Records[record] }, LaneWidth.All[width]),
            iter: 60,
            threads: 1);
    }

    [Fact]
    public void Only_the_numerical_error_and_the_beam_in_an_oncoming_eye_need_a_recorded_pass()
    {
        string[] recorded = [.. Measures.Where(m => m.InFlight is null).Select(m => m.Key)];
        Assert.Equal(["lamp-flash-share", "lamp-flashes", "error-pitch", "error-load"], recorded);
    }

    [Fact]
    public void A_pass_that_leaves_the_models_range_ends_as_its_record_ends_and_has_no_numbers()
    {
        var stop = new Stop { Clearance = new(0.03), Rate = new(60e3), SolidAfter = new(0.02) };
        var low = RideModel.Of(PlainCar.Saloon with { Front = PlainCar.FrontAxle with { BumpStop = stop } });
        PassRequest[] requests = [.. new[] { 2.0, 3.0, 8.0, 15.0, 25.0, 40.0 }.Select(v => new PassRequest(low, Roads[0], v))];
        var options = new PassOptions { Method = FixedStep.Once };
        Agree(requests, options, LaneWidth.Best);
        var (rows, outcomes) = BatchedMeasures.WithOutcomes(
            requests, [SettlingCatalogue.RmsPitch], options, 1, null, TestContext.Current.CancellationToken);
        Assert.Contains(PassOutcome.TravelOutOfRange, outcomes);
        Assert.Contains(PassOutcome.Completed, outcomes);
        Assert.All(rows.Zip(outcomes), r => Assert.Equal(r.Second == PassOutcome.Completed, double.IsFinite(r.First[0])));
    }

    // At 2 m/s the hit outlasts its three seconds; the record of the others ends before the second after the obstacle does.
    [Fact]
    public void Windows_that_the_record_cuts_or_misses_come_out_as_from_traces()
    {
        var model = RideModel.Of(Furnished(PlainCar.Saloon));
        PassRequest[] requests = [.. new[] { 2.0, 2.3, 6.0, 28.0, 29.0 }.Select(v => new PassRequest(model, Roads[0], v))];
        foreach (var duration in new[] { 0.1, 0.3, 0.9, 2.0 })
        {
            Agree(requests, new PassOptions { Method = FixedStep.Once, Record = new() { Duration = duration } }, LaneWidth.Best);
        }
    }

    [Fact]
    public void Neither_threads_nor_lanes_change_a_bit()
    {
        var stop = TestContext.Current.CancellationToken;
        var models = new[] { 0.1, 0.3, 0.9 }.Select(d => (MeasuredCar.Saloon with { FrontDamping = d, RearDamping = d }).Model()).ToArray();
        PassRequest[] requests = [.. from model in models from v in new[] { 7.0, 13.0, 21.0, 30.0 } select new PassRequest(model, Roads[0], v)];
        Measure<Pass>[] measures = [.. PassCatalogue.Of([], WheelPlace.Axles(true)).Where(m => m.InFlight is not null)];
        var one = BatchedMeasures.Of(requests, measures, null, 1, stop);
        foreach (var degree in new[] { 2, 3, 8 })
        {
            Assert.Equal(one.SelectMany(r => r), BatchedMeasures.Of(requests, measures, null, degree, stop).SelectMany(r => r));
        }

        var options = BatchedMeasures.Usual;
        var narrow = Flown(requests, measures, options, 1);
        foreach (var width in LaneWidth.All)
        {
            var wide = Flown(requests, measures, options, width);
            Assert.Equal(narrow.SelectMany(r => r), wide.SelectMany(r => r));
        }
    }

    // Float keeps 24 bits: of squares and changes summed up in it some 1e-5 is lost, beside what the runs themselves lose.
    [Fact]
    public void In_single_precision_the_numbers_are_those_of_the_record_to_its_rounding()
    {
        var model = RideModel.Of(Furnished(PlainCar.Saloon));
        PassRequest[] requests = [.. new[] { 5.0, 9.0, 9.5, 14.0, 23.0 }.Select(v => new PassRequest(model, Roads[0], v))];
        var options = new PassOptions { Method = FixedStep.Once with { InSingle = true } };
        Measure<Pass>[] measures =
        [
            SettlingCatalogue.RmsPitch, SettlingCatalogue.LatePitch, HitCatalogue.PeakPitch, HitCatalogue.PeakPitchAcceleration,
            WholePassCatalogue.RmsHeaveOverObstacle, SeatCatalogue.PeakVertical(SeatPlace.Worst),
            WheelCatalogue.LoadVariation(WheelPlace.Of(0, true)),
        ];
        var flown = Flown(requests, measures, options, LaneWidth.Best);
        var recorded = PassBatch.Of(requests, options, TestContext.Current.CancellationToken);
        for (var i = 0; i < requests.Length; i++)
        {
            for (var j = 0; j < measures.Length; j++)
            {
                var traced = measures[j].Of(recorded[i]);
                Assert.Equal(traced, flown[i][j], 1e-4 * Math.Abs(traced));
            }
        }
    }

    // A record of these passes takes 35 numbers 400 times a second for 3 s and more: over 300 kB each.
    [Fact]
    public void A_batch_that_asks_for_numbers_makes_no_record()
    {
        var model = MeasuredCar.Saloon.Model();
        PassRequest[] requests = [.. Enumerable.Range(0, 256).Select(i => new PassRequest(model, Roads[0], 10.0 + (i / 32)))];
        Measure<Pass>[] measures = [SettlingCatalogue.RmsPitch, SettlingCatalogue.LatePitch, HitCatalogue.PeakPitchAcceleration];
        double[][] Work() => BatchedMeasures.Of(requests, measures, null, 1, TestContext.Current.CancellationToken);
        Assert.Equal(requests.Length, Work().Length);
        long Allocated()
        {
            var before = GC.GetAllocatedBytesForCurrentThread();
            Assert.Equal(requests.Length, Work().Length);
            return GC.GetAllocatedBytesForCurrentThread() - before;
        }

        // The least of three: where memory is scarce, buffers that are lent are taken back now and then, and made anew.
        Assert.InRange(Enumerable.Range(0, 3).Min(_ => Allocated()) / requests.Length, 0, 20_000);
    }

    [Fact]
    public async Task A_flight_stops_when_it_is_told_to()
    {
        using var stop = new CancellationTokenSource();
        var model = MeasuredCar.Saloon.Model();
        // An hour of road: without looking at the token it would run for seconds.
        var requests = Enumerable.Repeat(new PassRequest(model, Roads[0], 10.0), 16).ToArray();
        var options = new PassOptions { Method = FixedStep.Once, Record = new() { Duration = 3600.0 } };
        var work = Task.Run(() => BatchedMeasures.Of(requests, [SettlingCatalogue.LatePitch], options, 2, stop.Token));
        await stop.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => work);
    }

    private static IReadOnlyList<Measure<Pass>> Measures => PassCatalogue.Of([SeatPlace.Worst, SeatPlace.Of("rear")], WheelPlace.Each(true));

    private static IReadOnlyList<Measure<Pass>> All =>
        [.. Measures.Concat(WheelPlace.Each(false).SelectMany(WheelCatalogue.Of)).Where(m => m.InFlight is not null)];

    private static Car Furnished(Car car) => car with
    {
        Seats =
        [
            new()
            {
                Name = "driver",
                BehindFrontAxle = new(1.1),
                LeftOfMiddle = new(car.Kind == VehicleKind.TwoWheeler ? 0.0 : 0.36),
                Height = new(0.6),
            },
            new() { Name = "rear", BehindFrontAxle = new(1.3), Height = new(0.62) },
        ],
        Headlamp = new Headlamp { Height = new(0.66), AheadOfFrontAxle = new(0.5), Drop = new(0.012) },
    };

    private static void Agree(PassRequest[] requests, PassOptions options, int width)
    {
        var (all, flown) = (All, Flown(requests, All, options, width));
        foreach (var group in PassGroup.Of(requests, options, width))
        {
            var passes = group.Run(options, width);
            for (var k = 0; k < passes.Length; k++)
            {
                var row = flown[group.Places[k]];
                Assert.Equal(passes[k].Outcome == PassOutcome.Completed ? all.Count : 0, row.Length);
                for (var j = 0; j < row.Length; j++)
                {
                    var traced = all[j].Of(passes[k]);
                    Assert.True(traced.Equals(row[j]), $"{all[j].Key}: {traced:R} of the traces, {row[j]:R} in flight.");
                }
            }
        }
    }

    private static double[][] Flown(PassRequest[] requests, IReadOnlyList<Measure<Pass>> measures, PassOptions options, int width)
    {
        var rows = new double[requests.Length][];
        using var memory = new RoadMemory();
        foreach (var group in PassGroup.Of(requests, options, width))
        {
            MeasureFlight.Of(
                group, width, [.. measures.Select(m => m.InFlight!)], (k, _, row) => rows[group.Places[k]] = row.ToArray(), memory, default);
        }

        return rows;
    }
}
