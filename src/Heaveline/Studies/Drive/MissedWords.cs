using Heaveline.Drives.Events;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Studies;

/// <summary>Passes that may have been missed, in words.</summary>
internal static class MissedWords
{
    private const int MostSites = 4;
    private const int MostTimes = 4;

    /// <summary>A sentence for each site, the most often missed first.</summary>
    /// <param name="missed">The passes.</param>
    public static IEnumerable<string> Of(IReadOnlyList<MissedPass> missed)
    {
        var sites = missed.GroupBy(m => m.Site).OrderByDescending(g => g.Count()).ToArray();
        foreach (var site in sites.Take(MostSites))
        {
            var count = site.Count();
            var times = string.Join(", ", site.Take(MostTimes).Select(m => Text($"{m.At:F0} s")));
            yield return Text($"{(count == 1 ? "One pass" : Text($"{count} passes"))} over {site.Key} may have been missed, near {times}")
                + (count > MostTimes ? " and later" : "")
                + ": by its position the car was there, and no bump was found. What is said of the road between bumps leaves this out.";
        }

        if (sites.Length > MostSites)
        {
            yield return Text($"So it is at {sites.Length - MostSites} more sites.");
        }
    }
}
