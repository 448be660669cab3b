using System.Collections.Concurrent;
using System.Globalization;
using Heaveline.Drives.Comparison;
using Heaveline.Drives.Events;
using Heaveline.Studies;
using Heaveline.Tests.Drives.Lanes;

namespace Heaveline.Bench;

/// <summary>
/// Planted test days of Larch Lane: what is said of two drives with nothing changed between them, and of the
/// cured car. <c>test-days [days [first]]</c>.
/// </summary>
internal static class TestDays
{
    public static int Run(string[] args)
    {
        Console.WriteLine("| day | nothing changed | verdict | one pass scatters, % | cured | verdict |");
        Console.WriteLine("|--:|---|---|--:|---|---|");
        var said = new ConcurrentBag<(ComparisonVerdict Same, ComparisonVerdict Cured)>();
        PlantedRuns.Each(args, 22, day =>
        {
            var seed = 100UL + (10UL * (ulong)day);
            var (built, cured) = (LarchLane.Fern("fern-saloon.yaml"), LarchLane.Fern("fern-saloon-cured.yaml"));
            var before = LarchLane.TestDay(built, seed);
            var (same, other) = (Compared(before, LarchLane.TestDay(built, seed + 1UL)), Compared(before, LarchLane.TestDay(cured, seed + 2UL)));
            said.Add((same.Verdict, other.Verdict));
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"| {day} | {Change(same)} | {same.Verdict} | {100.0 * same.Scatter:F1} | {Change(other)} | {other.Verdict} |"));
        });
        foreach (var (name, verdicts) in new[] { ("nothing changed", said.Select(s => s.Same)), ("cured", said.Select(s => s.Cured)) })
        {
            Console.WriteLine($"{name}: " + string.Join(
                ", ", verdicts.GroupBy(v => v).OrderByDescending(g => g.Count()).Select(g => $"{g.Key} {g.Count()}")));
        }

        return 0;
    }

    private static BeforeAfter Compared(LarchLane before, LarchLane after)
    {
        var settings = new EventSettings { Wheelbase = LaneReading.Wheelbase };
        return ProveStudy.Run(new ProveAsked { Before = before.Log, After = after.Log, OfBefore = settings, OfAfter = settings }).Main.Result;
    }

    private static string Change(BeforeAfter result) => result.Pooled is { } change
        ? string.Create(CultureInfo.InvariantCulture, $"{100.0 * change.Value:F1} ({100.0 * change.Low:F1}…{100.0 * change.High:F1})")
        : "";
}
