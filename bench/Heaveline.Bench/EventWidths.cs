using System.Globalization;
using Heaveline.Drives;
using Heaveline.Drives.Events;
using Heaveline.Files.Cars;
using Heaveline.Files.Roads;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Tests.Drives;
using Heaveline.Tests.House;

namespace Heaveline.Bench;

/// <summary>
/// Computed passes of the garage's cars over both humps as a phone feels them on a level road: how many numbers of a bump lie within their
/// half-widths (90 %) of the pass's own, and how much pitch acceleration is missing above 8 Hz. <c>event-widths</c>.
/// </summary>
internal static class EventWidths
{
    private const double Behind = 1.45;

    private static readonly string[] Cars = ["fern-saloon", "drover-van", "sprig-kit-car", "thimble-city-car", "tarn-off-roader"];
    private static readonly string[] Roads = ["village-hump", "school-table"];
    private static readonly double[] Speeds = [6.0, 7.0, 8.5, 10.0];

    public static int Run()
    {
        var off = new SortedDictionary<string, List<(double Error, double Half)>>(StringComparer.Ordinal);
        var (byKey, missing) = (new SortedDictionary<string, (int Within, int All)>(StringComparer.Ordinal), new Dictionary<string, List<double>>());
        Console.WriteLine("| car | load | road | found and counted of 4 | numbers | within, % | pitch acceleration missing above 8 Hz, % |");
        Console.WriteLine("|---|---|---|--:|--:|--:|---|");
        foreach (var name in Cars)
        {
            var car = CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", name + ".yaml")).Value!;
            foreach (var load in car.LoadStates)
            {
                foreach (var road in Roads)
                {
                    var model = RideModel.Of(car, load);
                    var over = RoadFile.Load(Path.Combine(Checkout.Root, "examples", "roads", road + ".yaml")).Value!;
                    Pass[] passes = [.. Speeds.Select(v => Pass.Of(model, over, v))];
                    var (within, all, kept) = (0, 0, 0);
                    foreach (var (pass, e) in Driven(passes))
                    {
                        kept++;
                        foreach (var number in e.Numbers.All)
                        {
                            var own = PlantedPasses.Own(number.Measure, pass, Behind);
                            var isWithin = Math.Abs(number.Value - own) <= number.HalfWidth;
                            off.TryAdd(number.Measure.Key, []);
                            off[number.Measure.Key].Add((100.0 * (number.Value - own) / own, 100.0 * number.HalfWidth / own));
                            var (held, of) = byKey.GetValueOrDefault(number.Measure.Key);
                            byKey[number.Measure.Key] = (held + (isWithin ? 1 : 0), of + 1);
                            (within, all) = (within + (isWithin ? 1 : 0), all + 1);
                        }
                    }

                    var hit = HitCatalogue.All.Single(m => m.Key == "hit-peak-pitch-acceleration");
                    double[] lost = [.. passes.Select(p => 100.0 * (1.0 - (PlantedPasses.Own(hit, p, Behind) / hit.Of(p))))];
                    missing.TryAdd(road, []);
                    missing[road].AddRange(lost);
                    Console.WriteLine(string.Create(
                        CultureInfo.InvariantCulture,
                        $"| {name} | {load.Name} | {road} | {kept} | {all} | {100.0 * within / all:F0} | {lost.Min():F0} to {lost.Max():F0} |"));
                }
            }
        }

        Console.WriteLine("\n| number | of | within, % | mean error, % | RMS error, % | median half-width, % |\n|---|--:|--:|--:|--:|--:|");
        foreach (var (key, (held, of)) in byKey)
        {
            var (errors, halves) = (off[key].Select(o => o.Error).ToArray(), off[key].Select(o => o.Half).Order().ToArray());
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"| {key} | {of} | {100.0 * held / of:F0} | {errors.Average():+0.0;-0.0} | {Math.Sqrt(errors.Average(e => e * e)):F1} "
                + $"| {halves[halves.Length / 2]:F1} |"));
        }

        foreach (var (road, lost) in missing)
        {
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture, $"{road}: pitch acceleration missing above 8 Hz: {lost.Min():F0} to {lost.Max():F0} %"));
        }

        return 0;
    }

    // Each pass with its bump, where the drive has it and it counts.
    private static IEnumerable<(Pass Pass, DriveEvent Event)> Driven(Pass[] passes)
    {
        var (motion, onsets) = PlantedPasses.Driven(passes, Behind);
        var drive = Drive.Of(motion.Log);
        var events = DriveEvents.Of(drive, Trust.Of(drive), new EventSettings
        {
            Wheelbase = passes[0].Model.Car.Wheelbase.Si, Phone = new PhonePlace { BehindFrontAxle = Behind, BehindFrontAxleSpread = 0.05 },
        });
        foreach (var (k, onset) in onsets.Index())
        {
            if (events.Events.FirstOrDefault(e => e.IsKept && Math.Abs(e.Onset - onset) < 0.7) is { } found)
            {
                yield return (passes[k], found);
            }
        }
    }
}
