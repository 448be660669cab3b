using Heaveline.Press.Colours;
using Heaveline.Press.Type;
using SkiaSharp;

namespace Heaveline.Press.Paper;

/// <summary>A sheet over a Skia canvas whose unit is the point: pixels and PDF pages.</summary>
internal sealed class SkiaSheet(SKCanvas canvas) : ISheet
{
    public void Line(ReadOnlySpan<Spot> points, Stroke stroke, bool closed = false)
    {
        using var path = PathOf(points, closed);
        using var paint = PaintOf(stroke);
        using var dashes = paint.PathEffect;
        canvas.DrawPath(path, paint);
    }

    public void Area(ReadOnlySpan<Spot> corners, Colour colour)
    {
        using var path = PathOf(corners, closed: true);
        using var paint = PaintOf(colour);
        canvas.DrawPath(path, paint);
    }

    public void Circle(Spot centre, double radius, Colour? fill, Stroke? rim)
    {
        if (fill is { } inside)
        {
            using var paint = PaintOf(inside);
            canvas.DrawCircle((float)centre.X, (float)centre.Y, (float)radius, paint);
        }

        if (rim is { } edge)
        {
            using var paint = PaintOf(edge);
            using var dashes = paint.PathEffect;
            canvas.DrawCircle((float)centre.X, (float)centre.Y, (float)radius, paint);
        }
    }

    public void Text(string text, Spot at, Lettering lettering, TextAlign align = TextAlign.Start)
    {
        using var font = Typefaces.FontOf(lettering.Face, lettering.Size);
        using var paint = PaintOf(lettering.Colour);
        var side = align switch
        {
            TextAlign.Start => SKTextAlign.Left,
            TextAlign.Middle => SKTextAlign.Center,
            _ => SKTextAlign.Right,
        };
        canvas.DrawText(text, (float)at.X, (float)at.Y, side, font, paint);
    }

    private static SKPath PathOf(ReadOnlySpan<Spot> points, bool closed)
    {
        using var builder = new SKPathBuilder();
        for (var i = 0; i < points.Length; i++)
        {
            if (i == 0)
            {
                builder.MoveTo((float)points[i].X, (float)points[i].Y);
            }
            else
            {
                builder.LineTo((float)points[i].X, (float)points[i].Y);
            }
        }

        if (closed)
        {
            builder.Close();
        }

        return builder.Detach();
    }

    private static SKPaint PaintOf(Colour colour) =>
        new() { Color = new SKColor(colour.Red, colour.Green, colour.Blue), Style = SKPaintStyle.Fill, IsAntialias = true };

    private static SKPaint PaintOf(Stroke stroke)
    {
        var pattern = stroke.Pattern;
        return new()
        {
            Color = new SKColor(stroke.Colour.Red, stroke.Colour.Green, stroke.Colour.Blue),
            Style = SKPaintStyle.Stroke,
            StrokeWidth = (float)stroke.Width,
            StrokeJoin = SKStrokeJoin.Round,
            IsAntialias = true,
            PathEffect = pattern.Length == 0 ? null : SKPathEffect.CreateDash(Array.ConvertAll(pattern, length => (float)length), 0.0f),
        };
    }
}
