using System.Collections.Immutable;
using Heaveline.Drives.Events;
using Heaveline.Drives.Identification;
using Heaveline.Drives.Planning;
using Heaveline.Numerics;
using Heaveline.Quantities;
using static Heaveline.Quantities.InvariantText;

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

    // A short knock faster than this tells no car. Set after it was seen on Larch Lane, and only there: with the passes over its joint at 45 km/h
    // the twin and the forecast of the humps fail; why is not known. Planned planks are driven no faster.
    private static double FastestKnock => PlankWish.Fastest;

    // Doubt of a speed that is not known.
    private const double Unknown = 0.3;

    /// <summary>The windows; none where the log shows no car, however many bumps it met: too few samples a second, or nothing that drives.</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="events">Its bumps.</param>
    /// <param name="trust">What it is good for: what it drops is no rough road; null: all counts that is sampled often enough.</param>
    public static ImmutableArray<DriveWindow> Of(Drive drive, DriveEvents events, Trust? trust = null)
    {
        ArgumentNullException.ThrowIfNull(drive);
        ArgumentNullException.ThrowIfNull(events);
        if (IsSlow(drive) || (trust?.For(TrustUse.Car).Level == TrustLevel.None && !drive.PitchRate.IsEmpty))
        {
            return [];
        }

        // A log without pitch is told apart from one without bumps where its car is identified.
        DriveWindow[] bumps = [.. events.Kept.Where(e => WhyNot(drive, events, e) is null).Select(e => About(drive, events, e))];
        return bumps.Length >= CarJudgement.FewestEvents ? [.. bumps] : [.. bumps, .. Rough(drive, events, trust)];
    }

    /// <summary>The bumps that count and yet tell no car, each with the reason, half a sentence.</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="events">Its bumps.</param>
    public static ImmutableArray<(DriveEvent Bump, string Reason)> LeftOut(Drive drive, DriveEvents events)
    {
        ArgumentNullException.ThrowIfNull(drive);
        ArgumentNullException.ThrowIfNull(events);
        return [.. events.Kept.Select(e => (Bump: e, Reason: WhyNot(drive, events, e)!)).Where(e => e.Reason is not null)];
    }

    /// <summary>How long the hump of every site is, m.</summary>
    public static ImmutableDictionary<string, double> Humps(DriveEvents events)
    {
        ArgumentNullException.ThrowIfNull(events);
        return events.Sites.Where(s => s.Length > 0.0).ToImmutableDictionary(s => s.Name, s => s.Length);
    }

    /// <summary>The standard deviation of a bump's speed by the log, as a share of it.</summary>
    internal static double SpreadOf(DriveEvent bump) => Math.Clamp(bump.SpeedHalfWidth / (Gaussian.Ninety * bump.Speed), 0.01, Unknown);

    private static bool IsSlow(Drive drive) => drive.Clock.Rate < Trust.LeastRate;

    private static bool IsAlone(DriveEvent one, DriveEvents events) => events.Events.All(
        e => e.Number == one.Number || e.HitUntil < one.Onset - Apart || e.Onset > one.Onset + After);

    // Why a bump that counts tells no car, half a sentence; null where it does.
    private static string? WhyNot(Drive drive, DriveEvents events, DriveEvent bump)
    {
        var (first, count) = Samples(drive, bump);
        return bump.Kind == EventKind.OneSide ? "on one side"
            : bump.Speed > FastestKnock && events.Sites.First(s => s.Name == bump.Site).Length < DriveEvent.Short
                ? Text($"a short knock at more than {In.KilometresPerHour.Of(FastestKnock):F0} km/h")
            : !IsAlone(bump, events) ? "another bump from 1.5 s before to 4 s after"
            : !Holds(drive, first, count) ? "a gap or the log's end from 1 s before to 4 s after"
            : !(bump.Speed > 0.0) ? "without a speed"
            : IsSlow(drive) ? Text($"fewer than {Trust.LeastRate:F0} samples a second")
            : null;
    }

    private static (int First, int Count) Samples(Drive drive, DriveEvent bump) =>
        ((int)Math.Round((bump.Onset - Before - drive.Start) * drive.Rate), (int)Math.Round((Before + After) * drive.Rate));

    private static DriveWindow About(Drive drive, DriveEvents events, DriveEvent bump)
    {
        var (first, count) = Samples(drive, bump);
        return Cut(drive, first, count) with
        {
            Before = bump.Onset - drive.Time(first),
            // The detector's own half-width is for usual bumps; the fit may move farther.
            BeforeSpread = Math.Clamp(bump.OnsetHalfWidth / Gaussian.Ninety, 0.15, 0.5),
            Speed = bump.Speed,
            SpeedSpread = events.HasSpeed ? SpreadOf(bump) : Unknown,
            Site = bump.Site,
            IsHump = events.Sites.First(s => s.Name == bump.Site).Kind == EventKind.Hump,
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
