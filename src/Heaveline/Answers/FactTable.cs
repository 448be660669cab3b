using Heaveline.Measures;
using Heaveline.Quantities;

namespace Heaveline.Answers;

/// <summary>A table of quantities: rows are quantities, columns what they are compared over.</summary>
public sealed class FactTable(string title, IReadOnlyList<string> columns)
{
    private readonly List<FactRow> rows = [];

    /// <summary>What the table is of.</summary>
    public string Title { get; } = title;

    /// <summary>Headings of the columns behind label and unit.</summary>
    public IReadOnlyList<string> Columns { get; } = columns;

    /// <summary>Unit of the numbers that head the columns, as it stands at the end of the title; empty for none, or where words head them.</summary>
    public string HeadUnit { get; init; } = "";

    /// <summary>A column whose values are in that unit too, whatever their row's unit is; null for none.</summary>
    public string? InHeadUnit { get; init; }

    /// <summary>The rows from top to bottom.</summary>
    public IReadOnlyList<FactRow> Rows => rows;

    /// <summary>Adds a row unless no column has a value for it.</summary>
    public FactTable Add(string key, string label, string unit, string format, IEnumerable<double?> values)
    {
        double?[] all = [.. values.Select(v => v is { } x && double.IsFinite(x) ? v : null)];
        if (all.Any(v => v is not null))
        {
            rows.Add(new FactRow(key, label, unit, format, all));
        }

        return this;
    }

    /// <summary>Adds a row unless it says nothing.</summary>
    /// <param name="measure">What the row is of.</param>
    /// <param name="values">SI, one per column; not finite where there is none.</param>
    public FactTable Add(Measure measure, IEnumerable<double> values)
    {
        ArgumentNullException.ThrowIfNull(measure);
        double[] si = [.. values];
        return measure.IsNothing(si) ? this : Add(measure.Key, measure.Label, measure.Unit.Symbol, measure.Format, si.Select(measure.Shown));
    }

    /// <summary>Adds a row for each measure that says something.</summary>
    /// <param name="measures">What the rows are of.</param>
    /// <param name="subjects">What the columns are of.</param>
    public FactTable Add<TSubject>(IEnumerable<Measure<TSubject>> measures, IReadOnlyList<TSubject> subjects)
    {
        ArgumentNullException.ThrowIfNull(measures);
        foreach (var measure in measures)
        {
            Add(measure, subjects.Select(measure.Of));
        }

        return this;
    }

    /// <summary>The same table without the rows of these keys.</summary>
    public FactTable Without(params IReadOnlyCollection<string> keys) => Where(row => !keys.Contains(row.Key));

    /// <summary>The same table with the rows of these keys alone, in its own order.</summary>
    public FactTable Only(IReadOnlySet<string> keys) => Where(row => keys.Contains(row.Key));

    private FactTable Where(Func<FactRow, bool> isShown)
    {
        var some = new FactTable(Title, Columns) { HeadUnit = HeadUnit, InHeadUnit = InHeadUnit };
        some.rows.AddRange(rows.Where(isShown));
        return some;
    }

    /// <summary>The same table in the units of a reader: each number turned as it is printed, so that table and sentences agree.</summary>
    /// <param name="units">The reader's units.</param>
    public FactTable In(ReaderUnits units)
    {
        ArgumentNullException.ThrowIfNull(units);
        if (!units.IsImperial)
        {
            return this;
        }

        var hasHead = HeadUnit.Length > 0 && Title.EndsWith(", " + HeadUnit, StringComparison.Ordinal);
        var title = hasHead ? units.Text(Title[..^HeadUnit.Length]) + units.Unit(HeadUnit) : units.Text(Title);
        var turned = new FactTable(title, [.. Columns.Select(c => HeadUnit.Length > 0 ? units.Number(HeadUnit, c) : units.Text(c))])
        {
            HeadUnit = units.Unit(HeadUnit),
            InHeadUnit = InHeadUnit,
        };
        turned.rows.AddRange(rows.Select(row => row.In(units, column => InHeadUnit is { } own && Columns[column] == own ? HeadUnit : row.Unit)));
        return turned;
    }
}
