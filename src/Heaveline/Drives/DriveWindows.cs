using System.Collections.Immutable;
using Heaveline.Drives.Events;
using Heaveline.Drives.Identification;

namespace Heaveline.Drives;

/// <summary>
/// The windows of a drive from which its car is identified: one about each bump that counts, a second before to four after it; where these are fewer
/// than four, stretches of five seconds of rough road between bumps as well.
/// </summary>
public static class DriveWindows
{
    private const double Before = 1.0;
    private const double After = 4.0;

    // Another bump that is met nearer before its end swings the car within the window.
    private const double Apart = 1.5;

    // Rough road: slower or less steady than this tells nothing of a road's waves.
    private const double Slowest = 4.0;
    private const double Steady = 0.10;

    // Five minutes of rough road; more would cost time and tell little.
    private const int Most = 60;

    // Doubt of a speed that is not known.
    private const double Unknown = 0.3;

    /// <summary>The windows.</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="events">Its bumps.</param>
    /// <param name="trust">What it is good for: what it drops is no rough road; null: all counts.</param>
    public static ImmutableArray<DriveWindow> Of(Drive drive, DriveEvents events, Trust? trust = null)
    {
        ArgumentNullException.ThrowIfNull(drive);
        ArgumentNullException.ThrowIfNull(events);
        DriveWindow[] bumps = [.. events.Kept.Where(e => e.Kind != EventKind.OneSide && IsAlone(e, events)).Select(e => About(drive, events, e))
            .OfType<DriveWindow>()];
        return bumps.Length >= CarJudgement.FewestEvents ? [.. bumps] : [.. bumps, .. Rough(drive, events, trust)];
    }

    /// <summary>How long the hump of every site is, m.</summary>
    public static ImmutableDictionary<string, double> Humps(DriveEvents events)
    {
        ArgumentNullException.ThrowIfNull(events);
        return events.Sites.Where(s => s.Length > 0.0).ToImmutableDictionary(s => s.Name, s => s.Length);
    }

    /// <summary>The standard deviation of a bump's speed by the log, as a share of it.</summary>
    internal static double SpreadOf(DriveEvent bump) => Math.Clamp(bump.SpeedHalfWidth / (1.645 * bump.Speed), 0.01, Unknown);

    private static bool IsAlone(DriveEvent one, DriveEvents events) => events.Events.All(
        e => e.Number == one.Number || e.HitUntil < one.Onset - Apart || e.Onset > one.Onset + After);

    private static DriveWindow? About(Drive drive, DriveEvents events, DriveEvent bump)
    {
        var (first, count) = ((int)Math.Round((bump.Onset - Before - drive.Start) * drive.Rate), (int)Math.Round((Before + After) * drive.Rate));
        return !Holds(drive, first, count) || !(bump.Speed > 0.0) ? null : Cut(drive, first, count) with
        {
            Before = bump.Onset - drive.Time(first),
            // The detector's own half-width is for usual bumps; the fit may move farther.
            BeforeSpread = Math.Clamp(bump.OnsetHalfWidth / 1.645, 0.15, 0.5),
            Speed = bump.Speed,
            SpeedSpread = events.HasSpeed ? SpreadOf(bump) : Unknown,
            Site = bump.Site,
            Event = bump.Number,
        };
    }

    private static List<DriveWindow> Rough(Drive drive, DriveEvents events, Trust? trust)
    {
        var (found, count) = (new List<DriveWindow>(), (int)Math.Round((Before + After) * drive.Rate));
        if (drive.Speed.IsEmpty)
        {
            return found;
        }

        foreach (var (from, to) in drive.Covered)
        {
            for (var first = from; first + count <= to + 1; first += count)
            {
                var (start, end) = (drive.Time(first), drive.Time(first + count));
                var speed = drive.Speed.AsSpan(first, count);
                var (slow, fast, mean) = (double.PositiveInfinity, 0.0, 0.0);
                foreach (var v in speed)
                {
                    (slow, fast, mean) = (Math.Min(slow, v), Math.Max(fast, v), mean + (v / count));
                }

                if (slow >= Slowest && fast - slow <= Steady * mean
                    && !events.Events.Any(e => e.Onset < end && e.SettlingUntil > start)
                    && trust?.Dropped.Any(d => d.Part.From < end && d.Part.To > start) != true)
                {
                    found.Add(Cut(drive, first, count) with { Speed = mean });
                }
            }
        }

        // Evenly over the drive where there are more.
        return found.Count <= Most ? found : [.. Enumerable.Range(0, Most).Select(k => found[k * found.Count / Most])];
    }

    private static bool Holds(Drive drive, int first, int count) => drive.Covered.Any(c => c.First <= first && first + count <= c.Last + 1);

    private static DriveWindow Cut(Drive drive, int first, int count) => new()
    {
        Rate = drive.Rate,
        Vertical = drive.Vertical.Slice(first, count),
        PitchRate = drive.PitchRate.IsEmpty ? [] : drive.PitchRate.Slice(first, count),
        Speed = 1.0,
    };
}
