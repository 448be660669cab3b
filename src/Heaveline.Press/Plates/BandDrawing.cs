using Heaveline.Figures;
using Heaveline.Press.Colours;
using Heaveline.Press.Paper;
using Heaveline.Press.Scales;
using Heaveline.Press.Type;

namespace Heaveline.Press.Plates;

/// <summary>Shaded spans of a plot, upright limit lines, and the row over the plot that names both.</summary>
internal static class BandDrawing
{
    /// <summary>Height of the row of names, points.</summary>
    public static double NamesHeight => Lettering.Quiet.LineHeight;

    /// <summary>Draws the grounds.</summary>
    public static void Grounds(ISheet sheet, IEnumerable<Band> bands, Box plot, Scale x)
    {
        foreach (var band in bands)
        {
            var room = plot with { Left = Math.Max(plot.Left, x.At(band.From)), Right = Math.Min(plot.Right, x.At(band.To)) };
            if (!(room.Width > 0.0))
            {
                continue;
            }

            switch (band.Shade)
            {
                case BandShade.Hatched:
                    sheet.Hatch(room, new Stroke(Palette.Hatch, 0.5), 4.5);
                    break;
                default:
                    sheet.Area(room, band.Shade == BandShade.Grey ? Palette.Ground : Palette.LightGround);
                    break;
            }
        }
    }

    /// <summary>Draws upright limit lines.</summary>
    public static void Uprights(ISheet sheet, IEnumerable<Limit> limits, Box plot, Scale x)
    {
        foreach (var limit in limits.Where(limit => x.Shows(limit.At)))
        {
            sheet.Line(x.At(limit.At), plot.Top, x.At(limit.At), plot.Bottom, new Stroke(Palette.Limit, 0.7, Dash.Dashed));
        }
    }

    /// <summary>The rooms of names centred over places, moved apart sideways, inside the sheet; null when they do not fit in one row.</summary>
    public static Box[]? Rooms(IReadOnlyList<(string Text, double At)> names, double left, double right, double top)
    {
        var widths = names.Select(name => Lettering.Quiet.WidthOf(name.Text)).ToArray();
        var centres = Spread.Of([.. names.Select(name => name.At)], [.. widths.Select(width => width + 5.0)], left - 2.5, right + 2.5);
        return centres is null
            ? null
            : [.. centres.Select((centre, i) => new Box(centre - widths[i] / 2.0, top, centre + widths[i] / 2.0, top + NamesHeight))];
    }

    /// <summary>The names to print over a plot: labelled bands and upright limits that it shows, and where each belongs.</summary>
    public static List<(string Text, double At)> NamesOf(IEnumerable<Band> bands, IEnumerable<Limit> limits, Scale x) =>
    [
        .. from band in bands
           let start = Math.Max(band.From, x.Span.Low)
           let end = Math.Min(band.To, x.Span.High)
           where band.Label.Length > 0 && start < end
           select (band.Label, (x.At(start) + x.At(end)) / 2.0),
        .. from limit in limits
           where x.Shows(limit.At)
           select (limit.Label, x.At(limit.At)),
    ];
}
