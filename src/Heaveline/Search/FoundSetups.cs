using System.Collections.Immutable;

namespace Heaveline.Search;

/// <summary>What a search found: every setup that was driven, and those that nothing beats.</summary>
internal sealed record FoundSetups
{
    /// <summary>The task.</summary>
    public required SearchTask Task { get; init; }

    /// <summary>What the numbers count against.</summary>
    public required UseScores Scores { get; init; }

    /// <summary>The row of the car as it is.</summary>
    public required SetupRow Present { get; init; }

    /// <summary>The wishes that anything counts for, those that are driven for first.</summary>
    public required ImmutableArray<WishKind> Wishes { get; init; }

    /// <summary>The setups that were driven, in the order of their numbers.</summary>
    public required ImmutableArray<DrivenSetup> Driven { get; init; }

    /// <summary>Those of them that nothing beats, the least of the first wish first.</summary>
    public required ImmutableArray<DrivenSetup> Front { get; init; }

    /// <summary>Those near the front: beaten by less than the margin, or on it.</summary>
    public required ImmutableArray<DrivenSetup> Near { get; init; }

    /// <summary>
    /// How many setups each reason is against, by its number, before any was driven: those alike but for silent places count once, as in
    /// <see cref="Within"/>.
    /// </summary>
    public required ImmutableSortedDictionary<int, long> RefusedStanding { get; init; }

    /// <summary>How many crossings were to be driven for: setups alike but for silent places count once.</summary>
    public required long Within { get; init; }

    /// <summary>Whether all of these were driven.</summary>
    public required bool IsWhole { get; init; }

    /// <summary>Whether the choice at silent places was made by limits and price: of setups alike but for these one was driven.</summary>
    public bool AreSilentChosen { get; init; }

    /// <summary>The rounds of the search; empty where all were driven.</summary>
    public ImmutableArray<SearchRound> Rounds { get; init; } = [];

    /// <summary>How many setups were still near the guessed front when the last round had ended; 0 where it went on until nothing was left.</summary>
    public int LeftNear { get; init; }

    /// <summary>What looking at those left out found; null where all were driven or it was not come to.</summary>
    public AuditResult? Audit { get; init; }

    /// <summary>Whether it was stopped before its end.</summary>
    public bool IsStopped { get; init; }

    /// <summary>The car as it is among those driven.</summary>
    public DrivenSetup AsItIs => Driven.First(one => one.Setup == 0);
}
