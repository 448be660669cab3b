using System.Globalization;
using System.Text;

namespace Heaveline.Answers;

/// <summary>Tables of the same columns as CSV: a row a quantity, not rounded, with its unit.</summary>
public static class TablesCsv
{
    /// <summary>The text, in UTF-8.</summary>
    /// <param name="tables">The tables, each of one car; none where nothing could be computed.</param>
    public static byte[] Of(IReadOnlyList<FactTable> tables)
    {
        ArgumentNullException.ThrowIfNull(tables);
        var text = new StringBuilder("car,quantity,unit");
        foreach (var column in tables.Count > 0 ? tables[0].Columns : [])
        {
            text.Append(CultureInfo.InvariantCulture, $",{CsvCell.Of(column)}");
        }

        text.Append('\n');
        foreach (var (table, row) in tables.SelectMany(t => t.Rows.Select(r => (t, r))))
        {
            text.Append(CultureInfo.InvariantCulture, $"{CsvCell.Of(table.Title)},{CsvCell.Of(row.Label)},{row.Unit}");
            foreach (var value in row.Values)
            {
                text.Append(CultureInfo.InvariantCulture, $",{value:G9}");
            }

            text.Append('\n');
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }
}
