using Heaveline.Figures;
using Heaveline.Press.Colours;
using Heaveline.Press.Curves;
using Heaveline.Press.Paper;
using Heaveline.Press.Scales;
using Heaveline.Press.Type;

namespace Heaveline.Press.Plates;

/// <summary>A scene on the sheet, at one scale in both directions, as large as the width and a limit of height allow.</summary>
internal sealed class SceneSetting(ScenePanel panel) : PanelSetting(panel)
{
    // A scene higher than wide would else push everything off the page: 110 mm.
    private const double Highest = 110.0 / 25.4 * 72.0;

    private const double Arrow = 5.0;

    protected override double BodyHeight(double width, Gutters gutters) =>
        PointsPerMetre(width) * (panel.ZTo - panel.ZFrom) + (panel.ScaleBar is null ? 0.0 : Lettering.Quiet.LineHeight + 5.0);

    protected override void DrawBody(ISheet sheet, Box box, Gutters gutters)
    {
        var scale = PointsPerMetre(box.Width);
        var half = scale * (panel.XTo - panel.XFrom) / 2.0;
        var room = new Box(box.Centre.X - half, box.Top, box.Centre.X + half, box.Top + scale * (panel.ZTo - panel.ZFrom));
        Spot At(ScenePoint point) => new(
            panel.XGrowsLeft ? room.Right - scale * (point.X - panel.XFrom) : room.Left + scale * (point.X - panel.XFrom),
            room.Bottom - scale * (point.Z - panel.ZFrom));

        foreach (var shape in panel.Shapes)
        {
            switch (shape)
            {
                case LineShape line:
                    DrawLine(sheet, line, [.. line.Points.Select(At)], room);
                    break;
                case CircleShape circle:
                    sheet.Circle(
                        At(circle.Centre), scale * circle.Radius, FillOf(circle.Fill, circle.Pen), circle.Pen is { } rim ? Stroke.Of(rim) : null);
                    break;
                case SymbolShape symbol:
                    DrawSymbol(sheet, symbol, At(symbol.At));
                    break;
                case TextShape text:
                    var lettering = Lettering.Label with { Colour = Palette.Of(text.Ink) };
                    Anchored.Draw(sheet, text.Text, Anchored.RoomOf(text.Text, At(text.At), text.Anchor, lettering, 0.0), lettering);
                    break;
                case ArrowShape arrow:
                    DrawArrow(sheet, arrow, At(arrow.From), At(arrow.To));
                    break;
                case DimensionShape dimension:
                    DimensionDrawing.Draw(sheet, dimension, At);
                    break;
                default:
                    throw new ArgumentException($"The press cannot draw {shape.GetType().Name}.");
            }
        }

        if (panel.ScaleBar is { } length)
        {
            DrawScaleBar(sheet, length, panel.ScaleLabel, scale, room);
        }
    }

    private double PointsPerMetre(double width) =>
        Math.Min(width / (panel.XTo - panel.XFrom), Highest / (panel.ZTo - panel.ZFrom));

    private static Colour? FillOf(Fill fill, Pen? pen) => fill switch
    {
        Fill.None => null,
        Fill.White => Colour.White,
        Fill.LightGrey => Palette.LightGround,
        Fill.Grey => Palette.Ground,
        Fill.Tint => Palette.Of(pen?.Ink ?? Ink.Third).Tinted(0.18),
        Fill.Full => Palette.Of(pen?.Ink ?? Ink.Third),
        _ => throw new ArgumentOutOfRangeException(nameof(fill), fill, "No such fill."),
    };

    private static void DrawLine(ISheet sheet, LineShape line, Spot[] way, Box room)
    {
        if (!line.Closed)
        {
            // Open lines (a road, a ground line) may run on past the box; they are cut at its edges.
            if (line.Pen is { } open)
            {
                Clipped.Of(way, room).ForEach(run => sheet.Line(Thinned.Of(run), Stroke.Of(open)));
            }

            return;
        }

        if (FillOf(line.Fill, line.Pen) is { } inside)
        {
            sheet.Area(way, inside);
        }

        if (line.Pen is { } pen)
        {
            sheet.Line(way, Stroke.Of(pen), closed: true);
        }
    }

    private static void DrawSymbol(ISheet sheet, SymbolShape symbol, Spot at)
    {
        Symbols.Draw(sheet, symbol.Symbol, at, Palette.Of(symbol.Ink));
        if (symbol.Label.Length > 0)
        {
            Anchored.Draw(sheet, symbol.Label, Anchored.RoomOf(symbol.Label, at, symbol.Anchor, Lettering.Label, 4.2), Lettering.Label);
        }
    }

    private static void DrawArrow(ISheet sheet, ArrowShape arrow, Spot from, Spot to)
    {
        var way = Math.Max(1e-9, Math.Sqrt((to.X - from.X) * (to.X - from.X) + (to.Y - from.Y) * (to.Y - from.Y)));
        var share = Math.Max(0.0, 1.0 - 0.8 * Arrow / way);
        sheet.Line([from, new(from.X + share * (to.X - from.X), from.Y + share * (to.Y - from.Y))], Stroke.Of(arrow.Pen));
        sheet.Arrowhead(from, to, Palette.Of(arrow.Pen.Ink), Arrow);
        if (arrow.Label.Length > 0)
        {
            // Beyond the tip, on the side it points to.
            var anchor = Math.Abs(to.X - from.X) > Math.Abs(to.Y - from.Y)
                ? (to.X > from.X ? Anchor.Left : Anchor.Right)
                : (to.Y > from.Y ? Anchor.Top : Anchor.Bottom);
            Anchored.Draw(sheet, arrow.Label, Anchored.RoomOf(arrow.Label, to, anchor, Lettering.Label, 2.5), Lettering.Label);
        }
    }

    private static void DrawScaleBar(ISheet sheet, double length, string label, double scale, Box room)
    {
        var (y, stroke) = (room.Bottom + 4.0, new Stroke(Palette.Frame, 0.8));
        sheet.Line(room.Left, y, room.Left + scale * length, y, stroke);
        sheet.Line(room.Left + 0.4, y - 2.0, room.Left + 0.4, y + 2.0, stroke);
        sheet.Line(room.Left + scale * length - 0.4, y - 2.0, room.Left + scale * length - 0.4, y + 2.0, stroke);
        var words = label.Length > 0 ? label : $"{Numeral.Of(length, Ticks.Of(0.0, length, 2).Step)} m";
        sheet.TextCentredOn(words, room.Left + scale * length + 4.0, y, Lettering.Quiet);
    }
}
