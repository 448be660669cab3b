using Heaveline.Answers;
using Heaveline.Doubts;
using Heaveline.Measures;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Intervals of what cars do standing and over a road, and of what lies between them, from the same draws.</summary>
internal static class CompareDoubts
{
    /// <summary>The tables, and how they came about.</summary>
    public static (IReadOnlyList<FactTable> Tables, string Words) Of(CompareAsked asked, int samples, StudyRun run)
    {
        CarDoubts[] cars = [.. asked.Cars.Select(c => CarDoubts.Of(c.Car, c.Load))];
        string[] names = [.. asked.Cars.Select(c => c.Name)];
        var parts = asked.Speeds.Length + 1.0;
        var standing = RestCatalogue.For(MeasureUse.Comparison);
        var rest = JointStudy.Of(cars, standing, samples, asked.Seed, run.Degree, run.Between(0.0, 1.0 / parts).Progress, run.Cancellation);
        var tables = DoubtTables.Of("Standing", names, standing, rest).ToList();
        var measures = PassCatalogue.For(asked.Cars[0].Model, asked.Road, MeasureUse.Comparison);
        foreach (var (k, speed) in asked.Speeds.Index())
        {
            var study = JointStudy.OfPasses(
                cars, asked.Road, speed, measures, samples, asked.Seed,
                degree: run.Degree, progress: run.Between((k + 1) / parts, (k + 2) / parts).Progress, cancellation: run.Cancellation);
            tables.AddRange(DoubtTables.Of(FormattableString.Invariant($"At {In.KilometresPerHour.Of(speed):0.#} km/h"), names, measures, study));
        }

        return (tables, DoubtTables.Words(rest, several: true) + " Drawn passes run in coarser steps: the last digit of a stated value may differ.");
    }
}
