using System.Collections.Immutable;

namespace Heaveline.Search;

/// <summary>What a search is given: the setups, what is wished of them, and whoever drives them.</summary>
internal sealed record SearchTask
{
    /// <summary>The setups.</summary>
    public required SetupSpace Space { get; init; }

    /// <summary>What is wished, those that are driven for first.</summary>
    public required ImmutableArray<WishKind> Wishes { get; init; }

    /// <summary>The numbers of the use cases.</summary>
    public required ImmutableArray<UseColumn> Columns { get; init; }

    /// <summary>What must hold.</summary>
    public required ImmutableArray<SetupLimit> Limits { get; init; }

    /// <summary>Drives the setups.</summary>
    public required IPassDoer Doer { get; init; }

    /// <summary>Why a setup is none before it is driven, as <see cref="SetupRow.Refusal"/>; told by its parts and its axles alone.</summary>
    public required Func<long, int> Standing { get; init; }

    /// <summary>Whether nobody can say that a setup fits: where it is equal to one that does, the other is told first.</summary>
    public Func<long, bool> Unsure { get; init; } = _ => false;

    /// <summary>Up to so many crossings all setups are driven.</summary>
    public long DrivenWhole { get; init; } = 50_000;

    /// <summary>After so many rounds a search stops, whatever is left.</summary>
    public int MostRounds { get; init; } = 40;

    /// <summary>The seed of what is drawn.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>How many threads.</summary>
    public int Degree { get; init; } = 1;

    /// <summary>How many pieces of work are asked for at once, at least one for each thread.</summary>
    public int PiecesAtOnce { get => Math.Max(field, Degree); init; }

    /// <summary>Told the share done (–).</summary>
    public IProgress<double>? Progress { get; init; }

    /// <summary>Stops the search: what was found so far is the answer.</summary>
    public CancellationToken Cancellation { get; init; }

    /// <summary>How many use cases are driven for each setup.</summary>
    public int Cases => Columns.Select(c => c.Name).Distinct().Count();
}
