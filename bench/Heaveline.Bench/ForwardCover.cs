using System.Globalization;
using Heaveline.Drives;
using Heaveline.Quantities;
using Heaveline.Tests.Drives;

namespace Heaveline.Bench;

/// <summary>
/// How often forward's half-width (90 %) holds the planted direction, on flat and on hilly roads, by length of the log.
/// <c>forward [drives of each kind]</c>.
/// </summary>
internal static class ForwardCover
{
    public static int Run(string[] args)
    {
        var count = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 100;
        Console.WriteLine("| log, s | slope, % | speed | half-width, median, ° | error, median, ° | forward said of 100 | of those held |");
        Console.WriteLine("|--:|--:|---|--:|--:|--:|--:|");
        foreach (var hasSpeed in new[] { true, false })
        {
            foreach (var slope in new[] { 0.0, 0.03 })
            {
                foreach (var length in hasSpeed ? new[] { 40.0, 60.0, 90.0, 180.0, 400.0 } : [180.0, 400.0])
                {
                    Row(count, length, slope, hasSpeed);
                }
            }
        }

        return 0;
    }

    private static void Row(int count, double length, double slope, bool hasSpeed)
    {
        var found = new (double Error, double Half)?[count];
        Parallel.For(0, count, k => found[k] = Found(new PlantedJourney((ulong)(k + 1), length, slope), hasSpeed));
        var said = found.OfType<(double Error, double Half)>().ToArray();
        var held = 100.0 * said.Count(f => f.Error <= f.Half) / Math.Max(said.Length, 1);
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"| {length:F0} | {100.0 * slope:F0} | {(hasSpeed ? "yes" : "no")} | {Median(said.Select(f => f.Half)):F1} "
            + $"| {Median(said.Select(f => f.Error)):F1} | {100.0 * said.Length / count:F0} | {held:F0} |"));
    }

    private static double Median(IEnumerable<double> values) => values.Order().ToArray() is { Length: > 0 } all
        ? In.Degrees.Of(all[all.Length / 2]) : double.NaN;

    private static (double Error, double Half)? Found(PlantedJourney journey, bool hasSpeed)
    {
        var log = journey.Log();
        var mount = Drive.Of(hasSpeed ? log : log with { Tracks = [.. log.Tracks.Take(2)] }).Mount;
        return mount.Forward is { } forward ? (forward.AngleTo(journey.Forward), mount.HalfWidth!.Value) : null;
    }
}
