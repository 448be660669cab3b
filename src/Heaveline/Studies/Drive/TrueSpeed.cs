using Heaveline.Drives;
using Heaveline.Drives.Events;
using Heaveline.Drives.Identification;

namespace Heaveline.Studies;

/// <summary>A drive whose speed record is off, at the speed that the delay between its axles tells.</summary>
/// <param name="Drive">The drive; as it was where the record is right, or cannot be set right.</param>
/// <param name="Events">Its bumps at that speed.</param>
/// <param name="Car">The car fitted to them.</param>
/// <param name="Left">By how much the speed may still be off; null where nothing tells it.</param>
internal sealed record TrueSpeed(Drive Drive, DriveEvents Events, CarFromDrive? Car, SpeedScale? Left)
{
    // Windows and lengths of bumps go by the speed too: again, until nothing is left.
    private const int Most = 4;
    private const double Nothing = 0.002;

    /// <summary>Scales the record where it is off.</summary>
    /// <param name="drive">The drive as it was logged.</param>
    /// <param name="trust">What it is good for.</param>
    /// <param name="events">Its bumps.</param>
    /// <param name="car">The car fitted to them.</param>
    /// <param name="fit">Fits a car to a drive and its bumps.</param>
    /// <param name="stop">Stops it.</param>
    public static TrueSpeed Of(
        Drive drive, Trust trust, DriveEvents events, CarFromDrive? car, Func<Drive, DriveEvents, CarFromDrive?> fit, CancellationToken stop)
    {
        var asIs = new TrueSpeed(drive, events, car, car is null ? null : SpeedScale.Of(car, events));
        if (car is not { IsBelieved: true } || asIs.Left is not { IsTold: true } first)
        {
            return asIs;
        }

        var (found, total, scale) = (asIs, 0.0, first);
        for (var i = 0; i < Most && Math.Abs(scale.Log) > Nothing; i++)
        {
            total += scale.Log;
            var scaled = drive.AtTrueSpeed(scale with { Log = total });
            var bumps = DriveEvents.Of(scaled, trust, events.Settings, stop);
            var again = fit(scaled, bumps);
            found = new TrueSpeed(scaled, bumps, again, scale with { Log = 0.0 });
            if (again is not { IsBelieved: true } || SpeedScale.Of(again, bumps) is not { } rest)
            {
                break;
            }

            scale = rest;
            found = found with { Left = rest };
        }

        return found;
    }
}
