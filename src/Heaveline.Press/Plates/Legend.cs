using Heaveline.Press.Paper;
using Heaveline.Press.Type;

namespace Heaveline.Press.Plates;

/// <summary>Names in a row over a panel, each after a sample of its line; used where they do not fit at the ends of the curves.</summary>
internal sealed class Legend
{
    private const double Sample = 13.0, Gap = 3.0, Between = 9.0;

    private readonly List<(string Text, Stroke Stroke, double X, int Row)> placed = [];
    private readonly Lettering lettering = Lettering.Label;
    private readonly int rows;

    /// <summary>Breaks the names into rows of a width.</summary>
    public Legend(IEnumerable<(string Text, Stroke Stroke)> names, double width)
    {
        var x = 0.0;
        foreach (var (text, stroke) in names)
        {
            var need = Sample + Gap + lettering.WidthOf(text);
            if (x > 0.0 && x + need > width)
            {
                (x, rows) = (0.0, rows + 1);
            }

            placed.Add((text, stroke, x, rows));
            x += need + Between;
        }

        rows = placed.Count == 0 ? 0 : rows + 1;
    }

    /// <summary>Height of all rows, points.</summary>
    public double Height => rows * lettering.LineHeight;

    /// <summary>Draws the rows from their top left corner.</summary>
    public void Draw(ISheet sheet, double left, double top)
    {
        foreach (var (text, stroke, x, row) in placed)
        {
            var y = top + (row + 0.5) * lettering.LineHeight;
            sheet.Line(left + x, y, left + x + Sample, y, stroke);
            sheet.TextCentredOn(text, left + x + Sample + Gap, y, lettering);
        }
    }
}
