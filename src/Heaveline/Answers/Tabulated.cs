using Heaveline.Figures;
using Heaveline.Quantities;

namespace Heaveline.Answers;

/// <summary>A table under its caption.</summary>
public sealed record Tabulated : Block
{
    // What the table was made of, so that it can be made anew in other units.
    private FactTable? Facts { get; init; }

    /// <summary>What the table is of.</summary>
    public required string Caption { get; init => field = Checked.NotBlank(value, "Say what the table is of."); }

    /// <summary>Its columns and rows; the first column heads the rows. The panel's own title is not printed.</summary>
    public required TablePanel Table { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); }

    /// <summary>A table of quantities: what, unit, then a column for each of its own.</summary>
    /// <param name="facts">The quantities; at least one row.</param>
    /// <param name="caption">The caption; null: the title of the quantities.</param>
    public static Tabulated Of(FactTable facts, string? caption = null)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return new Tabulated { Caption = caption ?? facts.Title, Table = Upright(facts), Facts = facts };
    }

    /// <summary>A table of quantities on its side: a row for each of its columns, a column for each quantity.</summary>
    /// <param name="facts">The quantities; at least one row.</param>
    /// <param name="heading">What the rows are.</param>
    /// <param name="caption">The caption.</param>
    public static Tabulated Turned(FactTable facts, string heading, string caption)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return new Tabulated
        {
            Caption = caption,
            Table = new TablePanel
            {
                Columns = [Words(heading), .. facts.Rows.Select(r => new TableColumn { Heading = r.Label, Unit = r.Unit == "–" ? "" : r.Unit })],
                Rows = [.. facts.Columns.Select((c, k) => TableRow.Of([c, .. facts.Rows.Select(r => Cells(r)[k])]))],
            },
        };
    }

    /// <inheritdoc/>
    public override Block In(ReaderUnits units)
    {
        ArgumentNullException.ThrowIfNull(units);
        return Facts is null
            ? this with { Caption = units.Text(Caption), Table = Table.In(units) }
            : this with { Caption = units.Text(Caption), Table = Upright(Facts.In(units)) };
    }

    private static TablePanel Upright(FactTable facts)
    {
        // A column of units that says nothing in every row is left out.
        var units = facts.Rows.Any(r => r.Unit != "–");
        return new TablePanel
        {
            Columns =
            [
                Words("quantity"),
                .. units ? [Words("unit")] : Array.Empty<TableColumn>(),
                .. facts.Columns.Select(c => new TableColumn { Heading = c }),
            ],
            Rows = [.. facts.Rows.Select(r => TableRow.Of([r.Label.Trim(), .. units ? [r.Unit] : Array.Empty<string>(), .. Cells(r)]))],
        };
    }

    private static TableColumn Words(string heading) => new() { Heading = heading, Alignment = ColumnAlignment.Left };

    private static string[] Cells(FactRow row) => [.. row.Values.Select(v => v is { } x ? Numeral.Of(x, row.Format) : "–")];
}
