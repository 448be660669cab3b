using Heaveline.Press.Paper;
using Heaveline.Press.Scales;
using Heaveline.Press.Type;

namespace Heaveline.Press.Plates;

/// <summary>
/// The names to the right of a plot: each at the height where its curve ends or its limit runs, moved apart where they would overlap. A name
/// is led to its curve by a short piece of the curve's own line, so that it is read without colour.
/// </summary>
internal sealed class EndLabels
{
    /// <summary>Room between the plot and the names: lead and sample, points.</summary>
    private const double Lead = 5.0, Sample = 9.0, Gap = 2.5;

    private readonly IReadOnlyList<EndLabel> labels;
    private readonly string[][] lines;
    private readonly Lettering lettering = Lettering.Label;

    /// <summary>Breaks the names into lines.</summary>
    /// <param name="labels">What is to be named.</param>
    /// <param name="widest">The width a name may take before it is wrapped, points.</param>
    public EndLabels(IReadOnlyList<EndLabel> labels, double widest)
    {
        this.labels = labels;
        lines = [.. labels.Select(label => Wrapped.Of(label.Text, lettering, widest))];
    }

    /// <summary>The room the names take right of the plot, points; 0 without names.</summary>
    public double Width => labels.Count == 0 ? 0.0 : Lead + Sample + Gap + lines.Max(text => Wrapped.WidthOf(text, lettering));

    /// <summary>Whether all names fit beside a plot of a height.</summary>
    public bool Fit(double height) => lines.Sum(HeightOf) <= height + 2.0 * Overhang;

    // Names may reach a little above and below the plot: there is always air there.
    private static double Overhang => 3.0;

    /// <summary>The room each name takes, in the order given.</summary>
    public Box[] Rooms(Box plot, Func<EndLabel, Spot> endOf)
    {
        var centres = Spread.Of(
            [.. labels.Select(label => Math.Clamp(endOf(label).Y, plot.Top, plot.Bottom))],
            [.. lines.Select(HeightOf)],
            plot.Top - Overhang,
            plot.Bottom + Overhang)
            ?? throw new InvalidOperationException("The names do not fit beside the plot; ask Fit first.");
        var left = plot.Right + Lead + Sample + Gap;
        return [.. centres.Select((centre, i) => new Box(
            left, centre - HeightOf(lines[i]) / 2.0, left + Wrapped.WidthOf(lines[i], lettering), centre + HeightOf(lines[i]) / 2.0))];
    }

    /// <summary>Draws the names.</summary>
    public void Draw(ISheet sheet, Box plot, Func<EndLabel, Spot> endOf)
    {
        if (labels.Count == 0)
        {
            return;
        }

        var rooms = Rooms(plot, endOf);
        for (var i = 0; i < labels.Count; i++)
        {
            var (label, end, y) = (labels[i], endOf(labels[i]), rooms[i].Centre.Y);
            var from = new Spot(Math.Min(end.X + 1.0, plot.Right), Math.Clamp(end.Y, plot.Top, plot.Bottom));
            sheet.Line([from, new(plot.Right + Lead, y)], new Stroke(label.Stroke.Colour.Tinted(0.6), 0.4));
            sheet.Line(plot.Right + Lead, y, plot.Right + Lead + Sample, y, label.Stroke);
            var baseline = y - (lines[i].Length - 1) * lettering.LineHeight / 2.0;
            foreach (var line in lines[i])
            {
                sheet.TextCentredOn(line, rooms[i].Left, baseline, lettering with { Colour = label.Stroke.Colour.AsText });
                baseline += lettering.LineHeight;
            }
        }
    }

    private double HeightOf(string[] text) => text.Length * lettering.LineHeight;
}
