using System.Collections.Immutable;
using Heaveline.Cars;
using Heaveline.Doubts;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Tuning;

namespace Heaveline.Studies;

/// <summary>The lives of cars drawn within the doubts of a car and of what a year takes from it: what has come upon each, year by year.</summary>
internal sealed class YearsLives
{
    // Rates are drawn apart from the car, so that other rates meet the same cars.
    private const ulong OfWear = 0x59454152UL;

    private static readonly WorkshopReading[] Kinds =
    [
        WorkshopReading.FrontSinking, WorkshopReading.RearSinking, WorkshopReading.RearMoreThanFront, WorkshopReading.FrontSwings,
        WorkshopReading.RearSwings,
    ];

    private readonly YearsAsked asked;
    private readonly JointDoubts doubts;
    private readonly bool[][] happened;
    private readonly YearsMoments[] moments;
    private readonly double[][] read;
    private readonly Measure<Pass>[] margins;
    private int fallen;
    private int refused;

    private YearsLives(YearsAsked asked)
    {
        this.asked = asked;
        doubts = JointDoubts.Of([CarDoubts.Of(asked.Car.Car, asked.Car.Load)]);
        Events = [.. Enum.GetValues<YearsEvent>().Where(IsWatched)];
        happened = [.. Events.Select(_ => new bool[Samples])];
        moments = [.. Events.Select(_ => new YearsMoments(asked.Draws))];
        read = [.. Kinds.Select(_ => new double[Samples])];
        margins = asked.Road is null
            ? []
            :
            [
                .. WheelPlace.Axles(asked.Car.Model.Rolls)
                    .Select(place => WheelCatalogue.Of(place).Single(m => m.Key.EndsWith("-bump-margin", StringComparison.Ordinal))),
            ];
    }

    /// <summary>What is watched: all that can come upon such a car.</summary>
    public IReadOnlyList<YearsEvent> Events { get; }

    /// <summary>Cars that in some year could not stand any more, as if they lay on their stops; that is counted as such.</summary>
    public int Fallen => fallen;

    /// <summary>Draws that no car could have and that were drawn again.</summary>
    public int Refused => refused;

    private int Samples => asked.Draws * (asked.Years + 1);

    /// <summary>Lives the cars' years.</summary>
    public static YearsLives Of(YearsAsked asked, StudyRun run)
    {
        // What no draw could do, the car as described says at once.
        AgedCar.After(asked.Car.Car, asked.Wear, 1.0);
        var lives = new YearsLives(asked);
        var done = 0;
        ParallelLoop.Each(asked.Draws, run.Degree, draw =>
        {
            lives.Live(draw, run.Cancellation);
            run.Progress?.Report(Interlocked.Increment(ref done) / (double)asked.Draws);
        }, run.Cancellation);
        return lives;
    }

    /// <summary>Share of the cars upon which an event has come, in each year from 0 on (–).</summary>
    public double[] Shares(YearsEvent what) =>
        [.. Enumerable.Range(0, asked.Years + 1).Select(year => Row(what, year).Count(h => h) / (double)asked.Draws)];

    /// <summary>When an event comes upon the cars, and when it leaves them, one after another.</summary>
    public ImmutableArray<(double Year, int Change)> Moments(YearsEvent what) => moments[Place(what)].All;

    /// <summary>
    /// The reading that parts the cars best; null where the years do not bring the event, by a tenth of the cars at least, or too few have it or not.
    /// </summary>
    public YearsReading? Reading(YearsEvent what) => Shares(what) is var shares && shares[^1] < shares[0] + 0.1
        ? null
        : Kinds.Select((kind, k) => YearsReading.Of(kind, read[k], happened[Place(what)])).OfType<YearsReading>().MaxBy(r => r.Parts);

    private bool IsWatched(YearsEvent what) => what switch
    {
        YearsEvent.StandsOnStop => asked.Car.Car.Axles.Any(axle => axle.BumpStop is not null),
        YearsEvent.TouchesStop => asked.Road is not null && asked.Car.Car.Axles.Any(axle => axle.BumpStop is not null),
        YearsEvent.HighBeam => asked.Car.Car.Headlamp is { } lamp && HeadlampRange.Of(lamp) is not null,
        YearsEvent.WeakDamping => asked.Wear.DamperLoss.Si > 0.0,
        _ => true,
    };

    private int Place(YearsEvent what) => Events.ToList().IndexOf(what);

    private ArraySegment<bool> Row(YearsEvent what, int year) => new(happened[Place(what)], year * asked.Draws, asked.Draws);

    private void Live(int draw, CancellationToken cancellation)
    {
        var drawn = JointDraw.Of(doubts, asked.Seed, draw);
        Interlocked.Add(ref refused, drawn.Refused);
        var (car, load) = (drawn.Models[0].Car, drawn.Models[0].Load);
        var wear = WearOf(draw);
        // Every year is read by the same hand.
        var hand = WorkshopReadings.Hand(asked.Seed, draw);
        var first = RideModel.Of(car).Trim;
        var requests = new PassRequest?[asked.Years + 1];
        var isDown = false;
        for (var year = 0; year <= asked.Years; year++)
        {
            cancellation.ThrowIfCancellationRequested();
            var at = (year * asked.Draws) + draw;
            var aged = AgedCar.After(car, wear, year);
            if (Standing(aged, LoadState.Reference) is not { } empty || Standing(aged, load) is not { } loaded)
            {
                Fall(at, ref isDown);
                continue;
            }

            requests[year] = asked.Road is { } road ? new PassRequest(loaded, road, asked.Speed) : null;
            Stand(at, loaded);
            Read(at, empty, first, hand);
        }

        var margin = Drive(draw, requests, cancellation);
        foreach (var (e, what) in Events.Index())
        {
            moments[e].Keep(
                draw,
                [.. Enumerable.Range(0, asked.Years + 1).Select(year => happened[e][(year * asked.Draws) + draw])],
                at => IsSo(what, AgedCar.After(car, wear, at), load, happened[e][((int)at * asked.Draws) + draw], cancellation),
                year => what == YearsEvent.TouchesStop && margin is not null ? Zero(year, margin[year], margin[year + 1]) : null);
        }
    }

    // Of a road the pass is not run at every moment between two years: the stop comes nearer evenly.
    private static double? Zero(int year, double before, double after) =>
        double.IsFinite(before) && double.IsFinite(after) && before >= 0.0 != after >= 0.0 ? year + (before / (before - after)) : null;

    // A car that cannot stand lies on its stops, and is else as it was.
    private bool IsSo(YearsEvent what, Car aged, LoadState load, bool before, CancellationToken cancellation)
    {
        if (Standing(aged, LoadState.Reference) is null || Standing(aged, load) is not { } loaded)
        {
            return before || what is YearsEvent.StandsOnStop or YearsEvent.TouchesStop;
        }

        if (what != YearsEvent.TouchesStop)
        {
            return Stands(what, loaded);
        }

        var request = new PassRequest(loaded, asked.Road!, asked.Speed);
        var (rows, outcomes) = BatchedMeasures.WithOutcomes([request], margins, null, 1, null, cancellation);
        return Touches(outcomes[0], rows[0]);
    }

    private static RideModel? Standing(Car car, LoadState load)
    {
        try
        {
            return RideModel.Of(car, load);
        }
        catch (RefusedValueException)
        {
            // Told by Fallen.
            return null;
        }
    }

    // It lies on its stops; what can no longer be asked of it stays as it was a year before.
    private void Fall(int at, ref bool isDown)
    {
        Interlocked.Add(ref fallen, isDown ? 0 : 1);
        isDown = true;
        foreach (var (e, what) in Events.Index())
        {
            happened[e][at] = what is YearsEvent.StandsOnStop or YearsEvent.TouchesStop || (at >= asked.Draws && happened[e][at - asked.Draws]);
        }

        for (var k = 0; k < Kinds.Length; k++)
        {
            read[k][at] = at >= asked.Draws ? read[k][at - asked.Draws] : 0.0;
        }
    }

    private void Stand(int at, RideModel loaded)
    {
        foreach (var (e, what) in Events.Index())
        {
            happened[e][at] = Stands(what, loaded);
        }
    }

    private static bool Stands(YearsEvent what, RideModel loaded) => what switch
    {
        YearsEvent.SofterRear => AxleCatalogue.FrequencyRatio.Of(new CarAtRest(OffItsStops(loaded))) < 1.0,
        YearsEvent.StandsOnStop => loaded.Trim.BumpLeft.Min() < 0.0,
        YearsEvent.HighBeam => HeadlampAim.Of(loaded)!.Drop < HeadlampRange.Of(loaded.Car.Headlamp!)!.LeastDrop,
        YearsEvent.WeakDamping => new CarAtRest(loaded) is var rest
            && Math.Min(rest.DampingRatio(AxleEnd.Front), rest.DampingRatio(AxleEnd.Rear)) < CureGuard.LeastDamping,
        _ => false,
    };

    // A stop that a car stands on makes the rate as much as the spring does: which end is the softer is asked of the springs.
    private static RideModel OffItsStops(RideModel loaded) => StandingStops.Of(loaded).Any()
        ? Standing(
            loaded.Car with { Front = loaded.Car.Front with { BumpStop = null }, Rear = loaded.Car.Rear with { BumpStop = null } },
            loaded.Load) ?? loaded
        : loaded;

    private void Read(int at, RideModel empty, Trim before, ulong hand)
    {
        var readings = WorkshopReadings.Read(empty, hand);
        for (var k = 0; k < Kinds.Length; k++)
        {
            read[k][at] = readings.Value(Kinds[k], (before.FrontHeight, before.RearHeight));
        }
    }

    // What is left to the stops in each year; NaN where the pass does not tell; null where no road is watched.
    private double[]? Drive(int draw, PassRequest?[] requests, CancellationToken cancellation)
    {
        if (margins.Length == 0 || Place(YearsEvent.TouchesStop) is not (>= 0 and var e))
        {
            return null;
        }

        var (rows, outcomes) = BatchedMeasures.WithOutcomes(requests, margins, null, 1, null, cancellation);
        for (var year = 0; year <= asked.Years; year++)
        {
            happened[e][(year * asked.Draws) + draw] |= Touches(outcomes[year], rows[year]);
        }

        return
        [
            .. rows.Select((row, year) => outcomes[year] == PassOutcome.Completed
                ? row.Where(m => !double.IsNaN(m)).DefaultIfEmpty(double.NaN).Min()
                : double.NaN),
        ];
    }

    // A pass that leaves the model's range has gone through the stop.
    private static bool Touches(PassOutcome? outcome, IReadOnlyList<double> row) =>
        outcome is { } end && (end != PassOutcome.Completed || row.Any(margin => margin < 0.0));

    private YearlyWear WearOf(int draw)
    {
        var own = SplitMix.At(asked.Seed ^ OfWear, (ulong)draw);
        var ((front, rear), (creep, loss)) = (SplitMix.Normals(own, 0), SplitMix.Normals(own, 2));
        return asked.Wear.With([front, rear, creep, loss]);
    }
}
