using System.Collections.Immutable;
using Heaveline.Cars;
using Heaveline.Drives.Events;
using Heaveline.Drives.Identification;
using Heaveline.Models;
using Heaveline.Quantities;

namespace Heaveline.Drives.Recovery;

/// <summary>What a change would do on the very road of a drive. Its differences are to be believed, its levels less.</summary>
public sealed record Forecast
{
    /// <summary>The car before, in words.</summary>
    public required string Car { get; init; }

    /// <summary>The change, in words.</summary>
    public required string Change { get; init; }

    /// <summary>The events, in time.</summary>
    public required ImmutableArray<ForecastPass> Passes { get; init; }

    /// <summary>The headline's change over the passes that count, the mean of its logarithms (–).</summary>
    public required Bracket Headline { get; init; }

    /// <summary>The hit's change over them, likewise (–).</summary>
    public required Bracket Hit { get; init; }

    /// <summary>How many times car and road were drawn for the intervals.</summary>
    public required int Draws { get; init; }

    /// <summary>Every pass of every draw.</summary>
    internal ForecastRows? Rows { get; init; }

    /// <summary>What a change of a car file would do at every pass that a drive's car was identified from.</summary>
    /// <param name="before">The car before.</param>
    /// <param name="after">The changed one.</param>
    /// <param name="load">How both are loaded.</param>
    /// <param name="drive">The drive before the change.</param>
    /// <param name="events">Its bumps.</param>
    /// <param name="found">The car identified from it.</param>
    /// <param name="drawn">
    /// Both cars as the files' doubts leave them possible, drawn together: a function of the draw's number from 0; null: as they stand.
    /// </param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="RefusedValueException">The car was not identified, or does not stand under the load.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static Forecast Of(
        Car before,
        Car after,
        LoadState load,
        Drive drive,
        DriveEvents events,
        CarFromDrive found,
        Func<int, (RideModel Before, RideModel After)>? drawn = null,
        CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        var was = RideModel.Of(before, load);
        var recovery = RecoveredRoad.Recovery(drive, events, found, stop);
        return new Forecasting(found, FeltRoads.Of(recovery, was, stop), stop).Of(was, RideModel.Of(after, load), drawn);
    }

    /// <summary>What a change of springs and dampers would do at every pass, by the car that the drive tells: without a car file.</summary>
    /// <param name="change">The change.</param>
    /// <param name="words">The change in words.</param>
    /// <param name="drive">The drive before the change.</param>
    /// <param name="events">Its bumps.</param>
    /// <param name="found">The car identified from it.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="RefusedValueException">The car was not identified.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static Forecast Of(
        LinearChange change, string words, Drive drive, DriveEvents events, CarFromDrive found, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(change);
        return new LinearForecasting(found, RecoveredRoad.Each(drive, events, found, stop), stop).Of(change, words);
    }

    /// <summary>The same with its sites weighed as a comparison weighs them, so that both speak of the same passes.</summary>
    /// <param name="measure">Of <see cref="ForecastRows.Measured"/> the number that was compared.</param>
    /// <param name="shares">How much each site makes of the measured change; sites that are not among them count for nothing.</param>
    internal Forecast Weighed(int measure, IReadOnlyDictionary<string, double> shares)
    {
        var weights = Weights(shares);
        return !(weights.Sum() > 0.0) ? this
            : measure == 0 ? this with { Headline = Rows!.Whole(0, weights) }
            : this with { Hit = Rows!.Whole(1, weights) };
    }

    /// <summary>The mean of a number of the passes, weighed likewise; of those that count, where no site is weighed.</summary>
    /// <param name="shares">How much each site makes of the measured change.</param>
    /// <param name="of">The number.</param>
    internal double Averaged(IReadOnlyDictionary<string, double> shares, Func<ForecastPass, double> of)
    {
        var weights = Weights(shares);
        weights = weights.Sum() > 0.0 ? weights : [.. Passes.Select(p => p.IsCounted ? 1.0 : 0.0)];
        return Passes.Zip(weights, (pass, weight) => weight > 0.0 ? weight * of(pass) : 0.0).Sum() / weights.Sum();
    }

    private double[] Weights(IReadOnlyDictionary<string, double> shares)
    {
        var counted = Passes.Where(p => p.IsCounted).CountBy(p => p.Site).ToDictionary();
        return [.. Passes.Select(p => p.IsCounted ? Math.Max(shares.GetValueOrDefault(p.Site), 0.0) / counted[p.Site] : 0.0)];
    }

    /// <summary>The forecast beside what was measured.</summary>
    /// <param name="measured">The measured change of the headline (–).</param>
    public ForecastScore Score(Bracket measured) => new(Headline, measured);
}
