using Heaveline.Measures;
using Heaveline.Numerics;

namespace Heaveline.Studies;

/// <summary>
/// A reading that a workshop takes in a minute, and where it parts cars upon which the years have brought something from those upon which they have
/// not.
/// </summary>
public sealed record YearsReading
{
    /// <summary>What is read.</summary>
    public required WorkshopReading Kind { get; init; }

    /// <summary>The limit: m of sinking, or swings.</summary>
    public required double Limit { get; init; }

    /// <summary>Share of the cars with the event whose reading is beyond the limit (–).</summary>
    public required double Found { get; init; }

    /// <summary>Share of the cars without it whose reading is beyond the limit, too (–).</summary>
    public required double Mistaken { get; init; }

    /// <summary>How well it parts them (–): 1 wholly, 0 not at all.</summary>
    public double Parts => Found - Mistaken;

    /// <summary>The limit that parts best; null where there are too few cars of either kind to tell, fewer than one in twenty.</summary>
    /// <param name="kind">What is read.</param>
    /// <param name="readings">The reading of each car in each year.</param>
    /// <param name="happened">Whether the event has come upon it by then.</param>
    internal static YearsReading? Of(WorkshopReading kind, IReadOnlyList<double> readings, IReadOnlyList<bool> happened) =>
        PartingLimit.Of(readings, happened) is not { } at
            ? null
            : new YearsReading { Kind = kind, Limit = at.Limit, Found = at.Found, Mistaken = at.Mistaken };
}
