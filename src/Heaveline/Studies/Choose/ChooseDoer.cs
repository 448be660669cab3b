using System.Collections.Concurrent;
using System.Collections.Immutable;
using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Parts;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Rides;
using Heaveline.Search;

namespace Heaveline.Studies;

/// <summary>Drives setups over the use cases of a study, and looks at them standing: in the car as stated and in drawn ones.</summary>
internal sealed class ChooseDoer : IPassDoer
{
    // Near nothing a guess of who will be refused must be good, far from it need not: millimetres of travel and hundredths of a second by their
    // inverse hyperbolic sine.
    private const double PerTravel = 1e3;
    private const double PerTime = 1e2;

    private readonly ChooseAsked asked;
    private readonly ChooseUse use;
    private readonly ChooseParts parts;
    private readonly IReadOnlyList<Measure<Pass>> measured;
    private readonly ConcurrentDictionary<int, Lazy<Drawn>> drawn = [];
    private readonly Lazy<ChooseStood> stood;

    /// <summary>In a drawn car nothing counts as farther that is so by less: a millimetre. Judged by eye, no source.</summary>
    public const double DrawnTravel = 1e-3;

    /// <summary>In a drawn car nothing counts as longer that is so by less: a hundredth of a second. Judged by eye, no source.</summary>
    public const double DrawnTime = 1e-2;

    /// <param name="asked">What is asked.</param>
    /// <param name="use">The use cases.</param>
    /// <param name="parts">The setups.</param>
    public ChooseDoer(ChooseAsked asked, ChooseUse use, ChooseParts parts)
    {
        (this.asked, this.use, this.parts) = (asked, use, parts);
        Guard = new CureGuard(asked.Car.Kind != VehicleKind.TwoWheeler, ChooseUse.Aims);
        measured = use.HasLoads
            ? [.. Guard.Measured, .. WheelPlace.Axles(asked.Car.Kind != VehicleKind.TwoWheeler).Select(LeastLoad)]
            : Guard.Measured;
        stood = new Lazy<ChooseStood>(() => ChooseStood.Of(asked, model => Measured([.. RequestsOf(model)], CancellationToken.None)));
    }

    /// <summary>What no setup may do, and what is measured to tell.</summary>
    public CureGuard Guard { get; }

    /// <summary>The car as it is under every load.</summary>
    public ChooseStood Stood => stood.Value;

    /// <inheritdoc/>
    public IReadOnlyList<SetupRow> Do(Piece piece, CancellationToken cancellation) => piece.Stage == PieceStage.Look
        ? [.. piece.Setups.Select(setup => Look(setup, cancellation))]
        : Driven(piece, cancellation);

    /// <summary>Greatest vertical acceleration at the worst seat in every crossing, m/s²; empty without a seat.</summary>
    /// <param name="car">The car as stated, with or without parts.</param>
    public ImmutableArray<double> SeatPeaks(Car car) => car.Seats.Count == 0
        ? []
        : [.. Crossings(car, [SeatCatalogue.PeakVertical(SeatPlace.Worst)]).Select(row => row[0])];

    /// <summary>Measures of every crossing, in the order of the use cases.</summary>
    /// <param name="car">The car as stated, with or without parts.</param>
    /// <param name="measures">The measures.</param>
    public double[][] Crossings(Car car, IReadOnlyList<Measure<Pass>> measures) => BatchedMeasures.Of(
        [.. asked.Loads.SelectMany(load => RequestsOf(RideModel.Of(car, load)))], measures, BatchedMeasures.Usual, 1, CancellationToken.None);

    /// <summary>A drawn car.</summary>
    /// <param name="draw">The draw.</param>
    public ChooseDraw CarOf(int draw) => Of(draw).Car;

    private Drawn Of(int number) => drawn.GetOrAdd(number, draw => new Lazy<Drawn>(() => new Drawn(this, draw))).Value;

    private SetupRow[] Driven(Piece piece, CancellationToken cancellation)
    {
        var own = Of(piece.Draw);
        var rows = new SetupRow[piece.Setups.Length];
        var (requests, of) = (new List<PassRequest>(), new List<(int Row, RideModel[] Models)>());
        for (var i = 0; i < rows.Length; i++)
        {
            if (parts.Fit(piece.Setups[i]) is not Fitted fitted)
            {
                rows[i] = Refused(ChooseRefusal.Misfit);
                continue;
            }

            try
            {
                RideModel[] models = [.. asked.Loads.Select(load => own.Car.ModelOf(fitted.Car, load))];
                of.Add((i, models));
                requests.AddRange(models.SelectMany(RequestsOf));
            }
            catch (RefusedValueException)
            {
                rows[i] = Refused(ChooseRefusal.CannotStand);
            }
        }

        var crossed = Measured(requests, cancellation);
        var each = use.Crossings.Length;
        foreach (var (k, (row, models)) in of.Index())
        {
            rows[row] = RowOf(crossed.AsSpan(k * each, each), models, own, piece, piece.Setups[row] == 0L);
            if (use.HasTravel && rows[row].IsDriven)
            {
                ChooseTravel.Of(models.Concat(Others(((Fitted)parts.Fit(piece.Setups[row])).Car, own))).CopyTo(rows[row].Numbers, use.FirstTravel);
            }
        }

        return rows;
    }

    private SetupRow RowOf(ReadOnlySpan<double[]> crossed, RideModel[] models, Drawn own, Piece piece, bool isPresent)
    {
        var numbers = new double[use.Numbers];
        var (breach, excess) = (CureBreach.None, new double[Guard.Measured.Count - ChooseUse.Aims.Count]);
        Array.Fill(excess, double.NegativeInfinity);
        var before = isPresent ? null : own.Present.Value;
        for (var k = 0; k < crossed.Length; k++)
        {
            var now = crossed[k];
            if (!double.IsFinite(now[0]) || !double.IsFinite(now[1]))
            {
                return Refused(CureBreach.NoCrossing);
            }

            (numbers[2 * k], numbers[(2 * k) + 1]) = (now[0], now[1]);
            if (before is not null)
            {
                breach = breach == CureBreach.None ? Breach(before[k], now) : breach;
                Farther(before[k], now, excess);
            }
        }

        // What a drawn car does by a hair more is no reason against a setup: of many cars over many bumps one always does.
        if (piece.Draw != Piece.AsStated && breach is not CureBreach.NoCrossing
            && excess.Index().All(e => Math.Sinh(e.Item) <= (IsTravel(e.Index) ? PerTravel * DrawnTravel : PerTime * DrawnTime)))
        {
            breach = CureBreach.None;
        }

        var at = 2 * crossed.Length;
        for (var load = 0; load < models.Length && asked.RideSpeeds.Length > 0; load++)
        {
            var ride = ChordDamping.OneSidedOf(models[load]);
            foreach (var speed in asked.RideSpeeds)
            {
                numbers[at++] = own.Ride.Of(models[load], ride, speed);
            }
        }

        for (var load = 0; load < models.Length && use.HasGrip; load++)
        {
            foreach (var speed in asked.RideSpeeds)
            {
                numbers[at] = own.Ride.Grip(models[load], speed);
                if (!isPresent && !double.IsFinite(numbers[at]))
                {
                    return Refused(ChooseRefusal.NoGrip);
                }

                at++;
            }
        }

        for (var k = 0; k < crossed.Length && use.HasLoads; k++)
        {
            numbers[at++] = 1.0 - Math.Min(crossed[k][^2], crossed[k][^1]);
        }

        return new SetupRow(breach == CureBreach.None ? SetupRow.None : (int)ChooseRefusal.Breach + (int)breach, numbers)
        {
            Excesses = [.. excess.Select(e => double.IsFinite(e) ? e : -1.0)],
        };
    }

    // What stands under a load that counts may not in a drawn car under another one: then nothing is left there.
    private IEnumerable<RideModel?> Others(Car car, Drawn own) => Stood.Others.Select(load =>
    {
        try
        {
            return own.Car.ModelOf(car, load);
        }
        catch (RefusedValueException)
        {
            return null;
        }
    });

    private static Measure<Pass> LeastLoad(WheelPlace place) => WheelCatalogue.Of(place).Single(measure => measure.Key == $"{place.Key}-least-load");

    // How the hit changes is a wish, and has a limit of its own.
    private CureBreach Breach(double[] before, double[] now) => Guard.Breach(before, now) is var found && found == CureBreach.Spoilt
        ? CureBreach.None
        : found;

    // How far beyond what no setup may do: each stop, spring and wheel where it is worst.
    private void Farther(double[] before, double[] now, double[] worst)
    {
        for (var k = 0; k < worst.Length; k++)
        {
            var (was, then) = (before[k + ChooseUse.Aims.Count], now[k + ChooseUse.Aims.Count]);
            var more = IsTravel(k) ? PerTravel * (Math.Min(was, 0.0) - then) : PerTime * (then - was);
            worst[k] = double.IsFinite(more) ? Math.Max(worst[k], Math.Asinh(more)) : worst[k];
        }
    }

    // Of what is farther the travels are better large, the times off the road are not.
    private bool IsTravel(int k) => Guard.Measured[k + ChooseUse.Aims.Count].Better == Better.More;

    private SetupRow Look(long setup, CancellationToken cancellation)
    {
        if (parts.Fit(setup) is not Fitted fitted)
        {
            return Refused(ChooseRefusal.Misfit);
        }

        RideModel[] models;
        try
        {
            models = [.. asked.Loads.Concat(Stood.Others).Select(load => RideModel.Of(fitted.Car, load))];
        }
        catch (RefusedValueException)
        {
            return Refused(ChooseRefusal.CannotStand);
        }

        foreach (var (model, before) in models.Zip(Stood.Stances))
        {
            if (CureStance.Of(model).Breach(before) is not CureBreach.None and var breach)
            {
                return Refused(breach);
            }
        }

        CarAtRest[] rests = [.. models.Take(asked.Loads.Length).Select(model => new CarAtRest(model))];
        if (Stood.Standing.Against(rests) is not ChooseRefusal.None and var limit)
        {
            return Refused(limit);
        }

        var others = Measured([.. models.Skip(asked.Loads.Length).SelectMany(RequestsOf)], cancellation);
        foreach (var (now, before) in others.Zip(Stood.OtherRows))
        {
            if (Breach(before, now) is not CureBreach.None and var breach)
            {
                return Refused(breach);
            }
        }

        return new SetupRow(SetupRow.None, []);
    }

    private double[][] Measured(IReadOnlyList<PassRequest> requests, CancellationToken cancellation) =>
        BatchedMeasures.Of(requests, measured, BatchedMeasures.Usual, 1, cancellation);

    private IEnumerable<PassRequest> RequestsOf(RideModel model) =>
        from road in asked.Roads
        from speed in road.Speeds
        select new PassRequest(model, road.Road, speed);

    private static SetupRow Refused(ChooseRefusal refusal) => new((int)refusal, []);

    private static SetupRow Refused(CureBreach breach) => new((int)ChooseRefusal.Breach + (int)breach, []);

    // One car of the study, with what every setup in it is compared with.
    private sealed class Drawn
    {
        public Drawn(ChooseDoer doer, int draw)
        {
            Car = ChooseDraw.Of(doer.asked.Car, doer.asked.Loads, doer.asked.Seed, draw);
            Ride = new ChooseRide(doer.asked.Class);
            Present = new Lazy<double[][]>(() => doer.Measured(
                [.. doer.asked.Loads.SelectMany(load => doer.RequestsOf(Car.ModelOf(doer.asked.Car, load)))], CancellationToken.None));
        }

        public ChooseDraw Car { get; }

        public ChooseRide Ride { get; }

        public Lazy<double[][]> Present { get; }
    }
}
