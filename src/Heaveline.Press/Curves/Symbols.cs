using Heaveline.Figures;
using Heaveline.Press.Colours;
using Heaveline.Press.Paper;
using Heaveline.Press.Scales;

namespace Heaveline.Press.Curves;

/// <summary>The symbols of points, of equal weight to the eye.</summary>
internal static class Symbols
{
    /// <summary>Half the room a symbol takes, points.</summary>
    public const double Reach = 2.4;

    /// <summary>Draws the doubt of a point's height, a line up and down as far as the axis runs.</summary>
    public static void DrawDoubt(ISheet sheet, Mark mark, double x, Scale y)
    {
        if (mark is { Low: { } low, High: { } high })
        {
            double At(double value) => y.At(Math.Clamp(value, y.Span.Low, y.Span.High));
            sheet.Line([new Spot(x, At(low)), new Spot(x, At(high))], new Stroke(Palette.Of(mark.Ink), 2.2));
        }
    }

    /// <summary>Draws a symbol.</summary>
    public static void Draw(ISheet sheet, MarkSymbol symbol, Spot at, Colour colour)
    {
        var rim = new Stroke(colour, 0.9);
        switch (symbol)
        {
            case MarkSymbol.Dot:
                sheet.Circle(at, 1.9, colour, null);
                break;
            case MarkSymbol.Ring:
                sheet.Circle(at, 1.9, Colour.White, rim);
                break;
            case MarkSymbol.Square:
                sheet.Area(new Box(at.X - 1.7, at.Y - 1.7, at.X + 1.7, at.Y + 1.7), colour);
                break;
            case MarkSymbol.Triangle:
                sheet.Area([new(at.X, at.Y - 2.4), new(at.X + 2.2, at.Y + 1.5), new(at.X - 2.2, at.Y + 1.5)], colour);
                break;
            case MarkSymbol.Diamond:
                Spot[] corners = [new(at.X, at.Y - 2.4), new(at.X + 2.4, at.Y), new(at.X, at.Y + 2.4), new(at.X - 2.4, at.Y)];
                sheet.Area(corners, Colour.White);
                sheet.Line(corners, rim, closed: true);
                break;
            case MarkSymbol.Cross:
                sheet.Line(at.X - 1.8, at.Y - 1.8, at.X + 1.8, at.Y + 1.8, rim);
                sheet.Line(at.X - 1.8, at.Y + 1.8, at.X + 1.8, at.Y - 1.8, rim);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(symbol), symbol, "No such symbol.");
        }
    }
}
