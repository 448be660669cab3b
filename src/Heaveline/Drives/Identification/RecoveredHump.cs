using System.Collections.Immutable;

namespace Heaveline.Drives.Identification;

/// <summary>The hump of a site as the drive tells it: the mean of left and right, zero at both ends, over the front axle's distance.</summary>
public sealed record RecoveredHump
{
    /// <summary>The site.</summary>
    public required string Site { get; init; }

    /// <summary>Distance along the road, m, evenly spaced, shape (n).</summary>
    public required ImmutableArray<double> Distance { get; init; }

    /// <summary>Height, m, shape (n).</summary>
    public required ImmutableArray<double> Height { get; init; }

    /// <summary>Half-width of its 90 % interval, m, shape (n).</summary>
    public required ImmutableArray<double> HalfWidth { get; init; }
}
