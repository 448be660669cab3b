using System.Collections.Immutable;
using Heaveline.Cars;
using Heaveline.Figures;
using Heaveline.Parts;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Studies;

/// <summary>
/// What is asked when parts are to be chosen: for which car, of which lists, for which roads, speeds and loads, within which limits.
/// </summary>
public sealed record ChooseAsked
{
    /// <summary>The car as it is.</summary>
    public required Car Car { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); }

    /// <summary>What can be had.</summary>
    public required ImmutableArray<PartsList> Lists { get; init => field = value.IsDefault ? [] : value; }

    /// <summary>The places whose parts may change.</summary>
    public ImmutableArray<PartPlace> Open { get; init => field = Drawable.Some(value, "Open at least one place."); } = Usual;

    /// <summary>What may go to some of them; to the others whatever the lists have for them.</summary>
    public ImmutableArray<ChooseFilter> Filters { get; init; } = [];

    /// <summary>The free range of a place; null for the parts of the lists.</summary>
    internal ChooseRange? RangeAt(PartPlace place) => Filters.FirstOrDefault(filter => filter.Place == place)?.Range;

    /// <summary>Whether any place has one.</summary>
    internal bool HasRanges => Filters.Any(filter => filter.Range is not null);

    /// <summary>What is wished small; empty for all of it that can be told.</summary>
    public ImmutableArray<ChooseWish> Wishes
    {
        get;
        init => field = value.IsEmpty || value.Contains(ChooseWish.Settling)
            ? value
            : throw new RefusedValueException("wishes", "without settling", "with it", "Settling is always the first wish.");
    } = [];

    /// <summary>The obstacles.</summary>
    public required ImmutableArray<ChooseRoad> Roads { get; init => field = Drawable.Some(value, "Give at least one obstacle."); }

    /// <summary>
    /// Whether the obstacles are the usual ones: those speeds of theirs are left out at which the car as it is does not get across.
    /// </summary>
    public bool IsUsualUse { get; init; }

    /// <summary>Speeds over obstacles that were left out so, in words.</summary>
    public ImmutableArray<string> NotCrossed { get; init; } = [];

    /// <summary>The random road on which the ride counts.</summary>
    public RoadClass Class { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); } = RoadClass.C;

    /// <summary>Speeds on it, m/s; empty where the ride does not count.</summary>
    public ImmutableArray<double> RideSpeeds { get; init; } = [];

    /// <summary>The loads with which the ride counts, by name; empty for all that count.</summary>
    public ImmutableArray<string> RideLoads { get; init; } = [];

    /// <summary>The loads that count, at least one.</summary>
    public required ImmutableArray<LoadState> Loads { get; init => field = Drawable.Some(value, "Give at least one load."); }

    /// <summary>What must hold.</summary>
    public ChooseLimits Limits { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); } = new();

    /// <summary>In how many drawn cars the shortlist is driven where doubts are stated, 10 to 10 000.</summary>
    public int Draws { get; init => field = (int)Checked.Within(value, 10.0, 1e4, "200 tell whether a limit holds in nine cars of ten."); } = 200;

    /// <summary>Seed of the draws.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>Up to so many crossings every setup is driven.</summary>
    internal long DrivenWhole { get; init; } = 50_000;

    /// <summary>The places that are open where nothing else is said: springs, dampers and anti-roll bars.</summary>
    public static ImmutableArray<PartPlace> Usual { get; } =
        [PartPlace.FrontSpring, PartPlace.RearSpring, PartPlace.FrontDamper, PartPlace.RearDamper, PartPlace.FrontBar, PartPlace.RearBar];
}
