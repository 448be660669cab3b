using System.Globalization;
using Heaveline.Tests.Drives.Lanes;

namespace Heaveline.Bench;

/// <summary>Writes the logs of the demo, Larch Lane, with their truth beside them: 3 MB each, made anew from their seeds.</summary>
internal static class LaneLogs
{
    public static int Write(string folder)
    {
        Directory.CreateDirectory(folder);
        File.WriteAllText(Path.Combine(folder, "before.csv"), LaneWriter.Whole(LarchLane.Before.Log));
        Directory.CreateDirectory(Path.Combine(folder, "after"));
        foreach (var (name, text) in LaneWriter.Apart(LarchLane.After.Log))
        {
            File.WriteAllText(Path.Combine(folder, "after", name), text);
        }

        File.WriteAllText(Path.Combine(folder, "no-change.csv"), LaneWriter.Whole(LarchLane.NoChange.Log));
        foreach (var (name, lane) in new[] { ("before", LarchLane.Before), ("after", LarchLane.After), ("no-change", LarchLane.NoChange) })
        {
            File.WriteAllLines(
                Path.Combine(folder, $"{name}-truth.csv"),
                lane.Plan.Crossings.Select(c => string.Create(
                    CultureInfo.InvariantCulture, $"{c.Lap},{c.Site},{c.Distance:F2},{c.Time:F3},{3.6 * c.Speed:F2},{c.Spoilt}"))
                    .Prepend("lap,site,distance [m],time [s],speed [km/h],spoilt"));
        }

        return 0;
    }
}
