using Heaveline.Press.Colours;
using Heaveline.Press.Paper;
using Heaveline.Press.Type;

namespace Heaveline.Tests.Press;

/// <summary>A sheet that remembers what was put on it.</summary>
internal sealed class RecordedSheet : ISheet
{
    public List<(string Text, Box Room)> Texts { get; } = [];

    public List<Spot> Spots { get; } = [];

    public void Line(ReadOnlySpan<Spot> points, Stroke stroke, bool closed = false) => Spots.AddRange(points);

    public void Area(ReadOnlySpan<Spot> corners, Colour colour) => Spots.AddRange(corners);

    public void Circle(Spot centre, double radius, Colour? fill, Stroke? rim) =>
        Spots.AddRange([new(centre.X - radius, centre.Y - radius), new(centre.X + radius, centre.Y + radius)]);

    public void Text(string text, Spot at, Lettering lettering, TextAlign align = TextAlign.Start)
    {
        var width = lettering.WidthOf(text);
        var left = at.X - align switch { TextAlign.Start => 0.0, TextAlign.Middle => width / 2.0, _ => width };

        // Ascent and descent of ordinary letters; a touch of the boxes is not yet a touch of the ink.
        Texts.Add((text, new Box(left, at.Y - 0.73 * lettering.Size, left + width, at.Y + 0.15 * lettering.Size)));
    }
}
