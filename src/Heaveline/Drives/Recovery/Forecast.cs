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
        return new Forecasting(found, RecoveredRoad.Each(drive, events, found, stop), stop)
            .Of(RideModel.Of(before, load), RideModel.Of(after, load), drawn);
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

    /// <summary>The forecast beside what was measured.</summary>
    /// <param name="measured">The measured change of the headline (–).</param>
    public ForecastScore Score(Bracket measured) => new(Headline, measured);
}
