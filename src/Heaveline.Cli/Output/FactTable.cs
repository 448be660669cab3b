namespace Heaveline.Cli.Output;

/// <summary>A table of quantities: rows are quantities, columns what they are compared over.</summary>
internal sealed class FactTable(string title, IReadOnlyList<string> columns)
{
    private readonly List<FactRow> rows = [];

    public string Title { get; } = title;

    public IReadOnlyList<string> Columns { get; } = columns;

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
}
