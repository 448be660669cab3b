using System.Collections.Immutable;
using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Quantities;
using Heaveline.Roads;
using MathNet.Numerics.Distributions;

namespace Heaveline.Ties;

/// <summary>
/// The car that its ties speak of: dampers, friction, bump stops (and springs, where swings or heights were read) of the car file moved until its own
/// passes show what was read. Least squares in travel, one-sided for a tie that went as far as it could; every doubt of the car file, of the readings
/// and of the speeds goes in as what was known before.
/// </summary>
public sealed record TieFit
{
    /// <summary>A number is said when the readings have halved its doubt.</summary>
    public const double LeastLearned = 0.5;

    // From so strong a correlation on, two numbers of an axle stand for one another (common practice, no source).
    private const double TradedFrom = 0.5;

    // Rarer than this by chance and the readings are not of this car (common practice, no source).
    private const double Rarest = 0.01;

    /// <summary>The numbers.</summary>
    public required ImmutableArray<TieEstimate> Estimates { get; init; }

    /// <summary>Correlation of the estimates after the readings, shape (estimates, estimates), row by row.</summary>
    public required ImmutableArray<ImmutableArray<double>> Correlations { get; init; }

    /// <summary>Every reading beside the car file's and the fitted car's.</summary>
    public required ImmutableArray<TieMatch> Matches { get; init; }

    /// <summary>Chance of a worse fit if the readings are of such a car (–).</summary>
    public required double Chance { get; init; }

    /// <summary>Whether the readings may be of this car on this obstacle.</summary>
    public bool IsBelieved => Chance >= Rarest;

    /// <summary>Whether they would be believed with front and rear mixed up; false where they are believed as given.</summary>
    public required bool FitsSwapped { get; init; }

    /// <summary>
    /// The pass that would tell most of what is left open, of those that may be advised; null where nothing is open, or none of them would tell it.
    /// </summary>
    public required TieAdvice? Advice { get; init; }

    /// <summary>What the passes that were read asked of the car.</summary>
    public required ImmutableArray<TieCrossing> Driven { get; init; }

    /// <summary>Whether any pass more over this obstacle may be advised.</summary>
    public required bool MayBeCrossed { get; init; }

    /// <summary>The car file's car.</summary>
    public required RideModel Stated { get; init; }

    /// <summary>Fits the readings.</summary>
    /// <param name="car">The car file's car, with its doubts.</param>
    /// <param name="load">The load of the passes.</param>
    /// <param name="road">The obstacle.</param>
    /// <param name="readings">What was read.</param>
    /// <param name="degree">How many groups of passes run at once.</param>
    /// <param name="stop">Stops the work.</param>
    /// <exception cref="RefusedValueException">
    /// The car cannot stand so, a pass of it leaves the model's range, or what was read does not go with such a car.
    /// </exception>
    public static TieFit Of(Car car, LoadState load, Road road, TieReadings readings, int degree = 1, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(load);
        ArgumentNullException.ThrowIfNull(road);
        ArgumentNullException.ThrowIfNull(readings);
        TieCheck.Refuse(car, load, road, readings);
        var model = new TieModel(car, load, road, readings, degree, stop);
        var solved = TieSolution.Of(model);
        var chance = ChanceOf(solved);
        var believed = chance >= Rarest;
        var estimates = Estimated(model, solved, believed);
        RideModel[] cars = [model.Stated, .. believed && model.CarAt(solved.Point) is { } fitted ? new[] { fitted } : []];
        var choice = TieCrossing.Of(cars, road, TieMore.Choice, stop);
        return new TieFit
        {
            Estimates = estimates,
            Correlations = [.. Enumerable.Range(0, estimates.Length).Select(i => Enumerable.Range(0, estimates.Length)
                .Select(j => solved.Covariance[i, j] / Math.Sqrt(solved.Covariance[i, i] * solved.Covariance[j, j])).ToImmutableArray())],
            Matches = solved.Matches,
            Chance = chance,
            FitsSwapped = !believed && Swapped(car, load, road, readings, degree, stop),
            Advice = believed ? TieMore.Of(model, solved, estimates, choice) : null,
            Driven = TieCrossing.Of(cars, road, [.. readings.Passes.Select(p => p.Speed.Si).Distinct().Order()], stop),
            MayBeCrossed = choice.Any(c => c.IsWithin),
            Stated = model.Stated,
        };
    }

    private static bool Swapped(Car car, LoadState load, Road road, TieReadings readings, int degree, CancellationToken stop)
    {
        try
        {
            return ChanceOf(TieSolution.Of(new TieModel(car, load, road, readings.Swapped, degree, stop))) >= Rarest;
        }
        catch (RefusedValueException)
        {
            return false;
        }
    }

    // A tie past which the damper went tells nothing more: it is no degree of freedom.
    private static double ChanceOf(TieSolution solved)
    {
        var freedom = solved.Matches.Count(m => !m.IsAtLeast || m.ByFit < m.Read);
        return freedom == 0 ? 1.0 : 1.0 - ChiSquared.CDF(freedom, solved.Misfit);
    }

    private static ImmutableArray<TieEstimate> Estimated(TieModel model, TieSolution solved, bool believed) =>
    [
        .. model.Scales.Select((scale, i) =>
        {
            var deviation = Math.Sqrt(solved.Covariance[i, i]);
            double At(double coordinate) => scale.ValueAt(scale.Spread * coordinate);
            return new TieEstimate
            {
                Number = scale.Number,
                End = scale.End,
                File = scale.File,
                Before = (At(-Gaussian.Ninety), At(Gaussian.Ninety)),
                Value = At(solved.Point[i]),
                Low = At(solved.Point[i] - (Gaussian.Ninety * deviation)),
                High = At(solved.Point[i] + (Gaussian.Ninety * deviation)),
                Learned = Math.Clamp(1.0 - deviation, 0.0, 1.0),
                Refusal = RefusalOf(model, solved, i, believed),
            };
        }),
    ];

    private static TieRefusal RefusalOf(TieModel model, TieSolution solved, int i, bool believed)
    {
        var scale = model.Scales[i];
        if (!believed)
        {
            return TieRefusal.Misfit;
        }

        if (1.0 - Math.Sqrt(solved.Covariance[i, i]) >= LeastLearned)
        {
            return TieRefusal.None;
        }

        if (scale.Number != TieNumber.Spring && !model.Readings.Has(scale.End))
        {
            return TieRefusal.NoTie;
        }

        if (scale.Number == TieNumber.BumpStop && !(model.PastStop(solved.Point, scale.End) > 0.0))
        {
            return TieRefusal.NoContact;
        }

        return model.Scales.Select((other, j) => (other, j)).Any(o => o.j != i && o.other.End == scale.End
            && Math.Abs(solved.Covariance[i, o.j]) > TradedFrom * Math.Sqrt(solved.Covariance[i, i] * solved.Covariance[o.j, o.j]))
            ? TieRefusal.Traded
            : TieRefusal.NotLearned;
    }
}
