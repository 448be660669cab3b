using Heaveline.Drives.Events;

namespace Heaveline.Tests.Drives.Lanes;

/// <summary>What a driver who knows the road says of what was found along it: sites named, and what is none rejected.</summary>
internal static class LaneNaming
{
    /// <summary>The settings with the planted crossings that were found named, and what lies at none of them rejected.</summary>
    /// <param name="settings">Those by which it was found.</param>
    /// <param name="found">What was found before anything was named.</param>
    /// <param name="planted">The planted crossings: what each is called and its onset, s.</param>
    public static EventSettings Of(EventSettings settings, DriveEvents found, IEnumerable<(string Site, double Time)> planted)
    {
        var (seen, all) = (found.Events, planted.ToList());
        return settings with
        {
            Sites = [.. all.Where(c => seen.Any(e => Math.Abs(e.Onset - c.Time) < 1.0))],
            Rejected = [.. seen.Where(e => !all.Any(c => Math.Abs(e.Onset - c.Time) < 2.0)).Select(e => e.Onset)],
        };
    }
}
