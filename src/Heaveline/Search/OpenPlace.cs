using System.Collections.Immutable;

namespace Heaveline.Search;

/// <summary>A place of a car whose part may change.</summary>
/// <param name="Name">What it is called ("front spring").</param>
/// <param name="Options">What may stand there, that which stands there now first.</param>
internal sealed record OpenPlace(string Name, ImmutableArray<SetupOption> Options)
{
    /// <summary>
    /// Whether it enters no crossing with both wheels of an axle alike: an anti-roll bar. It is chosen by limits and price, for crossings that are
    /// driven once.
    /// </summary>
    public bool IsSilent { get; init; }

    /// <summary>The options whose strength is known, from the softest to the firmest.</summary>
    public int[] FromSoftToFirm() =>
        [.. Enumerable.Range(0, Options.Length).Where(k => Options[k].Strength is not null).OrderBy(k => Options[k].Strength).ThenBy(k => k)];
}
