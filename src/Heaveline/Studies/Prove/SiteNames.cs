using Heaveline.Drives.Comparison;
using Heaveline.Drives.Events;

namespace Heaveline.Studies;

/// <summary>
/// What the sites of one of two drives are called where both are spoken of: each drive numbers its own, so that one name may mean two places.
/// </summary>
/// <param name="Matches">The bumps that both crossed.</param>
/// <param name="IsAfter">Whether they are of the drive after; else of the one before.</param>
internal sealed record SiteNames(SiteMatches Matches, bool IsAfter)
{
    /// <summary>
    /// A site's own name, beside it the one that the comparison has for it where that is another; a site of the drive after alone whose
    /// name is another place's says so.
    /// </summary>
    /// <param name="own">Its name in its own drive.</param>
    public string Of(string own)
    {
        if (Matches.All.FirstOrDefault(m => Mine(m).Name == own) is { } match)
        {
            return match.Name == own ? own
                : match.Name == Other(match).Name ? $"{own} ({match.Name} of the drive {(IsAfter ? "before" : "after")})"
                : $"{own} ({match.Name} of the two drives)";
        }

        return IsAfter && Matches.All.Select(m => m.Before).Concat(Matches.OnlyBefore).Any(s => s.Name == own)
            ? $"{own} (not {own} of the drive before)"
            : own;
    }

    /// <summary>The bumps of that drive with their sites called so.</summary>
    /// <param name="events">The bumps.</param>
    public DriveEvents Of(DriveEvents events) => events with
    {
        Events = [.. events.Events.Select(e => e with { Site = Of(e.Site) })],
        Sites = [.. events.Sites.Select(s => s with { Name = Of(s.Name), Events = [.. s.Events.Select(e => e with { Site = Of(e.Site) })] })],
    };

    /// <summary>What must be known of the names before the drive's numbers are read; null where its own are those of the comparison.</summary>
    /// <param name="events">The bumps of the drive.</param>
    public string? Caution(DriveEvents events)
    {
        string[] others = [.. events.Sites.Select(s => (Own: s.Name, Said: Of(s.Name))).Where(s => s.Own != s.Said).Select(s => s.Said)];
        return others.Length == 0 ? null
            : $"Every drive numbers its own sites. Beside its own name, in brackets: {string.Join("; ", others)}.";
    }

    private DriveSite Mine(SiteMatch match) => IsAfter ? match.After : match.Before;

    private DriveSite Other(SiteMatch match) => IsAfter ? match.Before : match.After;
}
