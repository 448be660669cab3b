using Heaveline.Answers;
using Heaveline.Doubts;

namespace Heaveline.Studies;

/// <summary>Intervals beside the numbers of other commands: each car's, and those of what lies between them.</summary>
public static class DoubtTables
{
    /// <summary>A table of each car's intervals, and one of the change to each further car. Rows that no doubt moves as far as they are shown are left out, and tables without rows.</summary>
    /// <param name="title">What the numbers are of.</param>
    /// <param name="cars">Names.</param>
    /// <param name="rows">The study's numbers as shown, in its order.</param>
    /// <param name="study">The drawn cars.</param>
    public static IReadOnlyList<FactTable> Of(string title, IReadOnlyList<string> cars, IReadOnlyList<Shown> rows, JointStudy study)
    {
        string[] columns = cars.Count == 1 ? ["as stated", "from", "to"] : [.. cars.SelectMany(name => new[] { name, "from", "to" })];
        FactTable[] tables =
        [
            Table($"{title}, within the doubts", columns, rows, study.Cars),
            .. study.Changes.Select((change, k) => Table($"{title}, change to {cars[k + 1]}", ["change", "from", "to"], rows, [change])),
        ];
        return [.. tables.Where(t => t.Rows.Count > 0)];
    }

    /// <summary>Says how the intervals came about.</summary>
    public static string Words(JointStudy study, bool several) =>
        FormattableString.Invariant($"From and to: nine times out of ten the number lies between them, {study.Samples} draws within the stated doubts, seed {study.Seed}.")
        + (several ? " What the cars have in common, their measurements and a named scale or tester, is drawn once for all: it cancels in the change." : "")
        + (study.Refused + study.Unfinished > 0 ? FormattableString.Invariant($" {study.Refused} draws could not stand as a car and {study.Unfinished} runs gave no number: they are left out.") : "");

    private static FactTable Table(string title, IReadOnlyList<string> columns, IReadOnlyList<Shown> rows, IReadOnlyList<IReadOnlyList<DoubtResult>> results)
    {
        var table = new FactTable(title, columns);
        for (var j = 0; j < rows.Count; j++)
        {
            var row = rows[j];
            DoubtResult[] shown = [.. results.Select(r => row.Of(r[j]))];
            if (shown.Any(r => Moves(r, row.Format)))
            {
                table.Add(row.Key, row.Label, row.Unit, row.Format, shown.SelectMany(r => new double?[] { r.Stated, r.Central90.Low, r.Central90.High }));
            }
        }

        return table;
    }

    private static bool Moves(DoubtResult result, string format) =>
        result.Count > 0 && FactText.Number(result.Central90.Low, format) != FactText.Number(result.Central90.High, format);
}
