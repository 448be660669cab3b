using System.Diagnostics;
using System.Globalization;
using Heaveline.Drives.Comparison;
using Heaveline.Tests.Drives.Comparison;

namespace Heaveline.Bench;

/// <summary>Planted pairs of drives: false alarms where nothing was changed, power where the dampers were, and the time of one comparison.</summary>
internal static class BeforeAfters
{
    private const int Bank = 1000;

    public static int Run(int pairs)
    {
        Print($"{pairs} pairs a cell; level 10 %; alarms and power in per cent");
        Print("| road | fall | one pass scatters | passes each | alarms | alarms, speeds apart | power | half-width | covers | judged |");
        Print("|---|---|---|---|---|---|---|---|---|---|");
        foreach (var (name, roughness, speed, own) in new[]
        {
            ("class A, same line", 16e-6, 0.05, 0.3), ("class B", 64e-6, 0.05, 0.3), ("class B, speeds ± 10 %", 64e-6, 0.1, 0.3),
            ("class A–B, another line each pass", 32e-6, 0.05, 1.0),
        })
        {
            var planted = new PlantedComparisons(new PlantedHumps(roughness, speed, own), Bank);
            foreach (var each in new[] { 4, 6, 8, 12 })
            {
                Row(name, planted, pairs, each, 1);
            }

            foreach (var each in new[] { 2, 3 })
            {
                Row($"{name}, four humps", planted, pairs, each, 4);
            }
        }

        var low = new PlantedComparisons(new PlantedHumps(64e-6, 0.05, 0.3) { LowSite = 3 }, Bank);
        foreach (var each in new[] { 2, 3, 6 })
        {
            Row("class B, four humps, one of them 20 mm high", low, pairs, each, 4);
        }

        var humps = new PlantedHumps(64e-6, 0.05, 0.3);
        List<ComparedPass> passes = [.. Enumerable.Range(0, 4).SelectMany(s => humps.Passes(PlantedHumps.Before, s, 12, 1, false)
            .Concat(humps.Passes(PlantedHumps.After, s, 12, 3, true)))];
        BeforeAfter.Of(passes);
        var watch = Stopwatch.StartNew();
        for (var i = 0; i < 100; i++)
        {
            BeforeAfter.Of(passes);
        }

        Print(string.Create(
            CultureInfo.InvariantCulture,
            $"one comparison of four humps, twelve passes each, needed passes and odd ones looked for: "
            + $"{watch.Elapsed.TotalMilliseconds / 100.0:F2} ms"));
        return 0;
    }

    private static void Row(string name, PlantedComparisons planted, int pairs, int each, int sites)
    {
        var none = planted.Of(pairs, each, sites, false);
        var apart = planted.Of(pairs, each, sites, false, 0.4);
        var changed = planted.Of(pairs, each, sites, true);
        Print($"| {name} | {Percent(1.0 - Math.Exp(planted.Truth.Average()))} | {Percent(none.Scatter)} | {each} "
            + $"| {Percent(none.Alarms)} | {Percent(apart.Alarms)} | {Percent(changed.Falls)} | ± {Percent(none.HalfWidth)} "
            + $"| {Percent(changed.Covered)} | {Percent(none.Judged)} |");
    }

    private static string Percent(double share) => (100.0 * share).ToString("F1", CultureInfo.InvariantCulture);

    private static void Print(string line) => Console.WriteLine(line);
}
