using System.Collections.Immutable;
using Heaveline.Figures;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Studies;

/// <summary>What is asked of a comparison: several cars over one road, at one or several speeds.</summary>
public sealed record CompareAsked
{
    /// <summary>Most passes of one comparison, cars times speeds: each is kept with its traces, a megabyte or so.</summary>
    public const int MostPasses = 400;

    /// <summary>The cars, at least two; the first is what the others are held against.</summary>
    public required ImmutableArray<LoadedCar> Cars
    {
        get;
        init => field = Drawable.Any(value).Length >= 2
            ? value
            : throw new RefusedValueException(
                "cars of a comparison", $"{Drawable.Any(value).Length}", "at least 2", "Give another car or a variant.");
    }

    /// <summary>The road.</summary>
    public required Road Road { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); }

    /// <summary>Speeds, m/s, rising, at least one; each 0.5 to 120.</summary>
    public required ImmutableArray<double> Speeds { get; init => field = Drawable.Some(value, "Give at least one speed."); }

    /// <summary>How many cars are drawn within the stated doubts, for every number's interval; null for none.</summary>
    public int? Draws { get; init; }

    /// <summary>Seed of the draws.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>That the cars were named the other way round, a sentence, see <see cref="BaseFirst"/>; blank where they were not.</summary>
    public string Turned { get; init => field = value ?? ""; } = "";
}
