using System.Collections.Immutable;
using System.Globalization;
using Heaveline.Drives.Events;

namespace Heaveline.Web.Pages.Drives;

/// <summary>The bumps of a site as small multiples, on one scale of time and one of motion.</summary>
/// <param name="Site">The site.</param>
/// <param name="Cards">Its bumps in time.</param>
/// <param name="Reach">What the height of a drawing stands for, both ways from the middle: rad of pitch, or m/s² where there is none.</param>
/// <param name="IsPitch">Whether pitch is drawn; else vertical acceleration.</param>
public sealed record SiteCards(DriveSite Site, ImmutableArray<BumpCard> Cards, double Reach, bool IsPitch)
{
    /// <summary>Width of a drawing, in its units.</summary>
    public const double Width = 200.0;

    /// <summary>Height of a drawing, in its units.</summary>
    public const double Height = 80.0;

    /// <summary>What the width stands for, s: half a second before first touch, and the settling as long as it may be.</summary>
    public const double Span = 5.0;

    private const double Before = 0.5;

    /// <summary>All sites.</summary>
    /// <param name="events">The bumps.</param>
    /// <param name="traces">How the body moved over each.</param>
    public static ImmutableArray<SiteCards> Of(DriveEvents events, IReadOnlyList<EventTraces> traces)
    {
        ArgumentNullException.ThrowIfNull(events);
        var isPitch = traces.Any(t => !t.Pitch.IsEmpty);
        return [.. events.Sites.Select(site =>
        {
            var own = site.Events.Select(e => traces.First(t => t.Event.Number == e.Number)).ToList();
            var counted = own.Where(t => t.Event.IsKept).DefaultIfEmpty(own[0]);
            var reach = Math.Max(1e-9, counted.Max(t => Motion(t, isPitch).Select(Math.Abs).Where(double.IsFinite).DefaultIfEmpty(0.0).Max()));
            return new SiteCards(site, [.. own.Select(t => Card(t, Motion(t, isPitch), reach))], reach, isPitch);
        })];
    }

    private static ImmutableArray<double> Motion(EventTraces traces, bool isPitch) => isPitch ? traces.Pitch : traces.Vertical;

    private static BumpCard Card(EventTraces traces, ImmutableArray<double> motion, double reach) => new(
        traces.Event,
        string.Join(' ', traces.Time.Zip(motion).Where(p => double.IsFinite(p.Second) && p.First <= Span - Before)
            .Select(p => $"{N(X(p.First))},{N((0.5 * Height) - (0.46 * Height * Math.Clamp(p.Second / reach, -1.08, 1.08)))}")),
        X(0.0),
        X(traces.Event.HitUntil - traces.Event.Onset),
        X(traces.Event.SettlingUntil - traces.Event.Onset));

    private static double X(double time) => Width * Math.Clamp(time + Before, 0.0, Span) / Span;

    private static string N(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);
}
