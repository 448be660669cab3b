using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Drives;

/// <summary>A log that was pasted behind itself: what was driven once counts once.</summary>
internal static class LogAgain
{
    /// <summary>The part up to where the log begins once more; null where it does not.</summary>
    /// <param name="force">The accelerometer.</param>
    /// <param name="story">Gets what was decided.</param>
    public static Stretch? Before(TimedTrack force, List<StoryLine> story)
    {
        if (ShakenLike.Of(force.Times, force.Values)?.Again() is not { } after)
        {
            return null;
        }

        var part = new Stretch(force.Times[0], force.Times[0] + after);
        story.Add(new StoryLine(
            "again",
            Text($"From {part.To:F0} s on the log holds once more what it holds before: that is read once, {part.From:F0} to {part.To:F0} s."),
            IsDoubtful: true));
        return part;
    }
}
