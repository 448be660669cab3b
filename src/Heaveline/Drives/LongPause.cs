using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Drives;

/// <summary>Pauses of a log so long that what lies before and after is no one drive, and would cost memory for nothing.</summary>
internal static class LongPause
{
    /// <summary>A longer pause cuts a log, s: a stop at a counter, not at a light. A proposal of this program.</summary>
    public const double Most = 600.0;

    /// <summary>The longest part of a log between its long pauses; null where it has none.</summary>
    /// <param name="force">The accelerometer.</param>
    /// <param name="story">Gets what was decided.</param>
    public static Stretch? LongestBeside(TimedTrack force, List<StoryLine> story)
    {
        Stretch[] pauses = [.. force.Clock.Gaps.Where(g => g.Length > Most)];
        if (pauses.Length == 0)
        {
            return null;
        }

        double[] starts = [force.Times[0], .. pauses.Select(p => p.To)];
        double[] ends = [.. pauses.Select(p => p.From), force.Times[^1]];
        var longest = starts.Zip(ends, (from, to) => new Stretch(from, to)).MaxBy(p => p.Length);
        var first = pauses[0];
        story.Add(new StoryLine(
            "pause",
            Text(
                $"The log pauses for more than {Most:F0} s, from {first.From:F0} s on for {first.Length:F0} s")
            + (pauses.Length > 1 ? Text($" and {pauses.Length - 1} more times") : "")
            + Text(
                $": the longest part between, {longest.From:F0} to {longest.To:F0} s, is read, the rest is not."),
            IsDoubtful: true));
        return longest;
    }
}
