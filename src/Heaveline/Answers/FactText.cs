using System.Globalization;
using System.Text;

namespace Heaveline.Answers;

/// <summary>Writes tables as plain aligned text: no colour, no lines, nothing that a pipe would choke on.</summary>
public static class FactText
{
    /// <summary>The table in lines.</summary>
    public static string Of(FactTable table)
    {
        var cells = table.Rows.Select(r => r.Values.Select(v => v is { } x ? Number(x, r.Format) : "–").ToArray()).ToArray();
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

    /// <summary>A number with a true minus and no sign on nothing.</summary>
    /// <param name="value">The number.</param>
    /// <param name="format">.NET number format.</param>
    public static string Number(double value, string format)
    {
        var text = value.ToString(format, CultureInfo.InvariantCulture);
        // A negative that rounds to nothing is nothing.
        return text.StartsWith('-') && text.All(c => c is '-' or '0' or '.') ? text[1..] : text.Replace('-', '−');
    }

    private static void Line(StringBuilder text, IEnumerable<string> parts) => text.AppendLine(string.Join("  ", parts).TrimEnd());
}
