using System.Text;
using Heaveline.Answers;
using Heaveline.Figures;

namespace Heaveline.Press.Sheets;

/// <summary>A table as HTML: a caption, headings that say what they head, a box that scrolls sideways where the window is too narrow.</summary>
internal static class HtmlTable
{
    public static void Add(StringBuilder text, TablePanel table, string caption, string id)
    {
        text.Append($"<div class=\"scroll\" role=\"region\" aria-labelledby=\"{id}\" tabindex=\"0\">\n<table>\n<caption "
            + $"id=\"{id}\">{HtmlPage.Escaped(caption)}</caption>\n<thead><tr>");
        foreach (var column in table.Columns)
        {
            var unit = column.Unit.Length > 0 ? $" <small>{HtmlPage.Escaped(column.Unit)}</small>" : "";
            text.Append($"<th scope=\"col\"{Side(column)}>{HtmlPage.Escaped(column.Heading)}{unit}</th>");
        }

        text.Append("</tr></thead>\n<tbody>\n");
        foreach (var row in table.Rows)
        {
            // A row about a source can be pointed at from the parts that use it.
            var anchor = Sources.All.Any(s => s.Key == row.Cells[0]) ? $" id=\"source-{row.Cells[0]}\"" : "";
            text.Append($"<tr{anchor}><th scope=\"row\"{Side(table.Columns[0])}>{HtmlPage.Escaped(row.Cells[0])}</th>");
            for (var i = 1; i < row.Cells.Length; i++)
            {
                text.Append($"<td{Side(table.Columns[i])}>{HtmlPage.Escaped(row.Cells[i])}</td>");
            }

            text.Append("</tr>\n");
        }

        text.Append("</tbody>\n</table>\n</div>\n");
    }

    private static string Side(TableColumn column) => column.Alignment switch
    {
        ColumnAlignment.Left => " class=\"words\"",
        ColumnAlignment.Centre => " class=\"middle\"",
        _ => "",
    };
}
