using Heaveline.Figures;
using Heaveline.Press.Colours;

namespace Heaveline.Press.Paper;

/// <summary>How a line is put on the sheet; the width in points.</summary>
internal readonly record struct Stroke(Colour Colour, double Width, Dash Dash = Dash.Solid)
{
    public static Stroke Of(Pen pen) => new(Palette.Of(pen.Ink), pen.Width, pen.Dash);

    /// <summary>
    /// Lengths of marks and gaps in turn, points; empty when unbroken. They grow with the width, but not below what a thin line needs to read.
    /// </summary>
    public double[] Pattern
    {
        get
        {
            var unit = Math.Max(Width, 0.7);
            return Dash switch
            {
                Dash.Solid => [],
                Dash.Dashed => [4.2 * unit, 2.2 * unit],
                Dash.Dotted => [1.1 * unit, 1.7 * unit],
                Dash.DashDot => [5.4 * unit, 1.9 * unit, 1.1 * unit, 1.9 * unit],
                _ => throw new ArgumentOutOfRangeException(nameof(Dash), Dash, "No such dash."),
            };
        }
    }
}
