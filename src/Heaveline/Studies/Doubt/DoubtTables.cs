using Heaveline.Answers;
using Heaveline.Doubts;
using Heaveline.Measures;

namespace Heaveline.Studies;

/// <summary>Intervals beside the numbers of other commands: each car's, and those of what lies between them.</summary>
public static class DoubtTables
{
    /// <summary>
    /// A table of each car's intervals, and one of the change to each further car. Rows that no doubt moves as far as they are shown are left out,
    /// and tables without rows.
    /// </summary>
    /// <param name="title">What the numbers are of.</param>
    /// <param name="cars">Names.</param>
    /// <param name="measures">The study's numbers, in its order.</param>
    /// <param name="study">The drawn cars.</param>
    public static IReadOnlyList<FactTable> Of(string title, IReadOnlyList<string> cars, IReadOnlyList<Measure> measures, JointStudy study)
    {
        string[] columns = cars.Count == 1 ? ["as stated", "from", "to"] : [.. cars.SelectMany(name => new[] { name, "from", "to" })];
        FactTable[] tables =
        [
            Table($"{title}, within the doubts", columns, measures, study.Cars),
            .. study.Changes.Select((change, k) => Table($"{title}, change to {cars[k + 1]}", ["change", "from", "to"], measures, [change])),
        ];
        return [.. tables.Where(t => t.Rows.Count > 0)];
    }

    /// <summary>Where an interval has no end that a table can show, or passes through infinity, in sentences.</summary>
    /// <param name="name">The car, or its load.</param>
    /// <param name="results">Its numbers.</param>
    public static IEnumerable<string> Unended(string name, IEnumerable<DoubtResult> results)
    {
        foreach (var result in results.Select(r => r.Shown()))
        {
            var (measure, interval) = (result.Measure, result.Central90);
            var end = measure.NoneAbove is { } above ? $"{measure.Print(measure.Unit.Of(above))} {measure.Unit.Symbol}" : "";
            if (double.IsPositiveInfinity(interval.High))
            {
                yield return $"{name}: the {measure.Name} lies beyond {end} in {result.CountAbove} of {result.Values.Count} draws; "
                    + $"the end of its interval that is left out lies beyond {end}.";
            }
            else if (interval.Low > interval.High)
            {
                yield return $"{name}: the interval of the {measure.Name} passes through infinity, where the motion is parallel: it holds all above "
                    + $"{measure.Print(interval.Low)} {measure.Unit.Symbol} and all below {measure.Print(interval.High)} {measure.Unit.Symbol}.";
            }
        }
    }

    /// <summary>Says how the intervals came about.</summary>
    /// <param name="study">The drawn cars.</param>
    /// <param name="several">Whether there are several.</param>
    /// <param name="vehicles">What they are.</param>
    public static string Words(JointStudy study, bool several, string vehicles = "cars") =>
        FormattableString.Invariant(
            $"From and to: nine times out of ten the number lies between them, {study.Samples} draws within the stated doubts, seed {study.Seed}.")
        + (several
            ? $" What the {vehicles} have in common, their measurements and a named scale or tester, is drawn once for all: it cancels in the change."
            : "")
        + (study.Refused + study.Unfinished > 0
            ? FormattableString.Invariant(
                $" {study.Refused} draws could not stand as a car and {study.Unfinished} runs gave no number: they are left out.")
            : "");

    private static FactTable Table(
        string title, IReadOnlyList<string> columns, IReadOnlyList<Measure> measures, IReadOnlyList<IReadOnlyList<DoubtResult>> results)
    {
        var table = new FactTable(title, columns);
        foreach (var (j, measure) in measures.Index())
        {
            DoubtResult[] shown = [.. results.Select(r => r[j].Shown())];
            if (shown.Any(r => Moves(r, measure)))
            {
                table.Add(
                    measure.Key,
                    measure.Label,
                    measure.Unit.Symbol,
                    measure.Format,
                    shown.SelectMany(r => new double?[] { r.Stated, r.Central90.Low, r.Central90.High }));
            }
        }

        return table;
    }

    private static bool Moves(DoubtResult result, Measure measure) =>
        result.Count > 0 && measure.Print(result.Central90.Low) != measure.Print(result.Central90.High);
}
