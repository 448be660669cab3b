using Heaveline.Drives.Comparison;

namespace Heaveline.Studies;

/// <summary>Of a drive the bumps that another crossed too.</summary>
internal static class CrossedBumps
{
    // One pass tells no bump apart from the road about it.
    private const int FewestPasses = 2;

    /// <summary>A drive with those bumps alone that both drives crossed and that this one crossed twice: they tell the car and the road.</summary>
    /// <param name="drive">The drive before.</param>
    /// <param name="matches">The sites that both crossed.</param>
    public static ProvedDrive Of(ProvedDrive drive, SiteMatches matches)
    {
        var sites = matches.All.Where(m => m.Before.Kept >= FewestPasses).Select(m => m.Before.Name).ToHashSet(StringComparer.Ordinal);
        return drive with
        {
            Car = null,
            Events = drive.Events with
            {
                Events =
                [
                    .. drive.Events.Events.Select(
                        e => !e.IsKept || sites.Contains(e.Site) ? e : e with { Reason = "Not crossed often enough." }),
                ],
            },
        };
    }
}
