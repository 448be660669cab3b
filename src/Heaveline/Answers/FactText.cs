using System.Text;
using Heaveline.Quantities;

namespace Heaveline.Answers;

/// <summary>Writes tables as plain aligned text: no colour, no lines, nothing that a pipe would choke on.</summary>
public static class FactText
{
    /// <summary>The table in lines.</summary>
    public static string Of(FactTable table)
    {
        var cells = table.Rows.Select(r => r.Values.Select(v => v is { } x ? Numeral.Of(x, r.Format) : "–").ToArray()).ToArray();
        var label = Math.Max(table.Rows.Max(r => r.Label.Length), table.Title.Length);
        var unit = table.Rows.Max(r => r.Unit.Length);
        int[] width = [.. table.Columns.Select((c, k) => Math.Max(c.Length, cells.Max(row => row[k].Length)))];
        var text = new StringBuilder();
        Line(text, [table.Title.PadRight(label), "".PadRight(unit), .. table.Columns.Select((c, k) => c.PadLeft(width[k]))]);
        for (var i = 0; i < cells.Length; i++)
        {
            Line(text, [table.Rows[i].Label.PadRight(label), table.Rows[i].Unit.PadRight(unit), .. cells[i].Select((c, k) => c.PadLeft(width[k]))]);
        }

        return text.ToString();
    }

    private static void Line(StringBuilder text, IEnumerable<string> parts) => text.AppendLine(string.Join("  ", parts).TrimEnd());
}
