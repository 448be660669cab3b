namespace Heaveline.Drives.Events;

/// <summary>
/// A time at which the car was where a bump lies, going the way in which it is crossed, and no bump was found: one that may have been missed.
/// </summary>
/// <param name="Site">The name of the site.</param>
/// <param name="At">When the car came nearest to it, s since the log's start.</param>
/// <param name="From">When it may have reached it at the earliest, s.</param>
/// <param name="Until">When it may have reached it at the latest, s.</param>
public sealed record MissedPass(string Site, double At, double From, double Until)
{
    // Places are looked at so often, s; a car that comes back sooner has not been away, s.
    private const double Step = 0.2;
    private const double Apart = 5.0;

    /// <summary>
    /// Those of a drive, in time; none without a path. Of sites alone that were found more often than not: what is mostly not found hardly stands out
    /// from the road. Nothing is missed where the log is not read: the whole stay at the bump lies in one part that is covered.
    /// </summary>
    /// <param name="drive">The drive.</param>
    /// <param name="events">Its bumps, those that do not count among them: they were found.</param>
    public static IReadOnlyList<MissedPass> Of(Drive drive, DriveEvents events)
    {
        ArgumentNullException.ThrowIfNull(drive);
        ArgumentNullException.ThrowIfNull(events);
        if (drive.Path is not { } path)
        {
            return [];
        }

        (double Time, GroundPlace Place)[] way =
        [
            .. Enumerable.Range(0, (int)(drive.Vertical.Length / drive.Rate / Step)).Select(i => drive.Time(0) + (i * Step))
                .Select(t => (t, path.At(t)))
                .Where(w => w.Item2 is { } place && double.IsFinite(place.Heading)).Select(w => (w.t, w.Item2!.Value)),
        ];
        return
        [
            .. events.Sites.Where(s => s.Kept > 1 && s.Kind != EventKind.Braking)
                .Select(s => (Site: s, Missed: Over(drive, way, s, events)))
                .Where(s => s.Missed.Count < s.Site.Events.Length).SelectMany(s => s.Missed).OrderBy(m => m.At),
        ];
    }

    private static List<MissedPass> Over(Drive drive, (double Time, GroundPlace Place)[] way, DriveSite site, DriveEvents events)
    {
        var missed = new List<MissedPass>();
        if (site.Place is not { } there)
        {
            return missed;
        }

        var near = way.Where(w => w.Place.IsSame(there)).ToArray();
        for (var (first, i) = (0, 1); i <= near.Length; i++)
        {
            if (i < near.Length && near[i].Time - near[i - 1].Time < Apart)
            {
                continue;
            }

            var stay = near[first..i];
            var (from, until) = (stay[0].Time, stay[^1].Time);
            first = i;
            // A bump beside it, just before or after, may be this one, brought to another site.
            if (drive.Covered.Any(c => drive.Time(c.First) <= from && until <= drive.Time(c.Last))
                && !events.Events.Any(e => e.Onset > from - Apart && e.Onset < until + Apart))
            {
                missed.Add(new MissedPass(site.Name, stay.MinBy(w => w.Place.DistanceTo(there)).Time, from, until));
            }
        }

        return missed;
    }
}
