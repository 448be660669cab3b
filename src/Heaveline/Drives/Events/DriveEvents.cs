using System.Collections.Immutable;

namespace Heaveline.Drives.Events;

/// <summary>The bumps of a drive, and the places they belong to.</summary>
public sealed record DriveEvents
{
    /// <summary>All bumps in time, those that do not count among them, with their reasons.</summary>
    public required ImmutableArray<DriveEvent> Events { get; init; }

    /// <summary>The sites, in the order in which they were first met.</summary>
    public required ImmutableArray<DriveSite> Sites { get; init; }

    /// <summary>What was decided with.</summary>
    public required EventSettings Settings { get; init; }

    /// <summary>Whether the speed is known; else it is a rough start value.</summary>
    public required bool HasSpeed { get; init; }

    /// <summary>What the user said of bumps that is not heeded.</summary>
    internal UnmetInstants Unmet { get; init; } = new();

    /// <summary>What may serve another look at the same drive; null where nothing does.</summary>
    internal SeenBumps? Seen { get; init; }

    /// <summary>Of each site by its name, the log weights of the shapes by every pass that counts.</summary>
    internal IReadOnlyDictionary<string, ImmutableArray<double[]>> Shapes { get; init; } =
        ImmutableDictionary<string, ImmutableArray<double[]>>.Empty;

    /// <summary>Those that count.</summary>
    public IEnumerable<DriveEvent> Kept => Events.Where(e => e.IsKept);

    /// <summary>Finds, times, sorts and measures the bumps of a drive.</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="trust">What it is good for.</param>
    /// <param name="settings">What a user knows and decided; null: nothing.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static DriveEvents Of(Drive drive, Trust trust, EventSettings? settings = null, CancellationToken stop = default) =>
        Of(drive, trust, settings ?? new EventSettings(), null, stop);

    /// <summary>The same to the bit, sooner where the bumps were looked for before.</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="trust">What it is good for.</param>
    /// <param name="settings">What a user knows and decided.</param>
    /// <param name="former">Its bumps, looked for with other settings or the same; null: none.</param>
    /// <param name="stop">Stops it.</param>
    internal static DriveEvents Of(Drive drive, Trust trust, EventSettings settings, DriveEvents? former, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(drive);
        ArgumentNullException.ThrowIfNull(trust);
        ArgumentNullException.ThrowIfNull(settings);
        return new EventMaking(drive, trust, settings, former?.Seen, stop).Made();
    }

    /// <summary>The same bumps, some sites with shapes that another drive over them has a say in: windows and numbers are measured anew.</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="trust">What it is good for.</param>
    /// <param name="shapes">Log weights of the shapes by the names of sites.</param>
    /// <param name="stop">Stops it.</param>
    internal DriveEvents With(Drive drive, Trust trust, IReadOnlyDictionary<string, double[]> shapes, CancellationToken stop) =>
        new EventMaking(drive, trust, Settings, Seen, stop, shapes).Made();
}
