using System.Globalization;
using Heaveline.Cli.Output;
using Heaveline.Doubts;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Cli.Commands;

/// <summary>Intervals of what cars do standing and over a road, and of what lies between them, from the same draws.</summary>
internal static class CompareDoubts
{
    /// <summary>The tables, and how they came about.</summary>
    public static (IReadOnlyList<FactTable> Tables, string Words) Of(
        Streams streams, IReadOnlyList<string> names, IReadOnlyList<RideModel> models, Road road, IReadOnlyList<double> speeds, int samples, ulong seed, CancellationToken stop)
    {
        CarDoubts[] cars = [.. models.Select(m => CarDoubts.Of(m.Car, m.Load))];
        var threads = Environment.ProcessorCount;
        using var progress = new Progress(streams, "draws", samples);
        var standing = RestCatalogue.For(MeasureUse.Comparison);
        var rest = JointStudy.Of(cars, standing, samples, seed, threads, progress.Part(0, speeds.Count + 1), stop);
        var tables = DoubtTables.Of("Standing", names, standing, rest).ToList();
        var measures = PassCatalogue.For(models[0], road, MeasureUse.Comparison);
        foreach (var (k, speed) in speeds.Index())
        {
            var study = JointStudy.OfPasses(cars, road, speed, measures, samples, seed, degree: threads, progress: progress.Part(k + 1, speeds.Count + 1), cancellation: stop);
            tables.AddRange(DoubtTables.Of(string.Create(CultureInfo.InvariantCulture, $"At {In.KilometresPerHour.Of(speed):F0} km/h"), names, measures, study));
        }

        return (tables, DoubtTables.Words(rest, several: true) + " Drawn passes run in coarser steps: the last digit of a stated value may differ.");
    }
}
