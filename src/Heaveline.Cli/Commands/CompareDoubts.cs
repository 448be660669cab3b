using System.Globalization;
using Heaveline.Cli.Output;
using Heaveline.Doubts;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Roads;

namespace Heaveline.Cli.Commands;

/// <summary>Intervals of what cars do standing and over a road, and of what lies between them, from the same draws.</summary>
internal static class CompareDoubts
{
    private static readonly IReadOnlyList<(Shown Row, StaticOutput Output)> AtRest =
    [
        (new("front-frequency", "front ride frequency", "Hz", "F3", 1.0), StaticOutput.FrontFrequency),
        (new("rear-frequency", "rear ride frequency", "Hz", "F3", 1.0), StaticOutput.RearFrequency),
        (new("ratio", "frequency ratio, rear over front", "–", "F3", 1.0), StaticOutput.FrequencyRatio),
        (new("front-damping", "front damping ratio", "–", "F3", 1.0), StaticOutput.FrontDamping),
        (new("rear-damping", "rear damping ratio", "–", "F3", 1.0), StaticOutput.RearDamping),
        (new("attitude", "nose-up attitude", "°", "F2", Shown.Degrees), RestOutput.NoseUp),
    ];

    /// <summary>The tables, and how they came about.</summary>
    public static (IReadOnlyList<FactTable> Tables, string Words) Of(
        Streams streams, IReadOnlyList<string> names, IReadOnlyList<RideModel> models, Road road, IReadOnlyList<double> speeds, int samples, ulong seed, CancellationToken stop)
    {
        CarDoubts[] cars = [.. models.Select(m => CarDoubts.Of(m.Car, m.Load))];
        var threads = Environment.ProcessorCount;
        using var progress = new Progress(streams, "draws", samples);
        var rest = JointStudy.Of(cars, [.. AtRest.Select(r => r.Output)], samples, seed, threads, progress.Part(0, speeds.Count + 1), stop);
        var tables = DoubtTables.Of("Standing", names, [.. AtRest.Select(r => r.Row)], rest).ToList();
        var rows = OverTheRoad(road);
        foreach (var (k, speed) in speeds.Index())
        {
            var study = JointStudy.OfPasses(cars, road, speed, [.. rows.Select(r => r.Measure)], samples, seed, degree: threads, progress: progress.Part(k + 1, speeds.Count + 1), cancellation: stop);
            tables.AddRange(DoubtTables.Of(string.Create(CultureInfo.InvariantCulture, $"At {3.6 * speed:F0} km/h"), names, [.. rows.Select(r => r.Row)], study));
        }

        return (tables, DoubtTables.Words(rest, several: true) + " Drawn passes run in coarser steps: the last digit of a stated value may differ.");
    }

    private static IReadOnlyList<(Shown Row, PassMeasure Measure)> OverTheRoad(Road road)
    {
        (Shown Row, PassMeasure Measure)[] bump =
        [
            (new("settling-rms-pitch", "settling: RMS pitch, first second", "°", "F3", Shown.Degrees), PassMeasure.SettlingAngle),
            (new("settling-peak-pitch", "settling: greatest pitch, first second", "°", "F2", Shown.Degrees), PassMeasure.SettlingPeak),
            (new("settling-late-pitch", "settling: late pitch, after 0.8 s", "° s½", "F3", Shown.Degrees), PassMeasure.LateAngle),
            (new("hit-peak-pitch-acceleration", "hit: greatest pitch acceleration", "rad/s²", "F2", 1.0), PassMeasure.HitAcceleration),
        ];
        return
        [
            .. road.Event is null ? [] : bump,
            (new("rms-pitch", "whole record: RMS pitch", "°", "F3", Shown.Degrees), PassMeasure.PitchAngle),
            (new("rms-pitch-acceleration", "whole record: RMS pitch acceleration", "rad/s²", "F3", 1.0), PassMeasure.PitchAcceleration),
            (new("rms-heave-acceleration", "whole record: RMS heave acceleration", "m/s²", "F2", 1.0), PassMeasure.HeaveAcceleration),
            (new("front-load-variation", "front left: RMS change of tyre load", "% of static", "F1", 100.0), PassMeasure.FrontLoadVariation),
            (new("rear-load-variation", "rear left: RMS change of tyre load", "% of static", "F1", 100.0), PassMeasure.RearLoadVariation),
        ];
    }
}
