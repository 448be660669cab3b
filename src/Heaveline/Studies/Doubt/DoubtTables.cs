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

    /// <summary>Says how the intervals came about.</summary>
    public static string Words(JointStudy study, bool several) =>
        FormattableString.Invariant(
            $"From and to: nine times out of ten the number lies between them, {study.Samples} draws within the stated doubts, seed {study.Seed}.")
        + (several
            ? " What the cars have in common, their measurements and a named scale or tester, is drawn once for all: it cancels in the change."
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
