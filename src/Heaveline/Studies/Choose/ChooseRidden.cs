using System.Collections.Immutable;
using Heaveline.Cars;
using Heaveline.Measures.Comfort;
using Heaveline.Numerics;
using Heaveline.Parts;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Rides;
using Heaveline.Search;

namespace Heaveline.Studies;

/// <summary>
/// The ride of setups as the question of the ride tells it: on the random road in the long run, each car made linear at its own level there. A search
/// goes by a cheaper number (<see cref="ChooseRide"/>); whatever is told of a setup is this one.
/// </summary>
internal sealed class ChooseRidden
{
    /// <summary>In so many of the drawn cars at most: they tell mean and spread of a number that scatters little.</summary>
    public const int MostDraws = 64;

    // A tenth of a per cent is printed.
    private static readonly RandomOptions AsPrinted = RandomOptions.Default with { Tolerance = 1e-4 };

    // Below the scatter of the draws.
    private static readonly RandomOptions AsDrawn = RandomOptions.Default with { Tolerance = 1e-3 };

    private readonly ChooseAsked asked;
    private readonly ChooseUse use;
    private readonly ChooseParts parts;
    private readonly ChooseDoer doer;
    private readonly StudyRun run;
    private readonly Rides.RideRoad[] roads;
    private readonly Lazy<double[]> present;

    /// <param name="asked">What is asked.</param>
    /// <param name="use">The use cases.</param>
    /// <param name="parts">The setups.</param>
    /// <param name="doer">Knows the drawn cars.</param>
    /// <param name="run">How it is run.</param>
    public ChooseRidden(ChooseAsked asked, ChooseUse use, ChooseParts parts, ChooseDoer doer, StudyRun run)
    {
        (this.asked, this.use, this.parts, this.doer, this.run) = (asked, use, parts, doer, run);
        var spectrum = NamedSpectrum.Of(asked.Class).Spectrum;
        roads = [.. asked.RideSpeeds.Select(speed => new Rides.RideRoad(spectrum, speed, AsPrinted.Tracks))];
        present = new Lazy<double[]>(() => Of(0L, Piece.AsStated, AsPrinted));
    }

    /// <summary>Setups as stated, with their ride; those that do not fit, and everything where no ride counts, as they are.</summary>
    /// <param name="found">What was searched.</param>
    /// <param name="setups">The setups.</param>
    public ImmutableArray<DrivenSetup> Stated(FoundSetups found, IReadOnlyList<DrivenSetup> setups)
    {
        var (wish, told) = (found.Wishes.IndexOf(WishKind.Ride), setups.ToArray());
        if (wish >= 0)
        {
            var before = present.Value;
            ParallelLoop.Each(told.Length, run.Degree, k => told[k] = told[k].Row.IsDriven
                ? told[k] with { Wishes = told[k].Wishes.SetItem(wish, Ratio(Of(told[k].Setup, Piece.AsStated, AsPrinted), before)) }
                : told[k], run.Cancellation);
        }

        return [.. told];
    }

    /// <summary>
    /// A trial whose sound setups have their ride as stated, and in the draws as much more or less than that as they were driven with.
    /// </summary>
    /// <param name="trial">The trial.</param>
    public SetupTrial Of(SetupTrial trial)
    {
        var (found, wish) = (trial.Found, trial.Found.Wishes.IndexOf(WishKind.Ride));
        TriedSetup[] sound = [.. trial.Tried.Skip(1).Where(one => Shortlist.IsSound(one, found.Task.Limits))];
        if (wish < 0 || sound.Length == 0)
        {
            return trial;
        }

        var stated = Stated(found, [.. sound.Select(one => one.Stated)]).ToDictionary(one => one.Setup);
        return trial.With(one => stated.TryGetValue(one.Stated.Setup, out var now) && now.Wishes[wish] / one.Stated.Wishes[wish] is var factor
            && double.IsFinite(factor)
                ? one with { Stated = now, Wishes = one.Wishes.SetItem(wish, [.. one.Wishes[wish].Select(ratio => factor * ratio)]) }
                : one);
    }

    /// <summary>The shortlist with its ride as stated and in the drawn cars; whose the least is may be another's then.</summary>
    /// <param name="trial">What it was taken from.</param>
    /// <param name="entries">The shortlist.</param>
    public ImmutableArray<ShortlistEntry> Of(SetupTrial trial, ImmutableArray<ShortlistEntry> entries)
    {
        var wish = trial.Found.Wishes.IndexOf(WishKind.Ride);
        if (wish < 0 || entries.IsEmpty)
        {
            return entries;
        }

        int[] draws = [.. trial.Numbers.Take(MostDraws)];
        var drawn = new double[draws.Length][];
        ParallelLoop.Each(draws.Length, run.Degree, k =>
        {
            var before = Of(0L, draws[k], AsDrawn);
            drawn[k] = [.. entries.Select(entry => Ratio(Of(entry.Setup, draws[k], AsDrawn), before))];
        }, run.Cancellation);
        var stated = Stated(trial.Found, [.. entries.Select(entry => entry.Tried.Stated)]);
        return Least(wish, [.. entries.Select((entry, k) => entry with
        {
            Tried = entry.Tried with
            {
                Stated = stated[k],
                Wishes = entry.Tried.Wishes.SetItem(wish, [.. drawn.Select(draw => draw[k])]),
            },
        })]);
    }

    // By what is printed.
    private static ImmutableArray<ShortlistEntry> Least(int wish, ImmutableArray<ShortlistEntry> entries)
    {
        double Ride(ShortlistEntry one) =>
            Math.Round(one.Tried.Draws > 0 ? one.Tried.Mean(wish) : one.Tried.Stated.Wishes[wish], 3) is var ride && double.IsNaN(ride)
                ? double.PositiveInfinity : ride;
        var (said, least) = (entries.FirstOrDefault(one => one.Reasons.Contains(ShortlistReason.LeastRide)), entries.MinBy(Ride)!);
        return said is null || Ride(said) <= Ride(least)
            ? entries
            :
            [
                .. entries.Select(one => one == said ? one with { Reasons = one.Reasons.Remove(ShortlistReason.LeastRide) }
                    : one == least ? one with { Reasons = one.Reasons.Add(ShortlistReason.LeastRide) } : one).Where(one => !one.Reasons.IsEmpty),
            ];
    }

    // The weighted mean of the ratios to the car as it is; NaN where one of both has no ride at a speed.
    private double Ratio(double[] now, double[] before) => 1.0
        + (use.Rides.Select((one, k) => one.Weight == 0.0 ? 0.0 : one.Weight * ((now[k] / before[k]) - 1.0)).Sum()
            / use.Rides.Sum(one => one.Weight));

    // Of every random road, in the order of the use cases, m/s²; NaN where the car cannot stand so, or has no ride there.
    private double[] Of(long setup, int draw, RandomOptions options)
    {
        if (parts.Fit(setup) is not Fitted { Car: var car })
        {
            return [.. use.Rides.Select(_ => double.NaN)];
        }

        var (behind, left) = car.Seats.Count > 0
            ? (car.Seats[0].BehindFrontAxle.Si, car.Seats[0].LeftOfMiddle.Si)
            : (0.5 * car.Wheelbase.Si, 0.0);
        return [.. asked.Loads.SelectMany(Under)];

        IEnumerable<double> Under(LoadState load)
        {
            try
            {
                var model = doer.CarOf(draw).ModelOf(car, load);
                return roads.Select(road => RandomResponse.Of(model, road, options, run.Cancellation))
                    .Select(ride => ride.Outcome == RandomOutcome.NotConverged
                        ? double.NaN
                        : ride.Rms(RideSignal.VerticalAcceleration(model, behind, left), Weightings.Wk.Factor))
                    .ToArray();
            }
            catch (RefusedValueException)
            {
                // In this drawn car the setup cannot stand: its trial has counted that against it.
                return roads.Select(_ => double.NaN);
            }
        }
    }
}
