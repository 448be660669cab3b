using Heaveline.Answers;
using Heaveline.Press.Colours;
using Heaveline.Press.Paper;
using Heaveline.Press.Plates;
using Heaveline.Press.Type;
using Heaveline.Reports;

namespace Heaveline.Press.Sheets;

/// <summary>A report set page by page.</summary>
internal sealed class PdfReport(Report report, PageFlow flow, PageNumbers numbers)
{
    private const double Indent = 12.0, Air = 6.0;

    // Seven points become 5.7, about what journals allow at least (common practice, no source).
    private const double LeastScale = 0.82;

    private static readonly Lettering Title = new(Face.Bold, 20.0, Palette.Text);
    private static readonly Lettering Heading = new(Face.Bold, 13.0, Palette.Text);
    private static readonly Lettering Name = new(Face.Bold, 9.5, Palette.Text);
    private static readonly Lettering Body = new(Face.Regular, 9.5, Palette.Text);
    private static readonly Lettering Strong = new(Face.Bold, 9.5, Palette.Text);
    private static readonly Lettering Quiet = new(Face.Regular, 8.5, Palette.QuietText);
    private static readonly Lettering Text = new(Face.Regular, 8.0, Palette.Text);

    private int figures, tables;

    public void Set()
    {
        flow.Need(Title.LineHeight);
        Lines(report.Title, Title);
        Lines(HtmlPage.By(report), Quiet);
        flow.Skip(2.0 * Air);
        for (var i = 0; i < report.Parts.Length; i++)
        {
            Contents(i);
        }

        for (var i = 0; i < report.Parts.Length; i++)
        {
            Part(report.Parts[i]);
        }
    }

    private void Contents(int i)
    {
        flow.Line(Glyphs.Fitted($"{i + 1}. {report.Parts[i].Heading}", Body, 0.9 * PageFlow.Width), Body);
        flow.Sheet.TextCentredOn(numbers.Of(i), flow.X + PageFlow.Width, flow.Y - Body.LineHeight / 2.0, Body, TextAlign.End);
        flow.Link(i, Body.LineHeight);
    }

    private void Part(ReportPart part)
    {
        flow.Skip(4.0 * Air);

        // A heading never stands alone at the foot of a page.
        flow.Need(Heading.LineHeight * 2.0 + Body.LineHeight * 3.0 + First(part));
        flow.Start();
        flow.Sheet.Line(flow.X, flow.Y, flow.X + PageFlow.Width, flow.Y, new Stroke(Palette.Frame, 1.2));
        flow.Take(5.0);
        Lines(part.Heading, Heading);
        flow.Take(Air);
        foreach (var block in part.Blocks)
        {
            Set(block);
        }

        flow.Settle();
        if (part.Sources.Length > 0)
        {
            Lines($"Sources: {string.Join(", ", part.Sources.Select(s => s.Key))}.", Quiet);
        }
    }

    // A figure right under its heading goes with it, and so does as much of a table as stands together.
    private static double First(ReportPart part) => part.Blocks[0] switch
    {
        Illustration first => new FigureSetting(first.Figure).Height,
        Tabulated first => PdfTable.Least(first.Table),
        _ => 0.0,
    };

    private void Set(Block block)
    {
        switch (block)
        {
            case Paragraph paragraph:
                Lines(paragraph.Text, Body);
                flow.Skip(Air);
                break;
            case Points points:
                Set(points);
                break;
            case Caution caution:
                Set(caution);
                break;
            case Typed typed:
                Boxed(Wrapped.Of(typed.Line, Text, PageFlow.Width - Indent));
                break;
            case Tabulated table:
                tables++;
                PdfTable.Set(flow, table.Table, $"Table {tables}. {table.Caption}");
                break;
            case Illustration illustration:
                figures++;
                Set(illustration.Figure);
                break;
            case Verbatim verbatim:
                Set(verbatim.Input);
                break;
            default:
                throw new ArgumentException($"The press cannot set {block.GetType().Name}.");
        }
    }

    private void Set(Points points)
    {
        foreach (var (point, k) in points.Texts.Select((p, k) => (p, k)))
        {
            var lines = Wrapped.Of(point, Body, PageFlow.Width - Indent);
            flow.Need(Math.Min(lines.Length, 2) * Body.LineHeight);
            flow.Sheet.TextCentredOn(
                points.Numbered ? FormattableString.Invariant($"{k + 1}.") : "•", flow.X + 2.0, flow.Y + Body.LineHeight / 2.0, Body);
            foreach (var line in lines)
            {
                flow.Line(line, Body, Indent);
            }

            flow.Skip(2.0);
        }

        flow.Skip(Air);
    }

    private void Set(Caution caution)
    {
        var lines = Wrapped.Of("Caution. " + caution.Text, Strong, PageFlow.Width - Indent);
        var height = lines.Length * Strong.LineHeight;
        flow.Need(height + Air);
        flow.Sheet.Area(new Box(flow.X, flow.Y, flow.X + 3.0, flow.Y + height), Palette.Of(Figures.Ink.Second));
        foreach (var line in lines)
        {
            flow.Line(line, Strong, Indent);
        }

        flow.Skip(Air);
    }

    // Whole on one page; shrunk where it is taller than a page, or nearly fits what is left of this one.
    private void Set(Figures.Figure figure)
    {
        var setting = new FigureSetting(figure with { Title = $"Figure {figures}. {figure.Title}" });
        var scale = Math.Min(1.0, Math.Min(flow.Height / setting.Height, PageFlow.Width / setting.Width));
        if (!flow.AtTop && flow.Left / setting.Height is >= LeastScale and var tighter && tighter < scale)
        {
            scale = tighter;
        }

        flow.Float(scale * setting.Height, () =>
        {
            flow.Draw(scale, setting.Draw);
            flow.Take(scale * setting.Height);
            flow.Take(2.0 * Air);
        });
    }

    private void Set(InputText input)
    {
        flow.Skip(Air);
        flow.Need(Name.LineHeight + Quiet.LineHeight + 3.0 * Text.LineHeight);
        Lines(input.Name, Name);
        Lines($"SHA-256 {input.Sha256}", Quiet);
        flow.Skip(2.0);
        Boxed(input.Text.TrimEnd('\n', '\r').Split('\n').SelectMany(line => Glyphs.Broken(line.TrimEnd('\r'), Text, PageFlow.Width - Indent)));
    }

    // A bar at the left, so that the text is told from the report's own words wherever a page ends.
    private void Boxed(IEnumerable<string> lines)
    {
        foreach (var line in lines)
        {
            flow.Need(Text.LineHeight);
            flow.Sheet.Area(new Box(flow.X, flow.Y, flow.X + 2.0, flow.Y + Text.LineHeight + 0.05), Palette.Ground);
            flow.Line(line, Text, 8.0);
        }

        flow.Skip(Air);
    }

    private void Lines(string text, Lettering lettering)
    {
        var lines = Wrapped.Of(Glyphs.Shown(text, lettering.Face), lettering, PageFlow.Width);
        for (var i = 0; i < lines.Length; i++)
        {
            // Neither the first line nor the last stands alone.
            flow.Need((i == 0 || i == lines.Length - 2 ? Math.Min(2, lines.Length - i) : 1) * lettering.LineHeight);
            flow.Line(lines[i], lettering);
        }
    }
}
