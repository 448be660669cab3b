using System.Text;
using Heaveline.Press.Type;
using SkiaSharp;

namespace Heaveline.Press.Paper;

/// <summary>Letters as the outlines of their glyphs, for programs that do not use the font which a file carries.</summary>
internal static class LetterOutlines
{
    /// <summary>Writes a line of text as the data of an SVG path [W3C Scalable Vector Graphics 1.1, 8.3].</summary>
    /// <param name="data">Receives the data.</param>
    /// <param name="text">The text.</param>
    /// <param name="at">Its place on the baseline, points.</param>
    /// <param name="lettering">How it is set.</param>
    /// <param name="align">Which part of the text stands at its place.</param>
    public static void Write(StringBuilder data, string text, Spot at, Lettering lettering, TextAlign align)
    {
        var left = at.X - (align switch
        {
            TextAlign.Start => 0.0,
            TextAlign.Middle => 0.5 * lettering.WidthOf(text),
            _ => lettering.WidthOf(text),
        });
        using var font = Typefaces.FontOf(lettering.Face, lettering.Size);
        using var path = font.GetTextPath(text, new SKPoint((float)left, (float)at.Y));
        using var strokes = path.CreateRawIterator();
        var points = new SKPoint[4];
        for (var verb = strokes.Next(points); verb != SKPathVerb.Done; verb = strokes.Next(points))
        {
            switch (verb)
            {
                case SKPathVerb.Move:
                    To('M', points.AsSpan(0, 1));
                    break;
                case SKPathVerb.Line:
                    To('L', points.AsSpan(1, 1));
                    break;
                case SKPathVerb.Quad:
                    To('Q', points.AsSpan(1, 2));
                    break;
                case SKPathVerb.Cubic:
                    To('C', points.AsSpan(1, 3));
                    break;
                case SKPathVerb.Close:
                    data.Append('Z');
                    break;
                default:
                    throw new NotSupportedException($"No way is known to write a {verb} of a glyph.");
            }
        }

        void To(char letter, ReadOnlySpan<SKPoint> places)
        {
            for (var i = 0; i < places.Length; i++)
            {
                data.Append(i == 0 ? letter : ' ').Append(SvgSheet.Number(places[i].X)).Append(' ').Append(SvgSheet.Number(places[i].Y));
            }
        }
    }
}
