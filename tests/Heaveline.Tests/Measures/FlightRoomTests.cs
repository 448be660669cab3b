using System.Diagnostics.Tracing;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Roads;
using Heaveline.Tests.Passes;

namespace Heaveline.Tests.Measures;

/// <summary>What a flight borrows it hands back, what it needs does not lie on the stack, and no number hangs on another beside it.</summary>
public class FlightRoomTests
{
    private static readonly Road Hump = Road.From(new RoundTopHump { Height = new(0.06), Length = new(3.7) });

    private static PassRequest[] Asked { get; } =
        [.. Enumerable.Range(0, 6).Select(i => new PassRequest(RideModel.Of(ExactCars.Saloon), Hump, 8.0 + (2.0 * i)))];

    [Fact]
    public void A_flight_that_is_stopped_hands_back_all_that_it_has_borrowed()
    {
        using var stop = new CancellationTokenSource();
        var group = PassGroup.Of(Asked[..1], BatchedMeasures.Usual, 1)[0];
        CurveNumber number = SettlingCatalogue.RmsPitch.InFlight!;
        using var loans = new Loans();
        MeasureFlight.Of(group, 1, [number], static (_, _, _) => { }, null, stop.Token);
        Assert.True(loans.Most > 0);
        Assert.Empty(loans.Out);
        stop.Cancel();
        Assert.Throws<OperationCanceledException>(() => MeasureFlight.Of(group, 1, [number], static (_, _, _) => { }, null, stop.Token));
        Assert.Empty(loans.Out);
    }

    [Fact]
    public void However_many_numbers_are_asked_for_they_need_no_room_on_the_stack()
    {
        var numbers = new CurveNumber[200_000];
        Array.Fill(numbers, static _ => 1.5);
        double[] row = [];
        var group = PassGroup.Of(Asked[..1], BatchedMeasures.Usual, 1)[0];
        var narrow = new Thread(
            () => MeasureFlight.Of(group, 1, numbers, (_, _, numbersOf) => row = numbersOf.ToArray(), null, default), maxStackSize: 512 * 1024);
        narrow.Start();
        narrow.Join();
        Assert.Equal(numbers.Length, row.Length);
        Assert.All(row, value => Assert.Equal(1.5, value));
    }

    [Fact]
    public void A_measure_is_one_number_whatever_is_measured_beside_it()
    {
        Measure<Pass>[] many =
        [
            SettlingCatalogue.RmsPitch, HitCatalogue.PeakPitchAcceleration, WheelCatalogue.LoadVariation(WheelPlace.Of(0, true)),
            WholePassCatalogue.RmsPitch,
        ];
        double[][] Of(Measure<Pass>[] measures) => BatchedMeasures.Of(Asked, measures, null, 1, TestContext.Current.CancellationToken);
        var together = Of(many);
        for (var j = 0; j < many.Length; j++)
        {
            Assert.Equal(together.Select(row => row[j]), Of([many[j]]).Select(row => row[0]));
        }
    }

    // What this thread has out of the pools of arrays.
    private sealed class Loans : EventListener
    {
        private readonly int thread = Environment.CurrentManagedThreadId;

        public HashSet<int> Out { get; } = [];

        public int Most { get; private set; }

        protected override void OnEventSourceCreated(EventSource eventSource)
        {
            if (eventSource.Name == "System.Buffers.ArrayPoolEventSource")
            {
                EnableEvents(eventSource, EventLevel.Verbose);
            }
        }

        protected override void OnEventWritten(EventWrittenEventArgs eventData)
        {
            if (Out is null || Environment.CurrentManagedThreadId != thread || eventData.Payload is not [int id, ..])
            {
                return;
            }

            if (eventData.EventName == "BufferRented")
            {
                Out.Add(id);
                Most = Math.Max(Most, Out.Count);
            }
            else if (eventData.EventName == "BufferReturned")
            {
                Out.Remove(id);
            }
        }
    }
}
