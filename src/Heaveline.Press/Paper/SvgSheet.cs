using System.Globalization;
using System.Security;
using System.Text;
using System.Xml;
using Heaveline.Press.Colours;
using Heaveline.Press.Type;

namespace Heaveline.Press.Paper;

/// <summary>
/// A sheet written as SVG elements [W3C Scalable Vector Graphics 1.1]. Holds no ids, so that several figures can stand in one page.
/// </summary>
/// <param name="outlines">Whether letters are drawn as their outlines, so that no font is needed; else text stays text.</param>
internal sealed class SvgSheet(bool outlines = false) : ISheet
{
    private readonly StringBuilder elements = new();
    private readonly SortedSet<Face> faces = [];

    /// <summary>The elements drawn so far.</summary>
    public string Elements => elements.ToString();

    /// <summary>The faces used so far.</summary>
    public IReadOnlySet<Face> Faces => faces;

    public void Line(ReadOnlySpan<Spot> points, Stroke stroke, bool closed = false)
    {
        elements.Append("<path d=\"");
        Way(points, closed);
        elements.Append("\" fill=\"none\"");
        Stroked(stroke);
        elements.Append("/>\n");
    }

    public void Lines(IReadOnlyList<Spot[]> runs, Stroke stroke)
    {
        if (runs.Count == 0)
        {
            return;
        }

        elements.Append("<path d=\"");
        foreach (var run in runs)
        {
            Way(run, closed: false);
        }

        elements.Append("\" fill=\"none\"");
        Stroked(stroke);
        elements.Append("/>\n");
    }

    public void Area(ReadOnlySpan<Spot> corners, Colour colour)
    {
        elements.Append("<path d=\"");
        Way(corners, closed: true);
        elements.Append($"\" fill=\"{colour.Hex}\"/>\n");
    }

    public void Circle(Spot centre, double radius, Colour? fill, Stroke? rim)
    {
        elements.Append($"<circle cx=\"{Number(centre.X)}\" cy=\"{Number(centre.Y)}\" r=\"{Number(radius)}\" fill=\"{fill?.Hex ?? "none"}\"");
        if (rim is { } edge)
        {
            Stroked(edge);
        }

        elements.Append("/>\n");
    }

    public void Text(string text, Spot at, Lettering lettering, TextAlign align = TextAlign.Start)
    {
        if (outlines)
        {
            elements.Append("<path d=\"");
            LetterOutlines.Write(elements, text, at, lettering, align);
            elements.Append($"\" fill=\"{lettering.Colour.Hex}\"/>\n");
            return;
        }

        faces.Add(lettering.Face);
        elements.Append($"<text x=\"{Number(at.X)}\" y=\"{Number(at.Y)}\" font-size=\"{Number(lettering.Size)}\" fill=\"{lettering.Colour.Hex}\"");
        elements.Append(align switch
        {
            TextAlign.Start => "",
            TextAlign.Middle => " text-anchor=\"middle\"",
            _ => " text-anchor=\"end\"",
        });
        elements.Append(lettering.Face switch
        {
            Face.Bold => " font-weight=\"700\"",
            Face.Italic => " font-style=\"italic\"",
            _ => "",
        });
        elements.Append($">{Escaped(text)}</text>\n");
    }

    /// <summary>A length in points, to a hundredth: a seventh of a hair's breadth on paper, and the same digits on every machine.</summary>
    public static string Number(double value) => (Math.Round(value, 2) + 0.0).ToString("0.##", CultureInfo.InvariantCulture);

    /// <summary>A text as XML content; characters that XML cannot hold become U+FFFD.</summary>
    public static string Escaped(string text) => SecurityElement.Escape(string.Concat(text.EnumerateRunes().Select(rune =>
        rune.IsBmp && !XmlConvert.IsXmlChar((char)rune.Value) ? "\uFFFD" : rune.ToString())));

    private void Way(ReadOnlySpan<Spot> points, bool closed)
    {
        for (var i = 0; i < points.Length; i++)
        {
            // After a move, further pairs are lines: no letter is needed.
            elements.Append(i == 0 ? 'M' : ' ').Append(Number(points[i].X)).Append(' ').Append(Number(points[i].Y));
        }

        elements.Append(closed ? "Z" : "");
    }

    private void Stroked(Stroke stroke)
    {
        elements.Append($" stroke=\"{stroke.Colour.Hex}\" stroke-width=\"{Number(stroke.Width)}\" stroke-linejoin=\"round\"");
        if (stroke.Pattern is { Length: > 0 } pattern)
        {
            elements.Append($" stroke-dasharray=\"{string.Join(' ', pattern.Select(Number))}\"");
        }
    }
}
