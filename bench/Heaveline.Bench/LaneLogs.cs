using System.Globalization;
using Heaveline.Tests.Drives.Lanes;

namespace Heaveline.Bench;

/// <summary>Writes the logs of the demo, Larch Lane, with their truth beside them: 3 MB each, made anew from their seeds.</summary>
internal static class LaneLogs
{
    public static int Write(string folder)
    {
        Directory.CreateDirectory(folder);
        Written("before.csv", LaneWriter.Whole(LarchLane.Before.Log), "the drive before the change");
        Directory.CreateDirectory(Path.Combine(folder, "after"));
        foreach (var (name, text) in LaneWriter.Apart(LarchLane.After.Log))
        {
            Written(Path.Combine("after", name), text, "the drive after it, one sensor");
        }

        Written("no-change.csv", LaneWriter.Whole(LarchLane.NoChange.Log), "the car of the drive before, another day");
        Written("morning.csv", LaneWriter.Whole(LarchLane.Morning.Log), "the first drive of a test day, the car of the drive before");
        Written("evening.csv", LaneWriter.Whole(LarchLane.Evening.Log), "its second drive, nothing changed");
        foreach (var (name, lane) in new[]
        {
            ("before", LarchLane.Before), ("after", LarchLane.After), ("no-change", LarchLane.NoChange), ("morning", LarchLane.Morning),
            ("evening", LarchLane.Evening),
        })
        {
            Written(
                $"{name}-truth.csv",
                string.Concat(lane.Plan.Crossings.Select(c => string.Create(
                    CultureInfo.InvariantCulture, $"{c.Lap},{c.Site},{c.Distance:F2},{c.Time:F3},{3.6 * c.Speed:F2},{c.Spoilt}\n"))
                    .Prepend("lap,site,distance [m],time [s],speed [km/h],spoilt\n")),
                "its crossings as they were planted");
        }

        return 0;

        void Written(string name, string text, string what)
        {
            var path = Path.Combine(folder, name);
            File.WriteAllText(path, text);
            Console.WriteLine($"{path}: {what}");
        }
    }
}
