using System.Collections.Immutable;

namespace Heaveline.Drives.Recovery;

/// <summary>
/// At which speeds over a site the car of a drive pitches least afterwards, and which speed its frequency ratio suits: pitch is the root mean square
/// over the first second after the rear wheels have left the bump, of the linear car over the bump as the drive tells it.
/// </summary>
public sealed record SiteSpeed
{
    /// <summary>The site.</summary>
    public required string Site { get; init; }

    /// <summary>The speeds that were looked at, m/s: those driven and a quarter beyond.</summary>
    public required (double Slowest, double Fastest) Range { get; init; }

    /// <summary>The speed of least pitch among them.</summary>
    public required FoundSpeed Least { get; init; }

    /// <summary>Whether the least lies between the ends of the range rather than at one of them.</summary>
    public required bool IsLeastWithin { get; init; }

    /// <summary>The speed of most pitch among them.</summary>
    public required FoundSpeed Most { get; init; }

    /// <summary>Whether the most lies between the ends.</summary>
    public required bool IsMostWithin { get; init; }

    /// <summary>
    /// Speeds at which no other frequency ratio about the same mean, damping ratios kept, pitches less: those that the car's own ratio suits.
    /// </summary>
    public required ImmutableArray<FoundSpeed> Suited { get; init; }

    /// <summary>
    /// Where none is suited: whether a larger ratio pitches less at all of the speeds (true), a smaller one (false), or now one, now the other
    /// (null).
    /// </summary>
    public bool? WantsLarger { get; init; }

    /// <summary>Speeds of the curve, m/s, shape (n).</summary>
    public required ImmutableArray<double> Speeds { get; init; }

    /// <summary>Pitch over the second at each of them, rad RMS, shape (n).</summary>
    public required ImmutableArray<double> Pitch { get; init; }
}
