using Heaveline.Drives;
using Heaveline.Drives.Events;
using Heaveline.Drives.Identification;

namespace Heaveline.Studies;

/// <summary>One of two drives that are compared.</summary>
/// <param name="Drive">The drive on the car's axes.</param>
/// <param name="Trust">What its log is good for.</param>
/// <param name="Events">Its bumps.</param>
public sealed record ProvedDrive(Drive Drive, Trust Trust, DriveEvents Events)
{
    /// <summary>The car that it tells, where that is known already; null: it is worked out where it is asked for.</summary>
    internal CarFromDrive? Car { get; init; }

    /// <summary>Reads a log.</summary>
    /// <param name="log">The log.</param>
    /// <param name="settings">What is known of the drive.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="Quantities.RefusedValueException">Gravity is missing, or nothing of the log is long enough.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static ProvedDrive Of(Log log, EventSettings settings, CancellationToken stop)
    {
        var drive = Drive.Of(log, stop);
        var trust = Trust.Of(drive, stop);
        return new ProvedDrive(drive, trust, DriveEvents.Of(drive, trust, settings, stop));
    }
}
