using System.Collections.Immutable;
using Heaveline.Doubts;
using Heaveline.Measures;
using Heaveline.Search;

namespace Heaveline.Studies;

/// <summary>All that a choice of parts has come to.</summary>
internal sealed record ChooseFindings
{
    /// <summary>What was asked.</summary>
    public required ChooseAsked Asked { get; init; }

    /// <summary>The use cases.</summary>
    public required ChooseUse Use { get; init; }

    /// <summary>The setups as parts.</summary>
    public required ChooseParts Parts { get; init; }

    /// <summary>The setups that were driven.</summary>
    public required FoundSetups Found { get; init; }

    /// <summary>The best of them in drawn cars.</summary>
    public required SetupTrial Trial { get; init; }

    /// <summary>Whether the car or a part states doubts, so that cars were drawn.</summary>
    public required bool AreDoubtsStated { get; init; }

    /// <summary>The car as it is under every load.</summary>
    public required ChooseStood Stood { get; init; }

    /// <summary>The car as it is standing under the fullest load of the use cases.</summary>
    public required CarAtRest Full { get; init; }

    /// <summary>The least tyre loads of the car as it is.</summary>
    public required ChooseGrip Grip { get; init; }

    /// <summary>The shortlist, the best first; empty where nothing is worth buying.</summary>
    public required ImmutableArray<ChooseTold> List { get; init; }

    /// <summary>What each changed place takes off the first wish in the best setup, as ratios that add up; empty where it is not told.</summary>
    public ImmutableArray<(int Place, double Part)> Shares { get; init; } = [];

    /// <summary>
    /// The best setup with one place one part softer or firmer, or where that is not said as it is, as driven in the car as stated.
    /// </summary>
    public ImmutableArray<(int Place, DrivenSetup Setup)> Aside { get; init; } = [];

    /// <summary>Why the refused setups that are told are no choice: of which stop, over what, under which load; by their numbers.</summary>
    public ImmutableDictionary<long, string> Where { get; init; } = ImmutableDictionary<long, string>.Empty;

    /// <summary>The same of one setup of each reason, by the reasons' numbers.</summary>
    public ImmutableDictionary<int, string> Instances { get; init; } = ImmutableDictionary<int, string>.Empty;

    /// <summary>Whether what is told of the ride is what the question of the ride tells; else it is what the search went by.</summary>
    public bool IsRidden { get; init; }

    /// <summary>What each setup of the shortlist changes besides, with how sure that is; empty without draws.</summary>
    public ImmutableArray<ChooseSide> Sides { get; init; } = [];

    /// <summary>Whose doubt makes most of the spread of the best setup's first wish, greatest first.</summary>
    public ImmutableArray<VarianceShare> Doubts { get; init; } = [];

    /// <summary>
    /// The refused setup that would have the least of the first wish, where that is less than the best's; null where there is none.
    /// </summary>
    public DrivenSetup? Barred { get; init; }

    /// <summary>
    /// The setup with the least of the first wish that may be chosen, whatever the draws say, the cheapest of equals; null where none may.
    /// </summary>
    public DrivenSetup? Least => Found.Front.Where(one => one.Setup != 0L).ToArray() is { Length: > 0 } all
        ? all.Where(one => one.Wishes[0] <= all.Min(other => other.Wishes[0]) + Shortlist.Untold)
            .OrderBy(one => Parts.Space.Price(one.Setup)).ThenBy(one => Parts.Space.Changed(one.Setup)).ThenBy(one => one.Setup).First()
        : null;
}
