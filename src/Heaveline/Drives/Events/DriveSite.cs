using System.Collections.Immutable;

namespace Heaveline.Drives.Events;

/// <summary>A place of the road that was driven over, once or often.</summary>
public sealed record DriveSite
{
    /// <summary>Its name.</summary>
    public required string Name { get; init; }

    /// <summary>Whether its name is a user's; else its number in the drive.</summary>
    internal bool IsNamed { get; init; }

    /// <summary>Length of the rise or hollow along the road, m: the median over its bumps that count.</summary>
    public required double Length { get; init; }

    /// <summary>What it looks like, mostly.</summary>
    public required EventKind Kind { get; init; }

    /// <summary>Its bumps in time, those that do not count among them.</summary>
    public required ImmutableArray<DriveEvent> Events { get; init; }

    /// <summary>Where it lies, the mean over its bumps; null where that is not known. Never printed nor drawn.</summary>
    public GroundPlace? Place => GroundPlace.Mean(Events.Select(e => e.Place));

    /// <summary>How many of them count.</summary>
    public int Kept => Events.Count(e => e.IsKept);
}
