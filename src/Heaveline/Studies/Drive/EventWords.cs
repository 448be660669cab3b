using Heaveline.Answers;
using Heaveline.Drives.Events;
using Heaveline.Numerics;
using Heaveline.Quantities;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Studies;

/// <summary>What is said of a drive's bumps.</summary>
internal static class EventWords
{
    private const int MostSites = 12;
    private const int MostDropped = 6;

    /// <summary>What was found, in a sentence or two.</summary>
    public static string Found(DriveEvents events)
    {
        var (all, kept) = (events.Events.Length, events.Kept.Count());
        if (all == 0)
        {
            return "No bump stands out from the road.";
        }

        // What a user put in was not found.
        var added = events.Events.Count(e => e.ByHand && e.Score == 0.0);
        var found = all - added;
        var what = added == 0 ? Text($"{Bumps(found)} {Were(found)} found")
            : found == 0 ? Text($"No bump was found, {added} {Were(added)} put in by hand")
            : Text($"{Bumps(found)} {Were(found)} found and {added} put in by hand");
        return Text($"{what}{(added == 0 ? "" : ",")} at {Sites(events.Sites.Length)}{Once(events)}; ")
            + Text($"{(kept == all ? "all count" : Text($"{kept} count{(kept == 1 ? "s" : "")}"))}.");
    }

    /// <summary>A sentence for each site, and for each bump that does not count.</summary>
    public static IEnumerable<Sentence> Of(DriveEvents events, DriveAdvice advice)
    {
        foreach (var site in events.Sites.Where(IsTold).OrderByDescending(s => s.Kept).Take(MostSites).OrderBy(s => s.Events[0].Number))
        {
            yield return new Sentence($"site-{site.Name.Replace(' ', '-')}", Said(site, events.HasSpeed));
        }

        var silent = events.Sites.Count(s => s.Kept > 0) - Math.Min(events.Sites.Count(IsTold), MostSites);
        if (silent > 0)
        {
            yield return new Sentence(
                "sites-more",
                Text($"{Sites(silent)}{(silent < events.Sites.Length ? " more" : "")} with a bump that counts ")
                + Text($"{(silent == 1 ? "stands" : "stand")} in the tables."));
        }

        DriveEvent[] dropped = [.. events.Events.Where(e => !e.IsKept)];
        foreach (var e in dropped.Take(MostDropped))
        {
            yield return new Sentence($"event-{e.Number}", Text($"Bump {e.Number} at t = {e.Onset:F1} s does not count. {e.Reason}"));
        }

        if (dropped.Length > MostDropped)
        {
            yield return new Sentence(
                "events-more", Text($"{dropped.Length - MostDropped} more do not count; each with its reason {advice.Reasons}."));
        }
    }

    /// <summary>Where the bumps' numbers must be doubted.</summary>
    /// <param name="events">The bumps.</param>
    /// <param name="advice">To whom it is said.</param>
    /// <param name="hasRecord">Whether the log has a speed, used or not.</param>
    public static IEnumerable<string> Cautions(DriveEvents events, DriveAdvice advice, bool hasRecord = false)
    {
        foreach (var sentence in InstantWords.Cautions(events))
        {
            yield return sentence;
        }

        if (events.Events.IsEmpty)
        {
            yield break;
        }

        if (FastHump.Caution(events, advice: advice) is { } fast)
        {
            yield return fast;
        }

        if (events.Settings.Wheelbase is null)
        {
            yield return Text($"The wheelbase is not given: {EventSettings.UsualWheelbase:F1} m was taken. ")
                + "The rear wheels follow by it: with another car the hit ends earlier or later, and the settling's numbers are others. "
                + advice.Wheelbase;
        }

        if (!events.HasSpeed)
        {
            yield return (hasRecord ? "The log's speed is not used" : "There is no speed of this drive")
                + ": it was guessed from the spacing of the axles' knocks (± 25 %), or taken as 25 km/h ± 60 % where they do not repeat.";
        }

        if (events.Kept.Any(e => double.IsFinite(e.Numbers.Headline)))
        {
            yield return Text(
                $"Pitch angles are what lies above {EventNumbers.Slow:F1} Hz, pitch accelerations what lies below {EventNumbers.Fast:F0} Hz; ")
                + "a computed pass has both whole. Half-widths (90 %) are of the measurement, not what one drive over a bump differs from another.";
        }
    }

    /// <summary>What a bump looks like.</summary>
    public static string Kind(EventKind kind) => kind switch
    {
        EventKind.Hump => "hump",
        EventKind.SharpEdge => "sharp edge",
        EventKind.Dip => "dip",
        EventKind.OneSide => "bump on one side",
        _ => "braking",
    };

    // Driven over more than once, or named.
    private static bool IsTold(DriveSite site) => site.Kept > 1 || (site.Kept == 1 && site.IsNamed);

    private static string Said(DriveSite site, bool hasSpeed)
    {
        DriveEvent[] kept = [.. site.Events.Where(e => e.IsKept)];
        var (slow, fast) = (In.KilometresPerHour.Of(kept.Min(e => e.Speed)), In.KilometresPerHour.Of(kept.Max(e => e.Speed)));
        var speeds = !hasSpeed
            ? ""
            : Math.Round(slow) == Math.Round(fast) ? Text($" at {slow:F0} km/h") : Text($" at {slow:F0} km/h to {fast:F0} km/h");
        double[] settling = [.. kept.Select(e => e.Numbers.Headline).Where(double.IsFinite)];
        double[] known = [.. kept.Where(e => e.LengthHalfWidth <= 0.5 * e.Length).Select(e => e.Length)];
        var length = known.Length > 0 ? Text($" about {Middle.Of(known):F1} m long")
            : kept.Any(e => e.IsLengthKnown) ? Text($" less than {DriveEvent.Short:F1} m long")
            : "";
        var count = kept.Length == site.Events.Length ? "" : Text($", of {site.Events.Length} found");
        return Text($"{FirstLetter.Raised(site.Name)}: a {Kind(site.Kind)}{length}, {Bumps(kept.Length)} that ")
            + Text($"count{(kept.Length == 1 ? "s" : "")}{speeds}{count}")
            + (settling.Length == 0 ? "."
                : Text($"; RMS pitch in the first second of the settling ")
                    + Text($"{In.Degrees.Of(Middle.Of(settling)):F2}°{(settling.Length > 1 ? " (median)" : "")}."));
    }

    // Sites of one bump are no repetitions.
    private static string Once(DriveEvents events)
    {
        var (once, all) = (events.Sites.Count(s => s.Events.Length == 1), events.Sites.Length);
        return once == 0 || all == 1 ? ""
            : once == all ? ", each driven over once"
            : Text($", {once} of them driven over once");
    }

    private static string Were(int count) => count == 1 ? "was" : "were";

    private static string Bumps(int count) => Text($"{count} bump{(count == 1 ? "" : "s")}");

    private static string Sites(int count) => Text($"{count} site{(count == 1 ? "" : "s")}");
}
