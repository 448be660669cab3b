using System.Collections.Immutable;

namespace Heaveline.Drives.Events;

/// <summary>How the body moved over one bump, sample by sample from its first touch on.</summary>
public sealed record EventTraces
{
    private const double Before = 0.5;

    /// <summary>The bump.</summary>
    public required DriveEvent Event { get; init; }

    /// <summary>Time from the front wheels' first touch, s, shape (n).</summary>
    public required ImmutableArray<double> Time { get; init; }

    /// <summary>Distance from there, m, shape (n).</summary>
    public required ImmutableArray<double> Distance { get; init; }

    /// <summary>Pitch angle above 0.1 Hz, nose down, rad; empty where there is no pitch.</summary>
    public required ImmutableArray<double> Pitch { get; init; }

    /// <summary>Vertical acceleration at the phone, m/s².</summary>
    public required ImmutableArray<double> Vertical { get; init; }

    /// <summary>The traces of all bumps, in their order.</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="events">Its bumps.</param>
    public static IReadOnlyList<EventTraces> Of(Drive drive, DriveEvents events)
    {
        ArgumentNullException.ThrowIfNull(drive);
        ArgumentNullException.ThrowIfNull(events);
        var curves = MotionCurves.Of(drive, events.Settings.Phone?.Left ?? 0.0);
        return [.. events.Events.Select(e =>
        {
            var first = Math.Max(0, (int)Math.Ceiling((e.Onset - Before - drive.Start) * drive.Rate));
            var last = Math.Min(drive.Vertical.Length - 1, (int)Math.Floor((e.SettlingUntil - drive.Start) * drive.Rate));
            var part = first..(Math.Max(last, first) + 1);
            ImmutableArray<double> time = [.. Enumerable.Range(first, Math.Max(last, first) + 1 - first).Select(i => drive.Time(i) - e.Onset)];
            return new EventTraces
            {
                Event = e,
                Time = time,
                Distance = [.. time.Select(t => e.Speed * t * (1.0 + (0.5 * e.SpeedChange * t)))],
                Pitch = curves.Pitch.Length > 0 ? [.. curves.Pitch[part]] : [],
                Vertical = [.. curves.Vertical[part]],
            };
        })];
    }
}
