using System.Collections.Immutable;
using Heaveline.Quantities;

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

    /// <summary>Passes that it rests on.</summary>
    public required int Passes { get; init; }

    /// <summary>Their slowest and fastest, m/s.</summary>
    public required (double Slowest, double Fastest) Speeds { get; init; }
}
