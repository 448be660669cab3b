using Heaveline.Drives.Comparison;
using Heaveline.Drives.Events;

namespace Heaveline.Studies;

/// <summary>Bumps that two drives crossed, with one length and one kind in both.</summary>
internal static class SharedSites
{
    /// <summary>Both drives with the windows and numbers of their common bumps measured anew.</summary>
    /// <param name="before">The drive before.</param>
    /// <param name="after">The drive after.</param>
    /// <param name="matches">The bumps that they have in common.</param>
    /// <param name="stop">Stops it.</param>
    public static (ProvedDrive Before, ProvedDrive After, SiteMatches Matches) Of(
        ProvedDrive before, ProvedDrive after, SiteMatches matches, CancellationToken stop)
    {
        var shapes = matches.All.ToDictionary(m => m.Name, m => EventMaking.ShapesBy(
            before.Events.Shapes.GetValueOrDefault(m.Before.Name, []).Concat(after.Events.Shapes.GetValueOrDefault(m.After.Name, []))));
        before = With(before, matches.All.ToDictionary(m => m.Before.Name, m => shapes[m.Name]), stop);
        after = With(after, matches.All.ToDictionary(m => m.After.Name, m => shapes[m.Name]), stop);
        return (before, after, matches with
        {
            All = [.. matches.All.Select(m => OneKind(m with { Before = Site(before, m.Before), After = Site(after, m.After) }))],
            OnlyBefore = [.. matches.OnlyBefore.Select(s => Site(before, s))],
            OnlyAfter = [.. matches.OnlyAfter.Select(s => Site(after, s))],
        });
    }

    private static ProvedDrive With(ProvedDrive drive, Dictionary<string, double[]> shapes, CancellationToken stop) =>
        drive.Events.Shapes.Count == 0 ? drive : drive with { Events = drive.Events.With(drive.Drive, drive.Trust, shapes, stop) };

    private static DriveSite Site(ProvedDrive drive, DriveSite site) => drive.Events.Sites.FirstOrDefault(s => s.Name == site.Name) ?? site;

    private static SiteMatch OneKind(SiteMatch match)
    {
        var kind = EventMaking.KindOf(match.Before.Events.Concat(match.After.Events));
        return match with { Before = match.Before with { Kind = kind }, After = match.After with { Kind = kind } };
    }
}
