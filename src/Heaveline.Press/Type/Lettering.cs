using Heaveline.Press.Colours;

namespace Heaveline.Press.Type;

/// <summary>How a line of text is set; the size in points.</summary>
internal readonly record struct Lettering(Face Face, double Size, Colour Colour)
{
    public static Lettering Title => new(Face.Bold, 9.0, Palette.Text);

    public static Lettering PanelTitle => new(Face.Bold, 7.5, Palette.Text);

    public static Lettering AxisHeading => new(Face.Regular, 7.5, Palette.Text);

    public static Lettering Tick => new(Face.Regular, 7.0, Palette.Text);

    public static Lettering Label => new(Face.Regular, 7.0, Palette.Text);

    public static Lettering Quiet => new(Face.Regular, 7.0, Palette.QuietText);

    public static Lettering Caption => new(Face.Regular, 7.5, Palette.Text);

    public static Lettering SignNote => new(Face.Italic, 6.5, Palette.QuietText);

    /// <summary>From one baseline to the next, points.</summary>
    public double LineHeight => 1.3 * Size;

    /// <summary>From the middle of the small letters and figures down to the baseline, points: half the cap height of the face, 0.727 em.</summary>
    public double CentreToBaseline => 0.36 * Size;

    /// <summary>Width of a line of text, points.</summary>
    public double WidthOf(string text) => Typefaces.WidthOf(text, Face, Size);
}
