using Heaveline.Press.Colours;
using Heaveline.Press.Type;

namespace Heaveline.Press.Paper;

/// <summary>
/// What the layout draws on. Kept to four strokes of the hand, so that a canvas of pixels, a PDF page and an SVG text can each do them
/// exactly: in SVG a dash stays a dash and a line of text one line of text, which a general canvas would break into outlines and glyphs.
/// </summary>
internal interface ISheet
{
    /// <summary>A line through the points.</summary>
    void Line(ReadOnlySpan<Spot> points, Stroke stroke, bool closed = false);

    /// <summary>Lines of one stroke, each through its own points: hatchings, contours. A text format may say the stroke once for all.</summary>
    void Lines(IReadOnlyList<Spot[]> runs, Stroke stroke)
    {
        foreach (var run in runs)
        {
            Line(run, stroke);
        }
    }

    /// <summary>The inside of a polygon.</summary>
    void Area(ReadOnlySpan<Spot> corners, Colour colour);

    /// <summary>A circle, filled, rimmed or both.</summary>
    void Circle(Spot centre, double radius, Colour? fill, Stroke? rim);

    /// <summary>One line of text; its place is on the baseline.</summary>
    void Text(string text, Spot at, Lettering lettering, TextAlign align = TextAlign.Start);
}
