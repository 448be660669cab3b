using System.Globalization;
using Heaveline.Drives;
using Heaveline.Drives.Events;
using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>The bumps of each site one over the other, a panel a site.</summary>
public static class EventsFigure
{
    private const int MostSites = 6;
    private const int MostNamed = 5;
    private static readonly Ink[] Inks = [Ink.First, Ink.Second, Ink.Third, Ink.Fourth, Ink.Fifth];

    /// <summary>Over time from the front wheels' first touch.</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="events">Its bumps.</param>
    public static Figure OverTime(Drive drive, DriveEvents events) =>
        Of(drive, events, new Axis { Label = "time from first touch", Unit = "s" }, t => t.Time, "time");

    /// <summary>Over distance from there.</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="events">Its bumps.</param>
    public static Figure OverDistance(Drive drive, DriveEvents events) =>
        Of(drive, events, new Axis { Label = "distance from first touch", Unit = "m" }, t => t.Distance, "distance");

    private static Figure Of(Drive drive, DriveEvents events, Axis axis, Func<EventTraces, IReadOnlyList<double>> places, string over)
    {
        ArgumentNullException.ThrowIfNull(drive);
        ArgumentNullException.ThrowIfNull(events);
        var traces = EventTraces.Of(drive, events).ToDictionary(t => t.Event.Number);
        DriveSite[] sites = [.. events.Sites.Where(s => s.Kept > 0)];
        if (sites.Length == 0)
        {
            throw new RefusedValueException(
                "bumps that count", "0", "1 or more", "Nothing of this drive can be laid over each other: see why its bumps do not count.");
        }

        DriveSite[] shown = [.. sites.OrderByDescending(s => s.Kept).Take(MostSites).OrderBy(s => s.Events[0].Number)];
        var hasPitch = !drive.PitchRate.IsEmpty;
        return new Figure
        {
            Title = $"The bumps of each site over {over}",
            AltText = $"A panel for each site: {(hasPitch ? "pitch" : "vertical acceleration")} over {over} for every bump "
                + "there that counts, one over the other.",
            Caption = string.Create(
                CultureInfo.InvariantCulture,
                $"Bumps that count, from half a second before the front wheels' first touch to the end of the settling. ")
                + (hasPitch
                    ? string.Create(CultureInfo.InvariantCulture, $"Pitch above {EventNumbers.Slow:F1} Hz.")
                    : "There is no pitch in this log.")
                + (sites.Length > shown.Length
                    ? string.Create(CultureInfo.InvariantCulture, $" The {shown.Length} sites with most bumps of {sites.Length}.")
                    : ""),
            SignNote = hasPitch ? "Pitch is nose-down positive (ISO 8855)." : "Vertical acceleration is positive upward.",
            Size = FigureSize.Page,
            SharedX = axis,
            Panels = [.. shown.Select(site => Panel(site, traces, places, hasPitch))],
        };
    }

    private static ChartPanel Panel(
        DriveSite site, Dictionary<int, EventTraces> traces, Func<EventTraces, IReadOnlyList<double>> places, bool hasPitch)
    {
        DriveEvent[] kept = [.. site.Events.Where(e => e.IsKept)];
        var unit = hasPitch ? In.Degrees : In.MetresPerSecondSquared;
        var (slow, fast) = (In.KilometresPerHour.Of(kept.Min(e => e.Speed)), In.KilometresPerHour.Of(kept.Max(e => e.Speed)));
        return new ChartPanel
        {
            Title = string.Create(
                CultureInfo.InvariantCulture,
                $"{FirstLetter.Raised(site.Name)}, {kept.Length} bump{(kept.Length == 1 ? "" : "s")}, {slow:F0} km/h to {fast:F0} km/h"),
            Y = new Axis { Label = hasPitch ? "pitch" : "vertical", Unit = unit.Symbol },
            Traces = [.. kept.Select((e, k) =>
            {
                var of = traces[e.Number];
                double[] ys = [.. (hasPitch ? of.Pitch : of.Vertical).Select(unit.Of)];
                var name = kept.Length <= MostNamed ? string.Create(CultureInfo.InvariantCulture, $"{e.Number}") : "";
                return Trace.From(name, [.. places(of)], ys, Pen.Of(Inks[k % Inks.Length]) with { Width = 0.8 });
            })],
        };
    }
}
