using Heaveline.Press.Colours;
using Heaveline.Press.Type;

namespace Heaveline.Press.Paper;

/// <summary>Strokes often used together.</summary>
internal static class SheetShorthand
{
    public static void Line(this ISheet sheet, double x1, double y1, double x2, double y2, Stroke stroke) =>
        sheet.Line([new Spot(x1, y1), new Spot(x2, y2)], stroke);

    public static void Area(this ISheet sheet, Box box, Colour colour) =>
        sheet.Area([new(box.Left, box.Top), new(box.Right, box.Top), new(box.Right, box.Bottom), new(box.Left, box.Bottom)], colour);

    /// <summary>A line of text whose small letters stand centred on the height given.</summary>
    public static void TextCentredOn(this ISheet sheet, string text, double x, double y, Lettering lettering, TextAlign align = TextAlign.Start) =>
        sheet.Text(text, new Spot(x, y + lettering.CentreToBaseline), lettering, align);

    /// <summary>Slanting lines inside a box, 45°, cut off at its edges.</summary>
    public static void Hatch(this ISheet sheet, Box box, Stroke stroke, double apart)
    {
        // Lines x + y = c. They start from a multiple of the spacing on the sheet, so that neighbouring panels hatch in step.
        for (var c = Math.Ceiling((box.Left + box.Top) / apart) * apart; c < box.Right + box.Bottom; c += apart)
        {
            var x1 = Math.Max(box.Left, c - box.Bottom);
            var x2 = Math.Min(box.Right, c - box.Top);
            sheet.Line(x1, c - x1, x2, c - x2, stroke);
        }
    }

    /// <summary>A filled arrowhead with its tip at the end of the way from one spot to another.</summary>
    public static void Arrowhead(this ISheet sheet, Spot from, Spot tip, Colour colour, double length)
    {
        var (dx, dy) = (tip.X - from.X, tip.Y - from.Y);
        var way = Math.Sqrt(dx * dx + dy * dy);
        if (way == 0.0)
        {
            return;
        }

        var (ux, uy) = (dx / way * length, dy / way * length);
        sheet.Area(
            [
                tip,
                new(tip.X - ux - 0.36 * uy, tip.Y - uy + 0.36 * ux),
                new(tip.X - 0.78 * ux, tip.Y - 0.78 * uy),
                new(tip.X - ux + 0.36 * uy, tip.Y - uy - 0.36 * ux),
            ],
            colour);
    }

    /// <summary>The room a line of text takes when its middle stands at a height, points.</summary>
    public static Box RoomOf(this Lettering lettering, string text, double left, double centre) =>
        new(left, centre - (0.5 * lettering.Size), left + lettering.WidthOf(text), centre + (0.5 * lettering.Size));
}
