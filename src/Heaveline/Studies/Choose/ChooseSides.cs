using System.Collections.Immutable;
using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Numerics;
using Heaveline.Quantities;
using Heaveline.Rides;
using Heaveline.Search;

namespace Heaveline.Studies;

/// <summary>
/// What the setups of a shortlist change besides, with how sure that is: each in the drawn cars of the trial, against the same car without the parts,
/// under the fullest load; and in the car as stated under every other load. Standing and on the random road share the model of a setup in a draw.
/// </summary>
internal static class ChooseSides
{
    /// <summary>In so many of the drawn cars at most: a paired difference scatters little.</summary>
    public const int MostDraws = 32;

    // Below the scatter of the draws.
    private static readonly RandomOptions OnRoad = RandomOptions.Default with { Tolerance = 1e-3 };

    private static readonly string[] OfWheels = ["bump-left", "droop-left"];

    /// <summary>The side effects that the cars have; none without draws.</summary>
    public static ImmutableArray<ChooseSide> Of(ChooseFindings findings, ChooseDoer doer, StudyRun run)
    {
        int[] draws = [Piece.AsStated, .. findings.Trial.Numbers.Take(MostDraws)];
        if (findings.List.IsEmpty || draws.Length == 1)
        {
            return [];
        }

        var (asked, load) = (findings.Asked, findings.Full.Model.Load);
        Car[] cars = [asked.Car, .. findings.List.Select(one => one.Fitted.Car)];
        CarAtRest[] rests = [findings.Full, .. findings.List.Select(one => one.Full)];
        Measure<CarAtRest>[] standing =
        [
            .. CostTable.Measures(rests).Where(measure => measure.Key != "roll-stiffness" && (measure.Uses & MeasureUse.Short) != MeasureUse.None
                || OfWheels.Any(key => measure.Key.EndsWith(key, StringComparison.Ordinal))),
        ];
        Measure<CarOnRoad>[] riding = asked.RideSpeeds.IsEmpty ? [] :
        [
            RideCatalogue.WorstLoadVariation, .. asked.Car.Seats.Select(seat => RideCatalogue.Vertical(SeatPlace.Of(seat.Name))),
        ];
        var spectrum = NamedSpectrum.Of(asked.Class).Spectrum;
        Rides.RideRoad[] roads = [.. asked.RideSpeeds.Select(speed => new Rides.RideRoad(spectrum, speed, OnRoad.Tracks))];
        var numbers = new double[draws.Length * cars.Length][];
        ParallelLoop.Each(
            numbers.Length, run.Degree, k => numbers[k] = Numbers(draws[k / cars.Length], cars[k % cars.Length], load), run.Cancellation);
        LoadState[] others = [.. asked.Loads.Concat(findings.Stood.Others).Where(other => other.Name != load.Name)];
        var stated = new double[others.Length * cars.Length][];
        ParallelLoop.Each(
            stated.Length,
            run.Degree,
            k => stated[k] = Numbers(Piece.AsStated, cars[k % cars.Length], others[k / cars.Length]),
            run.Cancellation);
        (Measure Measure, string Key, string Label)[] rows =
        [
            .. standing.Select(measure => ((Measure)measure, measure.Key, measure.Label)),
            .. asked.RideSpeeds.SelectMany((speed, s) => riding.Select((measure, m) => (
                (Measure)measure, FormattableString.Invariant($"{measure.Key}-{s + 1}"),
                $"{(m == 0 ? measure.Label : AtSeat(measure, asked.Car.Seats[m - 1].Name))}, {ChooseUse.Speed(speed)}"))),
        ];
        return
        [
            .. rows.Select((row, r) => new ChooseSide(
                row.Measure, row.Key, row.Label, numbers[0][r], [.. Enumerable.Range(1, cars.Length - 1).Select(car => Change(car, r))])
            {
                IsFurther = riding.Skip(2).Contains(row.Measure),
                Load = load.Name,
                Worst = [.. Enumerable.Range(1, cars.Length - 1).Select(car => Worst(car, r, row.Measure.Better))],
            })
                .Where(side => side.Changes.Any(change => change.Draws > 1)),
        ];

        // A load may be called as a seat is.
        static string AtSeat(Measure measure, string seat) => $"{measure.Label[(seat.Length + 2)..]} at the seat '{seat}'";

        double[] Numbers(int draw, Car car, LoadState under)
        {
            try
            {
                var model = doer.CarOf(draw).ModelOf(car, under);
                var rest = new CarAtRest(model);
                return
                [
                    .. standing.Select(measure => measure.Of(rest)),
                    .. roads.SelectMany(road => OnRandom(RandomResponse.Of(model, road, OnRoad, run.Cancellation))),
                ];
            }
            catch (RefusedValueException)
            {
                // It cannot stand in this drawn car: its trial has counted that.
                return [.. Enumerable.Repeat(double.NaN, standing.Length + (roads.Length * riding.Length))];
            }
        }

        IEnumerable<double> OnRandom(RandomResponse response)
        {
            var ride = new CarOnRoad(response);
            return riding.Select(measure => response.Outcome == RandomOutcome.NotConverged ? double.NaN : measure.Of(ride)).ToArray();
        }

        (double Change, string Load)? Worst(int car, int row, Better better)
        {
            (double Change, string Load)[] all =
            [
                (numbers[car][row] - numbers[0][row], load.Name),
                .. others.Select((other, o) => (stated[(o * cars.Length) + car][row] - stated[o * cars.Length][row], other.Name)),
            ];
            (double Change, string Load)[] told = [.. all.Where(one => double.IsFinite(one.Change))];
            return told.Length == 0 || better == Better.Neither ? null
                : better == Better.More ? told.MinBy(one => one.Change)
                : told.MaxBy(one => one.Change);
        }

        ChooseChange Change(int car, int row)
        {
            double[] all =
            [
                .. Enumerable.Range(1, draws.Length - 1).Select(d => numbers[(d * cars.Length) + car][row] - numbers[d * cars.Length][row])
                    .Where(double.IsFinite),
            ];
            return new ChooseChange(
                numbers[car][row] - numbers[0][row],
                DrawnNumbers.Mean(all),
                all.Length > 1 ? Gaussian.Ninety * DrawnNumbers.Deviation(all) : 0.0,
                all.Length);
        }
    }
}
