using Heaveline.Figures;
using Heaveline.Press.Colours;
using Heaveline.Press.Curves;
using Heaveline.Press.Paper;
using Heaveline.Press.Scales;
using Heaveline.Press.Type;

namespace Heaveline.Press.Plates;

/// <summary>What stands inside the plot of a chart: its values, its curves, its marks, and where the names of curves belong.</summary>
internal static class ChartContent
{
    /// <summary>The line at a limit.</summary>
    public static Stroke LimitStroke => new(Palette.Limit, 0.7, Dash.Dashed);

    /// <summary>All values against x.</summary>
    public static IEnumerable<double> Xs(ChartPanel panel) =>
        panel.Traces.SelectMany(trace => trace.Xs.AsEnumerable())
            .Concat(panel.Ribbons.SelectMany(ribbon => ribbon.Xs.AsEnumerable()))
            .Concat(panel.Marks.Select(mark => mark.X))
            .Concat(panel.Limits.Where(limit => limit.Direction == LimitDirection.AtX).Select(limit => limit.At));

    /// <summary>All values against y.</summary>
    public static IEnumerable<double> Ys(ChartPanel panel) =>
        panel.Traces.SelectMany(trace => trace.Ys.AsEnumerable())
            .Concat(panel.Ribbons.SelectMany(ribbon => ribbon.Lows.Concat(ribbon.Highs)))
            .Concat(panel.Marks.Select(mark => mark.Y))
            .Concat(panel.Limits.Where(limit => limit.Direction == LimitDirection.AtY).Select(limit => limit.At));

    /// <summary>Share of the range to leave free round the values: curves may end at the axis, a point on it is hard to see.</summary>
    public static double RoomFor(IEnumerable<ChartPanel> panels) =>
        panels.All(panel => panel.Traces.IsEmpty && panel.Ribbons.IsEmpty) && panels.Any(panel => !panel.Marks.IsEmpty) ? 0.05 : 0.0;

    /// <summary>The last point of a curve that the axes show; null when they show none.</summary>
    public static Spot? EndOf(Trace trace, Span x, Span y)
    {
        for (var i = trace.Xs.Length - 1; i >= 0; i--)
        {
            if (trace.Xs[i] >= x.Low && trace.Xs[i] <= x.High && trace.Ys[i] >= y.Low && trace.Ys[i] <= y.High)
            {
                return new Spot(trace.Xs[i], trace.Ys[i]);
            }
        }

        return null;
    }

    /// <summary>Whether a curve ends too far inside the plot to be named beside it.</summary>
    public static bool EndsInside(Spot end, AxisScale scale, Span x) => new Scale(x, 0.0, 1.0, scale).At(end.X) < 0.9;

    /// <summary>Names of curves and level limits, each where its line leaves the plot.</summary>
    public static IEnumerable<EndLabel> EndsOf(ChartPanel panel, AxisScale scale, Span x, Span y)
    {
        foreach (var trace in panel.Traces.Where(trace => trace.Name.Length > 0))
        {
            if (EndOf(trace, x, y) is { } end && !EndsInside(end, scale, x))
            {
                yield return new EndLabel(trace.Name, Stroke.Of(trace.Pen), end.X, end.Y);
            }
        }

        foreach (var end in LimitEndsOf(panel, y))
        {
            yield return end;
        }
    }

    /// <summary>Names of level limits. One beyond the range of the axis is named at the edge, with an arrow that says where it lies.</summary>
    public static IEnumerable<EndLabel> LimitEndsOf(ChartPanel panel, Span y) =>
        from limit in panel.Limits
        where limit.Direction == LimitDirection.AtY
        let arrow = limit.At > y.High ? "↑ " : limit.At < y.Low ? "↓ " : ""
        select new EndLabel(arrow + limit.Label, LimitStroke, double.PositiveInfinity, Math.Clamp(limit.At, y.Low, y.High));

    /// <summary>Draws the ribbons: all tints, then all edges, so that overlapping ribbons stay readable.</summary>
    public static void DrawRibbons(ISheet sheet, ChartPanel panel, Box plot, Scale x, Scale y)
    {
        foreach (var ribbon in panel.Ribbons)
        {
            var lows = ribbon.Xs.Select((at, i) => Inside(x.At(at), y.At(ribbon.Lows[i]), plot)).ToArray();
            var highs = ribbon.Xs.Select((at, i) => Inside(x.At(at), y.At(ribbon.Highs[i]), plot)).ToArray();
            sheet.Area([.. Thinned.Of(lows), .. Thinned.Of(highs).Reverse()], Palette.Of(ribbon.Ink).Tinted(0.18));
        }

        foreach (var ribbon in panel.Ribbons)
        {
            foreach (var edge in new[] { ribbon.Lows, ribbon.Highs })
            {
                Spot[] way = [.. ribbon.Xs.Select((at, i) => new Spot(x.At(at), y.At(edge[i])))];
                Clipped.Of(way, plot).ForEach(run => sheet.Line(Thinned.Of(run), new Stroke(Palette.Of(ribbon.Ink).Tinted(0.45), 0.4)));
            }
        }
    }

    /// <summary>Draws the curves, the first on top, and returns their runs.</summary>
    public static List<Spot[]> DrawTraces(ISheet sheet, ChartPanel panel, Box plot, Scale x, Scale y)
    {
        var curves = new List<Spot[]>();
        foreach (var trace in panel.Traces.Reverse())
        {
            Spot[] way = [.. trace.Xs.Select((at, i) => new Spot(x.At(at), y.At(trace.Ys[i])))];
            foreach (var run in Clipped.Of(way, plot))
            {
                curves.Add(Thinned.Of(run));
                sheet.Line(curves[^1], Stroke.Of(trace.Pen));
            }
        }

        return curves;
    }

    /// <summary>
    /// Draws notes, symbols and the labels of the symbols; and, when curves are named at their ends, the names of those that end inside.
    /// </summary>
    public static void DrawMarksAndNotes(ISheet sheet, ChartPanel panel, Box plot, Scale x, Scale y, IReadOnlyList<Spot[]> curves, bool namesCurves)
    {
        Spot At(double atX, double atY) => new(x.At(atX), y.At(atY));
        var notes = panel.Notes
            .Select(note => (note.Text, Room: Anchored.RoomOf(note.Text, At(note.X, note.Y), note.Anchor, Lettering.Label, 0.0))).ToList();
        notes.ForEach(note => Anchored.Draw(sheet, note.Text, note.Room, Lettering.Label));

        var marks = panel.Marks.Where(mark => x.Shows(mark.X) && y.Shows(mark.Y)).ToArray();
        var inner = (from trace in panel.Traces
                     let end = EndOf(trace, x.Span, y.Span)
                     where namesCurves && trace.Name.Length > 0 && end is { } last && EndsInside(last, x.Kind, x.Span)
                     select (At: At(end.Value.X, end.Value.Y), trace.Name, Colour: Palette.Of(trace.Pen.Ink).AsText)).ToArray();
        (Spot At, string Label, Colour Colour)[] labels =
            [.. marks.Select(mark => (At(mark.X, mark.Y), mark.Label, Lettering.Label.Colour)), .. inner];
        var rooms = BesideMarks.Of(
            [.. labels.Select(label => (label.At, label.Label))], curves, plot, Lettering.Label, notes.Select(note => note.Room));
        foreach (var mark in marks)
        {
            Symbols.DrawDoubt(sheet, mark, x.At(mark.X), y);
            Symbols.Draw(sheet, mark.Symbol, At(mark.X, mark.Y), Palette.Of(mark.Ink));
        }

        for (var i = 0; i < labels.Length; i++)
        {
            if (labels[i].Label.Length > 0)
            {
                Anchored.Draw(sheet, labels[i].Label, rooms[i], Lettering.Label with { Colour = labels[i].Colour });
            }
        }
    }

    // What a logarithmic axis cannot place lies at its foot.
    private static Spot Inside(double x, double y, Box plot) =>
        new(Math.Clamp(double.IsNaN(x) ? plot.Left : x, plot.Left, plot.Right), Math.Clamp(double.IsNaN(y) ? plot.Bottom : y, plot.Top, plot.Bottom));
}
