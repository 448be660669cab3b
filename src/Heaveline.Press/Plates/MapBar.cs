using Heaveline.Figures;
using Heaveline.Press.Colours;
using Heaveline.Press.Paper;
using Heaveline.Press.Scales;
using Heaveline.Press.Type;

namespace Heaveline.Press.Plates;

/// <summary>The scale beside a map: its shades one over the other, each level across it in the manner of its line, with its number.</summary>
internal static class MapBar
{
    private const double Bar = 9.0;

    /// <summary>Width with the numbers, points.</summary>
    public static double WidthOf(MapScale scale) =>
        Bar + AxisDrawing.Tick + AxisDrawing.ToNumber + scale.Numbers().Select(Lettering.Tick.WidthOf).DefaultIfEmpty(0.0).Max();

    /// <summary>Draws the scale, as high as a box, from its left side.</summary>
    public static void Draw(ISheet sheet, MapScale scale, MapHatch? hatch, double left, double top, double bottom)
    {
        var place = new Scale(new Span(scale.Low, scale.High), bottom, top, AxisScale.Linear);
        double At(double value) => Math.Clamp(place.At(scale.Inner(value)), top, bottom);
        double[] edges = [bottom, .. scale.Levels.Select(At), top];
        var box = new Box(left, top, left + Bar, bottom);
        for (var band = 0; band < edges.Length - 1; band++)
        {
            if (edges[band] - edges[band + 1] > 0.0)
            {
                sheet.Area(box with { Top = edges[band + 1], Bottom = edges[band] }, scale.ShadeOf(band));
            }
        }

        if (hatch is not null)
        {
            // A logarithmic measure has no place for a range that begins at zero or below: it reaches to the foot.
            var (from, to) = (At(hatch.From), At(hatch.To));
            from = double.IsNaN(from) ? bottom : from;
            MapShading.Hatch(sheet, box, MapSetting.HatchStroke, 3.0, falls: true, [], spot => spot.Y <= from && spot.Y >= to);
        }

        var frame = new Stroke(Palette.Frame, 0.6);
        var end = double.PositiveInfinity;
        var numbers = scale.Numbers();
        foreach (var level in Enumerable.Range(0, numbers.Length)
            .Where(level => scale.Span.Low <= scale.Levels[level] && scale.Levels[level] <= scale.Span.High))
        {
            var y = At(scale.Levels[level]);
            sheet.Line(box.Left, y, box.Right, y, scale.LineOf(scale.Levels[level]));
            if (end - y >= Lettering.Tick.Size + 0.5)
            {
                sheet.Line(box.Right, y, box.Right + AxisDrawing.Tick, y, frame);
                sheet.TextCentredOn(numbers[level], box.Right + AxisDrawing.Tick + AxisDrawing.ToNumber, y, Lettering.Tick);
                end = y;
            }
        }

        sheet.Line([new(box.Left, box.Top), new(box.Right, box.Top), new(box.Right, box.Bottom), new(box.Left, box.Bottom)], frame, closed: true);
    }
}
