using Heaveline.Figures;
using Heaveline.Press.Colours;
using Heaveline.Press.Paper;
using Heaveline.Press.Plates;
using Heaveline.Press.Type;

namespace Heaveline.Press.Sheets;

/// <summary>A table set over as many pages as it needs, its head on each.</summary>
internal static class PdfTable
{
    private const double Air = 10.0;

    private static readonly Lettering Head = new(Face.Bold, 8.5, Palette.Text);

    public static void Set(PageFlow flow, TablePanel table, string caption)
    {
        var shown = table with
        {
            Title = "",
            Columns = [.. table.Columns
                .Select(c => c with { Heading = Glyphs.Shown(c.Heading, Face.Bold), Unit = Glyphs.Shown(c.Unit, Face.Regular) })],
            Rows = [.. table.Rows.Select(r => r with { Cells = [.. r.Cells.Select(c => Glyphs.Shown(c, Face.Regular))] })],
        };
        var from = 0;
        while (from < shown.Rows.Length)
        {
            var title = Wrapped.Of(Glyphs.Shown(from == 0 ? caption : caption + " (continued)", Face.Bold), Head, PageFlow.Width);
            var over = title.Length * Head.LineHeight + 3.0;

            var least = Math.Min(shown.Rows.Length - from, Together(shown));
            flow.Need(over + HeightOf(Some(shown, from, least)));
            var count = least;
            while (from + count < shown.Rows.Length && over + HeightOf(Some(shown, from, count + 1)) <= flow.Left)
            {
                count++;
            }

            foreach (var line in title)
            {
                flow.Line(line, Head);
            }

            flow.Take(3.0);
            var panel = Some(shown, from, count);
            var height = HeightOf(panel);
            flow.Draw(1.0, sheet => new TableSetting(panel).Draw(sheet, new Box(0.0, 0.0, PageFlow.Width, height), default));
            flow.Take(height);
            flow.Skip(Air);
            from += count;
        }
    }

    /// <summary>Height that a table's first rows ask for, with its head, points.</summary>
    public static double Least(TablePanel table) => HeightOf(Some(table, 0, Together(table)));

    // A short table stays whole; a long one brings at least four rows along.
    private static int Together(TablePanel table) => table.Rows.Length <= 12 ? table.Rows.Length : 4;

    private static TablePanel Some(TablePanel table, int from, int count) => table with { Rows = [.. table.Rows.Skip(from).Take(count)] };

    private static double HeightOf(TablePanel panel) => new TableSetting(panel).HeightOf(PageFlow.Width, default);
}
