using Heaveline.Figures;
using Heaveline.Press.Colours;
using Heaveline.Press.Paper;
using Heaveline.Press.Type;

namespace Heaveline.Press.Plates;

/// <summary>
/// Dimension lines, as on a technical drawing [the manner of ISO 129-1]: thin lines out from the points,
/// arrows at both ends, the measure at the line.
/// </summary>
internal static class DimensionDrawing
{
    private const double Arrow = 4.0, Past = 2.5, Clear = 1.5;

    private static readonly Stroke Thin = new(Palette.QuietText, 0.5);

    /// <summary>Draws one.</summary>
    public static void Draw(ISheet sheet, DimensionShape dimension, Func<ScenePoint, Spot> at)
    {
        var (dx, dz) = (dimension.To.X - dimension.From.X, dimension.To.Z - dimension.From.Z);
        var way = Math.Sqrt(dx * dx + dz * dz);
        var (nx, nz) = way == 0.0 ? (0.0, 1.0) : (-dz / way, dx / way);
        ScenePoint Off(ScenePoint point) => new(point.X + dimension.Offset * nx, point.Z + dimension.Offset * nz);

        var (first, second) = (at(dimension.From), at(dimension.To));
        var (from, to) = (at(Off(dimension.From)), at(Off(dimension.To)));
        Extension(sheet, first, from);
        Extension(sheet, second, to);

        var (px, py) = (to.X - from.X, to.Y - from.Y);
        var length = Math.Sqrt(px * px + py * py);
        if (length >= 2.5 * Arrow)
        {
            sheet.Line([from, to], Thin);
            sheet.Arrowhead(to, from, Thin.Colour, Arrow);
            sheet.Arrowhead(from, to, Thin.Colour, Arrow);
        }
        else if (length > 0.0)
        {
            // No room between the points: the arrows point inwards from outside.
            var (ux, uy) = (px / length, py / length);
            Spot before = new(from.X - 2.5 * Arrow * ux, from.Y - 2.5 * Arrow * uy), after = new(to.X + 2.5 * Arrow * ux, to.Y + 2.5 * Arrow * uy);
            sheet.Line([before, after], Thin);
            sheet.Arrowhead(before, from, Thin.Colour, Arrow);
            sheet.Arrowhead(after, to, Thin.Colour, Arrow);
        }

        Spot middle = new((from.X + to.X) / 2.0, (from.Y + to.Y) / 2.0);
        var anchor = Math.Abs(px) >= Math.Abs(py) ? Anchor.Bottom : Anchor.Left;
        var room = Anchored.RoomOf(dimension.Text, middle, anchor, Lettering.Label, anchor == Anchor.Left ? 3.5 : 1.5);

        // On white, so that the thin line of a farther dimension passes behind the measure.
        sheet.Area(room, Colour.White);
        Anchored.Draw(sheet, dimension.Text, room, Lettering.Label);
    }

    private static void Extension(ISheet sheet, Spot point, Spot end)
    {
        var (dx, dy) = (end.X - point.X, end.Y - point.Y);
        var length = Math.Sqrt(dx * dx + dy * dy);
        if (length <= Clear)
        {
            return;
        }

        var (ux, uy) = (dx / length, dy / length);
        sheet.Line([new(point.X + Clear * ux, point.Y + Clear * uy), new(end.X + Past * ux, end.Y + Past * uy)], Thin);
    }
}
