using System.Collections.Immutable;
using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>A grid of text, such as load states side by side.</summary>
public sealed record TablePanel : Panel
{
    /// <summary>The columns from left to right, at least one.</summary>
    public required ImmutableArray<TableColumn> Columns
    {
        get;
        init => field = AllFit(Drawable.Some(value, "Give at least one column."), Rows);
    }

    /// <summary>The rows from top to bottom, at least one, each with one cell per column.</summary>
    public required ImmutableArray<TableRow> Rows
    {
        get;
        init => field = Fitting(Drawable.Some(value, "Give at least one row."), Columns);
    }

    /// <summary>The same table on its side: a row for each column, a column for each row, for a narrow figure.</summary>
    public TablePanel Turned() => new()
    {
        Title = Title,
        Columns =
        [
            new TableColumn { Heading = Columns[0].Heading, Alignment = ColumnAlignment.Left },
            .. Rows.Select(r => new TableColumn { Heading = r.Cells[0] }),
        ],
        Rows =
        [
            .. Columns.Skip(1).Select((c, k) => TableRow.Of(
                [c.Unit.Length > 0 && c.Unit != "–" ? $"{c.Heading}, {c.Unit}" : c.Heading, .. Rows.Select(r => r.Cells[k + 1])])),
        ],
    };

    /// <summary>The same table in the units of a reader.</summary>
    /// <param name="units">The reader's units.</param>
    public TablePanel In(ReaderUnits units)
    {
        ArgumentNullException.ThrowIfNull(units);
        return FigureInUnits.Of(this, units);
    }

    private static ImmutableArray<TableRow> Fitting(ImmutableArray<TableRow> rows, ImmutableArray<TableColumn> columns)
    {
        if (columns.IsDefault)
        {
            return rows;
        }

        foreach (var row in rows)
        {
            if (row.Cells.Length != columns.Length)
            {
                throw new RefusedValueException(
                    $"row '{row.Cells[0]}'",
                    $"{row.Cells.Length} cells wide",
                    $"{columns.Length} cells wide",
                    "Give one cell per column; blank is a cell too.");
            }
        }

        return rows;
    }

    private static ImmutableArray<TableColumn> AllFit(ImmutableArray<TableColumn> columns, ImmutableArray<TableRow> rows)
    {
        if (!rows.IsDefault)
        {
            Fitting(rows, columns);
        }

        return columns;
    }
}
