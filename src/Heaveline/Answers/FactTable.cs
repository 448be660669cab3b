namespace Heaveline.Answers;

/// <summary>A table of quantities: rows are quantities, columns what they are compared over.</summary>
public sealed class FactTable(string title, IReadOnlyList<string> columns)
{
    private readonly List<FactRow> rows = [];

    /// <summary>What the table is of.</summary>
    public string Title { get; } = title;

    /// <summary>Headings of the columns behind label and unit.</summary>
    public IReadOnlyList<string> Columns { get; } = columns;

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

    /// <summary>The same table without the rows of these keys.</summary>
    public FactTable Without(params ReadOnlySpan<string> keys)
    {
        var rest = new FactTable(Title, Columns);
        foreach (var row in rows)
        {
            if (!keys.Contains(row.Key))
            {
                rest.rows.Add(row);
            }
        }

        return rest;
    }
}
