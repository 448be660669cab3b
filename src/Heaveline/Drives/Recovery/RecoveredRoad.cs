using System.Collections.Immutable;
using Heaveline.Drives.Events;
using Heaveline.Drives.Identification;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Drives.Recovery;

/// <summary>
/// The road of a site as a drive's body felt it: the hump that all passes share, and about it the mean of the roughness that one pass met, both
/// tracks averaged. Waves longer than <see cref="LongestWave"/> are not seen: no grade, no drift.
/// </summary>
public sealed record RecoveredRoad
{
    /// <summary>The site.</summary>
    public required string Site { get; init => field = Checked.NotBlank(value, "Name the site."); }

    /// <summary>Distance from the first contact of the front axle with the hump, m, growing, shape (n).</summary>
    public required ImmutableArray<double> Distance { get; init; }

    /// <summary>Height, m, shape (n).</summary>
    public required ImmutableArray<double> Height { get; init; }

    /// <summary>Half-width of the height, 90 %, m, shape (n).</summary>
    public required ImmutableArray<double> HalfWidth { get; init; }

    /// <summary>Where the hump begins and ends, m.</summary>
    public required (double From, double To) Hump { get; init; }

    /// <summary>The shortest wave that is true, m.</summary>
    public required double ShortestWave { get; init; }

    /// <summary>The longest wave that is true, m.</summary>
    public required double LongestWave { get; init; }

    /// <summary>Speed of the pass whose roughness it is, m/s.</summary>
    public required double Speed { get; init; }

    /// <summary>The number of that pass's event.</summary>
    public required int Event { get; init; }

    /// <summary>Passes that its hump rests on.</summary>
    public required int Passes { get; init; }

    /// <summary>Their slowest and fastest, m/s.</summary>
    public required (double Slowest, double Fastest) Speeds { get; init; }

    /// <summary>The road, the same in both tracks, with its hump as its obstacle; distances from its first point.</summary>
    public Road Road
    {
        get
        {
            var first = Distance[0];
            // From its first point on, as a file of it is read.
            double[] distances = [.. Distance.Select(x => x - first)];
            return Road.FromMeasured(Site, distances, Height, null) with { Event = new RoadEvent(Hump.From - first, Hump.To - first) };
        }
    }

    /// <summary>The road of a site: its hump, and the roughness of the pass in the middle of its speeds.</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="events">Its bumps.</param>
    /// <param name="found">The car identified from it.</param>
    /// <param name="site">The site.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="RefusedValueException">The car was not identified, or no pass of the site is among those it rests on.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static RecoveredRoad Of(Drive drive, DriveEvents events, CarFromDrive found, string site, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(drive);
        ArgumentNullException.ThrowIfNull(events);
        ArgumentNullException.ThrowIfNull(found);
        var recovery = Recovery(drive, events, found, stop);
        FittedWindow[] passes = [.. recovery.Passes.Where(p => p.Site == site).OrderBy(p => p.Speed)];
        return passes.Length > 0
            ? recovery.Of(passes[passes.Length / 2])
            : throw new RefusedValueException(
                "site", $"'{site}'", "one whose bumps tell the car: " + string.Join(", ", found.Humps.Select(h => h.Site)), "Name one of these.");
    }

    /// <summary>The road of every pass that the car was identified from, each with its own roughness, in time.</summary>
    /// <exception cref="RefusedValueException">The car was not identified.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    internal static ImmutableArray<RecoveredRoad> Each(Drive drive, DriveEvents events, CarFromDrive found, CancellationToken stop)
    {
        var recovery = Recovery(drive, events, found, stop);
        return [.. recovery.Passes.OrderBy(p => p.Event).Select(recovery.Of)];
    }

    /// <summary>What tells the roads of a drive.</summary>
    /// <exception cref="RefusedValueException">The car was not identified.</exception>
    internal static RoadRecovery Recovery(Drive drive, DriveEvents events, CarFromDrive found, CancellationToken stop) => found.Known is not null
        ? new(drive, events, found, stop)
        : throw new RefusedValueException("car of the drive", "not identified", "identified", "The road is told by the car that feels it.");
}
