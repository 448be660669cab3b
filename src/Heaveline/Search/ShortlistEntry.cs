using System.Collections.Immutable;

namespace Heaveline.Search;

/// <summary>A setup of the shortlist.</summary>
/// <param name="Tried">What it came to.</param>
/// <param name="Reasons">Why it is there, at least one.</param>
internal sealed record ShortlistEntry(TriedSetup Tried, ImmutableArray<ShortlistReason> Reasons)
{
    /// <summary>Its number.</summary>
    public long Setup => Tried.Stated.Setup;
}
