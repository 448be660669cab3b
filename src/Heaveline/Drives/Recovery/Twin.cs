using System.Collections.Immutable;
using Heaveline.Cars;
using Heaveline.Drives.Identification;
using Heaveline.Quantities;

namespace Heaveline.Drives.Recovery;

/// <summary>
/// A car file scaled until its own passes over the recovered road, at the speeds of the drive and through the same estimator, give the numbers that
/// the drive gave. What the estimator makes of springs that are not straight is thereby the same on both sides.
/// </summary>
public sealed record Twin
{
    /// <summary>The car with its springs, dampers, friction and inertia scaled.</summary>
    public required Car Car { get; init; }

    /// <summary>The factors, in the order of <see cref="TwinScale"/>.</summary>
    public required ImmutableArray<TwinFactor> Factors { get; init; }

    /// <summary>The numbers that both were brought to agree in.</summary>
    public required ImmutableArray<TwinNumber> Numbers { get; init; }

    /// <summary>Steps that it took.</summary>
    public required int Steps { get; init; }

    /// <summary>Passes computed.</summary>
    public required int Passes { get; init; }

    /// <summary>Sum of the squared differences left, each over its standard deviation: about as many as numbers less factors.</summary>
    public required double Misfit { get; init; }

    /// <summary>Why nothing of it is to be believed; blank otherwise.</summary>
    public string Refusal { get; init; } = "";

    /// <summary>Whether its factors are to be believed.</summary>
    public bool IsBelieved => Refusal.Length == 0;

    /// <summary>The factor of a thing; null where there is no twin.</summary>
    public TwinFactor? Of(TwinScale scale) => Factors.FirstOrDefault(f => f.Scale == scale);

    /// <summary>The twin of a car file.</summary>
    /// <param name="car">The car file's car.</param>
    /// <param name="load">How it was loaded.</param>
    /// <param name="found">The car identified from the drive.</param>
    /// <param name="windows">The windows that it was identified from.</param>
    /// <param name="phoneLeft">Where the phone lay left of the middle, m.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="RefusedValueException">Nothing was identified; the car cannot stand as it is scaled.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static Twin Of(
        Car car, LoadState load, CarFromDrive found, IReadOnlyList<DriveWindow> windows, double phoneLeft = 0.0, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(found);
        ArgumentNullException.ThrowIfNull(windows);
        return found.Known is not null
            ? new TwinSearch(car, load, found, windows, phoneLeft, stop).Run()
            : throw new RefusedValueException("car of the drive", "not identified", "identified", "Give a drive that tells its car.");
    }
}
