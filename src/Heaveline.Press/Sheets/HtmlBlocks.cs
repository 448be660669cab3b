using System.Text;
using Heaveline.Answers;
using Heaveline.Figures;
using Heaveline.Press.Type;
using Heaveline.Reports;

namespace Heaveline.Press.Sheets;

/// <summary>Blocks of a report as HTML; counts figures and tables as it goes.</summary>
internal sealed class HtmlBlocks(StringBuilder text)
{
    private readonly SortedSet<Face> faces = [];
    private int figures, tables, texts;

    /// <summary>Faces that the figures so far need.</summary>
    public IReadOnlySet<Face> Faces => faces;

    public void Add(Block block)
    {
        switch (block)
        {
            case Paragraph paragraph:
                text.Append($"<p>{HtmlPage.Escaped(paragraph.Text)}</p>\n");
                break;
            case Points points:
                Add(points);
                break;
            case Caution caution:
                text.Append($"<p class=\"caution\" role=\"note\"><strong>Caution.</strong> {HtmlPage.Escaped(caution.Text)}</p>\n");
                break;
            case Typed typed:
                text.Append($"<pre tabindex=\"0\"><code>{HtmlPage.Escaped(typed.Line)}</code></pre>\n");
                break;
            case Tabulated table:
                tables++;
                HtmlTable.Add(text, table.Table, $"Table {tables}. {table.Caption}", $"table-{tables}");
                break;
            case Illustration illustration:
                Add(illustration.Figure);
                break;
            case Verbatim verbatim:
                Add(verbatim.Input);
                break;
            default:
                throw new ArgumentException($"The press cannot set {block.GetType().Name}.");
        }
    }

    private void Add(Points points)
    {
        var list = points.Numbered ? "ol" : "ul";
        text.Append($"<{list}>\n");
        foreach (var point in points.Texts)
        {
            text.Append($"<li>{HtmlPage.Escaped(point)}</li>\n");
        }

        text.Append($"</{list}>\n");
    }

    // Twice, for a wide and for a narrow window: shrunk to a phone, a page's letters could not be read. Only
    // one of the two is ever shown or read out.
    private void Add(Figure figure)
    {
        figures++;
        var picture = figure with { Caption = "", SignNote = "" };
        text.Append($"<figure id=\"figure-{figures}\">\n<div class=\"plate wide\">\n");
        faces.UnionWith(InlineSvg.Add(text, picture));
        text.Append("</div>\n<div class=\"plate narrow\">\n");
        faces.UnionWith(InlineSvg.Add(text, picture.InColumn()));
        text.Append($"</div>\n<figcaption><b>Figure {figures}.</b> {HtmlPage.Escaped(figure.Caption.Length > 0 ? figure.Caption : figure.Title)}");
        text.Append(figure.SignNote.Length > 0 ? $" <small>{HtmlPage.Escaped(figure.SignNote)}</small>" : "").Append("</figcaption>\n");
        var data = FigureData.Of(figure);
        if (data.Count > 0)
        {
            text.Append($"<details>\n<summary>Numbers of figure {figures}</summary>\n");
            foreach (var (table, k) in data.Select((t, k) => (t, k)))
            {
                HtmlTable.Add(text, table.Table, table.Caption, $"figure-{figures}-numbers-{k + 1}");
            }

            text.Append("</details>\n");
        }

        text.Append("</figure>\n");
    }

    private void Add(InputText input)
    {
        texts++;
        text.Append($"<h3 id=\"text-{texts}\">{HtmlPage.Escaped(input.Name)}</h3>\n<p class=\"quiet\">SHA-256 <code>{input.Sha256}</code></p>\n");
        text.Append($"<pre tabindex=\"0\" aria-labelledby=\"text-{texts}\"><code>{HtmlPage.Escaped(input.Text)}</code></pre>\n");
    }
}
