using System.Globalization;
using Heaveline.Answers;
using Heaveline.Drives.Events;
using Heaveline.Numerics;
using Heaveline.Quantities;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Studies;

/// <summary>The bumps of a drive in few lines: a line a bump that counts, or a line a site where there are many, and why others
/// do not count.</summary>
internal static class BumpLines
{
    // Twelve passes over one hump are what is asked for: each has its line.
    private const int Most = 12;

    /// <summary>The lines; none where there is no bump.</summary>
    /// <param name="events">The bumps.</param>
    /// <param name="units">The reader's units.</param>
    public static IEnumerable<string> Of(DriveEvents events, ReaderUnits units)
    {
        DriveEvent[] kept = [.. events.Kept];
        if (kept.Length > 0)
        {
            yield return "";
            yield return kept.Length <= Most ? Bumps(kept, units) : Sites(events, units);
        }

        foreach (var line in NotCounted(events))
        {
            yield return units.Text(line);
        }
    }

    /// <summary>Bumps by their numbers.</summary>
    public static string Named(IEnumerable<DriveEvent> bumps)
    {
        string[] numbers = [.. bumps.Select(e => e.Number.ToString(CultureInfo.InvariantCulture))];
        return numbers.Length == 1 ? $"bump {numbers[0]}" : $"bumps {string.Join(", ", numbers.SkipLast(1))} and {numbers[^1]}";
    }

    private static string Bumps(DriveEvent[] kept, ReaderUnits units)
    {
        var wide = kept[^1].Number.ToString(CultureInfo.InvariantCulture).Length;
        string Head(DriveEvent e) =>
            $"{e.Number.ToString(CultureInfo.InvariantCulture).PadLeft(wide)}  {Named(e.Site, e.Kind)}";
        var table = new FactTable("Bumps that count", [.. kept.Select(Head)]);
        Add(table, "event-onset", "at", kept, e => e.Onset);
        Add(table, "event-speed", "speed", kept, e => e.Speed);
        return Lines(Numbers(table, [.. kept.Select(e => new[] { e })]), [.. kept.Select(_ => "")], units);
    }

    private static string Sites(DriveEvents events, ReaderUnits units)
    {
        DriveSite[] sites = [.. events.Sites.Where(s => s.Kept > 0).OrderByDescending(s => s.Kept).Take(Most).OrderBy(s => s.Events[0].Number)];
        DriveEvent[][] kept = [.. sites.Select(s => s.Events.Where(e => e.IsKept).ToArray())];
        var table = new FactTable("Sites (medians)", [.. sites.Select(s => Named(s.Name, s.Kind))]);
        Add(table, "event-speed", "speed from", kept, k => k.Min(e => e.Speed));
        Add(table, "event-speed", "to", kept, k => k.Max(e => e.Speed));
        var more = events.Sites.Count(s => s.Kept > 0) - sites.Length;
        string Counted(DriveSite site) => site.Events.Length == 1 ? "driven over once" : Text($"{site.Kept} of {site.Events.Length} count");
        return Lines(Numbers(table, kept), [.. sites.Select(Counted)], units)
            + (more > 0 ? Text($"\n{more} more sites with --all.") : "");
    }

    // "Orchard dip" says itself what it is.
    private static string Named(string site, EventKind kind) =>
        site.EndsWith(EventWords.Kind(kind), StringComparison.OrdinalIgnoreCase) ? site : $"{site}, {EventWords.Kind(kind)}";

    private static FactTable Numbers(FactTable table, DriveEvent[][] bumps)
    {
        double Mid(DriveEvent[] some, Func<DriveEvent, double> of) =>
            some.Select(of).Where(double.IsFinite).ToArray() is { Length: > 0 } all ? Middle.Of(all) : double.NaN;
        void Row(string key, string heading, Func<EventNumber, double> of)
        {
            if (bumps.SelectMany(b => b).Select(e => e.Numbers.For(key)).OfType<EventNumber>().FirstOrDefault() is { } any)
            {
                var measure = any.Measure;
                table.Add(
                    measure.Key, heading, measure.Unit.Symbol, measure.Format,
                    bumps.Select(b => measure.Shown(Mid(b, e => e.Numbers.For(key) is { } n && double.IsFinite(n.Value) ? of(n) : double.NaN))));
            }
        }

        Row("settling-rms-pitch", "RMS pitch, 1st s", n => n.Value);
        Row("settling-rms-pitch", "±", n => n.HalfWidth);
        Row("hit-peak-pitch-acceleration", "hit: pitch acc.", n => n.Value);
        Row("rms-vertical", "RMS vertical", n => n.Value);
        return table;
    }

    private static void Add<TSubject>(FactTable table, string key, string heading, TSubject[] of, Func<TSubject, double> value)
    {
        var measure = EventTable.Measures.First(m => m.Key == key);
        table.Add(measure.Key, heading, measure.Unit.Symbol, measure.Format, of.Select(o => measure.Shown(value(o))));
    }

    private static string Lines(FactTable table, string[] remarks, ReaderUnits units) =>
        FactText.Across(table.In(units), remarks).TrimEnd('\r', '\n');

    // Alike reasons in one line; each with its numbers under --all.
    private static IEnumerable<string> NotCounted(DriveEvents events) => events.Events.Where(e => !e.IsKept).GroupBy(e => Short(e.Reason))
        .Select(alike =>
        FirstLetter.Raised(Many([.. alike])) + (alike.Count() == 1 ? " does" : " do") + Text($" not count: {alike.Key}."));

    private static string Many(DriveEvent[] bumps) => bumps.Length <= Most ? Named(bumps) : Text($"{bumps.Length} bumps");

    private static string Short(string reason)
    {
        var end = new[] { ':', '.' }.Select(c => reason.IndexOf(c, StringComparison.Ordinal)).Append(reason.IndexOf(" at ", StringComparison.Ordinal))
            .Where(i => i > 0).DefaultIfEmpty(reason.Length).Min();
        return char.ToLowerInvariant(reason[0]) + reason[1..end];
    }
}
