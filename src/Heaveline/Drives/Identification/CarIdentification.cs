using System.Collections.Immutable;

namespace Heaveline.Drives.Identification;

/// <summary>The car identified from windows of a drive, and what a drive that was never driven would tell of a car.</summary>
public static class CarIdentification
{
    /// <summary>Identifies the car.</summary>
    /// <param name="windows">Windows of one drive.</param>
    /// <param name="known">What is known before it.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static CarFromDrive Of(IReadOnlyList<DriveWindow> windows, IdentificationKnown known, CancellationToken stop = default) =>
        throw new NotImplementedException();

    /// <summary>
    /// The intervals that a drive would give if the car were this one, from the expected Fisher information; each estimate's value is the car's own.
    /// </summary>
    /// <param name="car">The car.</param>
    /// <param name="drive">The drive.</param>
    /// <param name="known">What is known before it.</param>
    /// <param name="first">A drive already driven whose information counts too; null: none.</param>
    public static ImmutableArray<CarEstimate> Expected(
        LinearCar car, PlannedDrive drive, IdentificationKnown known, CarFromDrive? first = null) => throw new NotImplementedException();
}
