using System.Globalization;
using Heaveline.Answers;
using Heaveline.Drives.Events;
using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>The bumps of a drive in tables: a table a site, a column a bump; below, the rows of a computed pass.</summary>
public static class EventTable
{
    private const string Page = "guide/what-a-log-is-good-for.md";

    // Bumps side by side: more do not fit a terminal.
    private const int Columns = 8;
    private const string HalfWidth = "-half-width";

    private static readonly Measure<DriveEvent>[] OfEvent =
    [
        Of("event-onset", "front wheels' first touch", In.Seconds, 2, e => e.Onset,
            "When the front wheels first touch the bump, since the log's start: by usual cars driven over usual bumps, before the car is known."),
        Of("event-onset-half-width", "± front wheels' first touch", In.Seconds, 2, e => e.OnsetHalfWidth, "Half-width of that (90 %)."),
        Of("event-speed", "speed there", In.KilometresPerHour, 1, e => e.Speed, "Speed at first touch."),
        Of("event-speed-half-width", "± speed there", In.KilometresPerHour, 1, e => e.SpeedHalfWidth, "Half-width of that (90 %)."),
        Of("event-length", "length of the bump", In.Metres, 1, e => e.IsLengthKnown ? e.Length : double.NaN,
            "Length of the rise or hollow that it looks like; none where it is known neither to half of itself nor to be short."),
        Of("event-length-half-width", "± length of the bump", In.Metres, 1, e => e.IsLengthKnown ? e.LengthHalfWidth : double.NaN,
            "Half-width of that (90 %)."),
        Of("event-hit", "hit lasts", In.Seconds, 2, e => e.HitUntil - e.Onset,
            "From first touch until the rear wheels have left the bump: its length and the wheelbase over the speed."),
        Of("event-settling", "settling is seen for", In.Seconds, 1, e => e.SettlingUntil - e.HitUntil,
            "From the rear wheels' leaving to the next bump, at most 3 s."),
    ];

    private static readonly Measure<Pass>[] OfMotion =
        [
            .. HitCatalogue.All,
            .. SettlingCatalogue.All,
            .. SeatCatalogue.Of(SeatPlace.Of("phone")).Where(m => m.Key is "phone-rms-vertical" or "phone-peak-vertical"),
        ];

    private static readonly HashSet<string> Fewest =
    [
        "event-onset", "event-speed", "event-speed-half-width", "event-length", "event-length-half-width",
        .. new[] { "settling-rms-pitch", "hit-peak-pitch-rate", "hit-peak-pitch-acceleration", "phone-rms-vertical" }
            .SelectMany(key => new[] { key, key + HalfWidth }),
    ];

    /// <summary>All that the tables hold beside the measures of a pass, for the glossary.</summary>
    public static IReadOnlyList<Measure> Measures { get; } = [.. OfEvent, .. OfMotion.Select(m => Half(m))];

    /// <summary>A table for each site, or several where many bumps lie there.</summary>
    /// <param name="events">The bumps.</param>
    public static IReadOnlyList<FactTable> Of(DriveEvents events)
    {
        ArgumentNullException.ThrowIfNull(events);
        // What was driven over once stands side by side.
        (string Title, DriveEvent[] Shown)[] sites =
            [.. events.Sites.Select(site => ($"{FirstLetter.Raised(site.Name)}, bump", site.Events.ToArray()))];
        var once = sites.Where(s => s.Shown.Length == 1 && s.Title.StartsWith("Site ", StringComparison.Ordinal)).ToArray();
        var apart = once.Length > 1 ? once : [];
        return
        [
            .. sites.Except(apart).SelectMany(s => Of(s.Title, s.Shown)),
            .. Of("Sites with one bump, bump", [.. apart.Select(s => s.Shown[0]).OrderBy(e => e.Number)]),
        ];
    }

    /// <summary>The same with the rows alone that matter most, each with its half-width.</summary>
    /// <param name="events">The bumps.</param>
    public static IReadOnlyList<FactTable> Short(DriveEvents events) => [.. Of(events).Select(t => t.Only(Fewest)).Where(t => t.Rows.Count > 0)];

    private static IEnumerable<FactTable> Of(string title, DriveEvent[] shown)
    {
        foreach (var part in shown.Chunk(Columns))
        {
            var table = new FactTable(title, [.. part.Select(e => e.Number.ToString(CultureInfo.InvariantCulture))]);
            table.Add(OfEvent, part);
            foreach (var measure in part.SelectMany(e => e.Numbers.All).Select(n => n.Measure).DistinctBy(m => m.Key))
            {
                EventNumber?[] numbers = [.. part.Select(e => e.Numbers.All.FirstOrDefault(n => n.Measure.Key == measure.Key))];
                table.Add(measure, numbers.Select(n => n?.Value ?? double.NaN));
                table.Add(Half(measure), numbers.Select(n => double.IsFinite(n?.Value ?? double.NaN) ? n!.HalfWidth : double.NaN));
            }

            yield return table;
        }
    }

    private static Measure<DriveEvent> Half(Measure measure) => new(
        measure.Key + HalfWidth, "± " + measure.Label, measure.Unit, measure.Digits, _ => double.NaN,
        $"Half-width (90 %) of {measure.Label} as a measurement: noise, first touch and length of the bump, the gyro's gain, "
        + "the slow pitch that is taken off. Not what one drive over the bump differs from another.")
    { Page = Page };

    private static Measure<DriveEvent> Of(string key, string label, ShownUnit unit, int digits, Func<DriveEvent, double> of, string says) =>
        new(key, label, unit, digits, of, says) { Page = Page };
}
