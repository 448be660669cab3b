using Heaveline.Figures;
using Heaveline.Press.Colours;
using Heaveline.Press.Paper;
using Heaveline.Press.Type;

namespace Heaveline.Press.Plates;

/// <summary>A table panel on the sheet: three rules, no boxes; columns as wide as they need, the rest shared out between them.</summary>
internal sealed class TableSetting(TablePanel panel) : PanelSetting(panel)
{
    private const double ColumnGap = 8.0, RowAir = 3.6;

    private static readonly Lettering Body = Lettering.Label, Head = Lettering.PanelTitle with { Size = 7.0 }, Unit = Lettering.Quiet;

    protected override double BodyHeight(double width, Gutters gutters)
    {
        var widths = WidthsFor(width);
        return HeadHeight(widths) + panel.Rows.Sum(row => RowHeight(row, widths)) + 2.0;
    }

    protected override void DrawBody(ISheet sheet, Box box, Gutters gutters)
    {
        var widths = WidthsFor(box.Width);
        var gap = ColumnGap + Math.Max(0.0, box.Width - widths.Sum() - ColumnGap * (widths.Length - 1)) / Math.Max(1, widths.Length - 1);
        var lefts = new double[widths.Length];
        for (var i = 0; i < widths.Length; i++)
        {
            lefts[i] = i == 0 ? box.Left : lefts[i - 1] + widths[i - 1] + gap;
        }

        var y = box.Top + 1.0;
        sheet.Line(box.Left, y, box.Right, y, new Stroke(Palette.Frame, 1.0));
        var headHeight = HeadHeight(widths);
        for (var i = 0; i < widths.Length; i++)
        {
            // Headings stand on the rule under them, however many lines their neighbours take.
            var texts = HeadOf(panel.Columns[i], widths[i]);
            var line = y + headHeight - RowAir / 2.0 - texts.Count * Head.LineHeight;
            foreach (var (text, lettering) in texts)
            {
                Cell(sheet, text, lefts[i], widths[i], line + Head.LineHeight / 2.0, panel.Columns[i].Alignment, lettering);
                line += Head.LineHeight;
            }
        }

        y += headHeight;
        sheet.Line(box.Left, y, box.Right, y, new Stroke(Palette.Frame, 0.6));
        foreach (var row in panel.Rows)
        {
            if (row.RuledAbove && row != panel.Rows[0])
            {
                sheet.Line(box.Left, y, box.Right, y, new Stroke(Palette.Zero, 0.4));
            }

            for (var i = 0; i < widths.Length; i++)
            {
                var line = y + RowAir / 2.0;
                foreach (var text in Wrapped.Of(row.Cells[i], LetteringOf(row), widths[i]))
                {
                    Cell(sheet, text, lefts[i], widths[i], line + Body.LineHeight / 2.0, panel.Columns[i].Alignment, LetteringOf(row));
                    line += Body.LineHeight;
                }
            }

            y += RowHeight(row, widths);
        }

        sheet.Line(box.Left, y, box.Right, y, new Stroke(Palette.Frame, 1.0));
    }

    private static Lettering LetteringOf(TableRow row) => row.Emphasised ? Head : Body;

    private static void Cell(ISheet sheet, string text, double left, double width, double y, ColumnAlignment alignment, Lettering lettering)
    {
        var (x, align) = alignment switch
        {
            ColumnAlignment.Left => (left, TextAlign.Start),
            ColumnAlignment.Centre => (left + width / 2.0, TextAlign.Middle),
            _ => (left + width, TextAlign.End),
        };
        sheet.TextCentredOn(text, x, y, lettering, align);
    }

    private static List<(string Text, Lettering Lettering)> HeadOf(TableColumn column, double width) =>
    [
        .. Wrapped.Of(column.Heading, Head, width).Select(line => (line, Head)),
        .. column.Unit.Length > 0 ? [(column.Unit, Unit)] : Array.Empty<(string, Lettering)>(),
    ];

    private double HeadHeight(double[] widths) =>
        panel.Columns.Select((column, i) => HeadOf(column, widths[i]).Count).Max() * Head.LineHeight + RowAir;

    private static double RowHeight(TableRow row, double[] widths) =>
        Math.Max(1, row.Cells.Select((cell, i) => Wrapped.Of(cell, LetteringOf(row), widths[i]).Length).Max()) * Body.LineHeight + RowAir;

    // The widest column gives way first, down to its longest word, until all fit: a long remark wraps before a number does.
    private double[] WidthsFor(double room)
    {
        var wanted = panel.Columns.Select((_, i) => WidthOf(i, text => text)).ToArray();
        var least = panel.Columns.Select((_, i) => WidthOf(i, LongestWord)).ToArray();
        var free = room - ColumnGap * (wanted.Length - 1);
        while (wanted.Sum() > free)
        {
            var widest = Enumerable.Range(0, wanted.Length).Where(i => wanted[i] > least[i]).OrderByDescending(i => wanted[i]).FirstOrDefault(-1);
            if (widest < 0)
            {
                break;
            }

            wanted[widest] = Math.Max(least[widest], wanted[widest] - 1.0);
        }

        return wanted;
    }

    private double WidthOf(int column, Func<string, string> part) => panel.Rows
        .Select(row => LetteringOf(row).WidthOf(part(row.Cells[column])))
        .Append(Head.WidthOf(part(panel.Columns[column].Heading)))
        .Append(Unit.WidthOf(panel.Columns[column].Unit))
        .Max() + 0.01;

    private static string LongestWord(string text) => text.Split(' ').MaxBy(word => word.Length) ?? "";
}
