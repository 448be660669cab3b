using Heaveline.Figures;
using Heaveline.Press.Colours;
using Heaveline.Press.Paper;
using Heaveline.Press.Scales;
using Heaveline.Press.Type;

namespace Heaveline.Press.Plates;

/// <summary>
/// Axes as the house draws them: a thin dark line along the left and the bottom, short ticks outwards, hairlines across at the y numbers.
/// </summary>
internal static class AxisDrawing
{
    // Least distance of a heading from the sheet's left edge, points.
    private const double Edge = 4.0;

    /// <summary>Length of a tick and room between it and its number, points.</summary>
    public const double Tick = 2.5, ToNumber = 2.0;

    /// <summary>Height of the row of numbers under a plot, and of the heading under them.</summary>
    public static double NumbersHeight => Tick + ToNumber + Lettering.Tick.Size;

    /// <summary>Height of the heading under the numbers.</summary>
    public static double HeadingHeight => 2.5 + Lettering.AxisHeading.Size;

    private static Stroke Line => new(Palette.Frame, 0.6);

    /// <summary>Width of the widest number, with its tick.</summary>
    public static double NumbersWidth(Ticks ticks) =>
        Tick + ToNumber + Numeral.Of(ticks).Select(Lettering.Tick.WidthOf).DefaultIfEmpty(0.0).Max();

    /// <summary>As many places along a horizontal axis as their numbers leave air between.</summary>
    public static Ticks TicksAlong(Scale scale)
    {
        for (var most = scale.Kind == AxisScale.Logarithmic ? 28 : 11; ; most--)
        {
            var ticks = Ticks.Of(scale.Span.Low, scale.Span.High, most, scale.Kind);
            if (most <= 2 || HaveAir(ticks, scale))
            {
                return ticks;
            }
        }
    }

    /// <summary>Hairlines across a plot at the y numbers, zero a little darker.</summary>
    public static void Across(ISheet sheet, Box plot, Ticks ticks, Scale y)
    {
        foreach (var value in ticks.Values)
        {
            var at = y.At(value);
            if (plot.Bottom - at > 0.5)
            {
                sheet.Line(plot.Left, at, plot.Right, at, value == 0.0 ? new Stroke(Palette.Zero, 0.5) : new Stroke(Palette.Hairline, 0.5));
            }
        }
    }

    /// <summary>The left axis with its numbers.</summary>
    public static void Upright(ISheet sheet, Box plot, Ticks ticks, Scale y)
    {
        sheet.Line(plot.Left, plot.Top, plot.Left, plot.Bottom, Line);
        foreach (var (value, number) in ticks.Values.Zip(Numeral.Of(ticks)))
        {
            var at = y.At(value);
            sheet.Line(plot.Left - Tick, at, plot.Left, at, Line);
            sheet.TextCentredOn(number, plot.Left - Tick - ToNumber, at, Lettering.Tick, TextAlign.End);
        }
    }

    /// <summary>The bottom axis, with its numbers and heading where they are wanted.</summary>
    public static void Level(ISheet sheet, Box plot, Ticks ticks, Scale x, string? heading)
    {
        sheet.Line(plot.Left, plot.Bottom, plot.Right, plot.Bottom, Line);
        foreach (var (value, number) in ticks.Values.Zip(Numeral.Of(ticks)))
        {
            var at = x.At(value);
            sheet.Line(at, plot.Bottom, at, plot.Bottom + Tick, Line);
            if (heading is not null)
            {
                sheet.Text(number, new Spot(at, plot.Bottom + NumbersHeight - 1.0), Lettering.Tick, TextAlign.Middle);
            }
        }

        if (heading is not null)
        {
            var y = plot.Bottom + NumbersHeight + HeadingHeight - 1.5;
            // In a narrow figure a long heading stands off the middle rather than over the edge.
            var middle = Math.Max(plot.Centre.X, (Lettering.AxisHeading.WidthOf(heading) / 2.0) + Edge);
            sheet.Text(heading, new Spot(middle, y), Lettering.AxisHeading, TextAlign.Middle);
        }
    }

    private static bool HaveAir(Ticks ticks, Scale scale)
    {
        var end = double.NegativeInfinity;
        foreach (var (value, number) in ticks.Values.Zip(Numeral.Of(ticks)))
        {
            var half = Lettering.Tick.WidthOf(number) / 2.0;
            if (scale.At(value) - half < end + 7.0)
            {
                return false;
            }

            end = scale.At(value) + half;
        }

        return true;
    }
}
