using Heaveline.Figures;
using Heaveline.Press.Colours;
using Heaveline.Press.Curves;
using Heaveline.Press.Paper;
using Heaveline.Press.Scales;
using Heaveline.Press.Type;

namespace Heaveline.Press.Plates;

/// <summary>A map panel on the sheet.</summary>
internal sealed class MapSetting : PanelSetting
{
    private const double ToBar = 9.0, Sample = 13.0;

    private readonly MapPanel panel;
    private readonly double plotHeight;
    private readonly Span xSpan, ySpan;
    private readonly Ticks yTicks;
    private readonly MapScale scale;
    private readonly EndLabels ends;
    private readonly bool named;

    /// <summary>Measures a panel.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="usualHeight">Height of its plot where it gives none, points.</param>
    /// <param name="widestName">
    /// Width the name of a curve may take right of the plot before it wraps, points; 0 where there is no room for names.
    /// </param>
    public MapSetting(MapPanel panel, double usualHeight, double widestName)
        : base(panel)
    {
        this.panel = panel;
        plotHeight = panel.Height is { } given ? given / 25.4 * 72.0 : usualHeight;
        var parts = Math.Clamp((int)(plotHeight / 17.0), 2, 10);
        xSpan = Span.Of(panel.X, panel.Grid.Xs, rounded: false, parts: 1);
        ySpan = Span.Of(panel.Y, panel.Grid.Ys, rounded: false, parts: 1);
        yTicks = Ticks.Of(ySpan.Low, ySpan.High, parts + 1, panel.Y.Scale);
        scale = new MapScale(panel, Math.Clamp((int)(plotHeight / 16.0), 5, 12));
        var names = from trace in panel.Traces
                    where trace.Name.Length > 0 && ChartContent.EndOf(trace, xSpan, ySpan) is not null
                    let end = ChartContent.EndOf(trace, xSpan, ySpan)!.Value
                    select new EndLabel(trace.Name, Stroke.Of(trace.Pen), end.X, end.Y);
        ends = new EndLabels([.. names], Math.Max(widestName, 1.0));
        named = widestName > 0.0 && ends.Fit(plotHeight);
    }

    /// <summary>The line of the hatching that means something.</summary>
    public static Stroke HatchStroke => new(Palette.QuietText, 0.35);

    /// <summary>The line of the hatching where there is no value.</summary>
    public static Stroke BlankStroke => new(Palette.Zero, 0.5);

    public override Gutters Gutters => new(AxisDrawing.NumbersWidth(yTicks), NamesWidth + ToBar + MapBar.WidthOf(scale));

    protected override double BodyHeight(double width, Gutters gutters) =>
        HeadHeight(width) + plotHeight + AxisDrawing.NumbersHeight + AxisDrawing.HeadingHeight;

    protected override void DrawBody(ISheet sheet, Box box, Gutters gutters)
    {
        var top = box.Top + HeadHeight(box.Width);
        var plot = new Box(box.Left + gutters.Left, top, box.Right - gutters.Right, top + plotHeight);
        var x = new Scale(xSpan, plot.Left, plot.Right, panel.X.Scale);
        var y = new Scale(ySpan, plot.Bottom, plot.Top, panel.Y.Scale);
        var field = MapGround.Of(panel.Grid, scale, x, y);

        DrawHead(sheet, box);
        MapShading.Draw(sheet, field, scale);
        var lines = MapShading.Lines(field, scale);
        var curves = CurvesOf(plot, x, y);
        var marks = panel.Marks
            .Where(mark => x.Shows(mark.X) && y.Shows(mark.Y)).Select(mark => (Mark: mark, At: new Spot(x.At(mark.X), y.At(mark.Y)))).ToArray();
        Spot[][] over = [.. curves.Select(curve => curve.Way)];
        var rooms = BesideMarks.Of(
            [.. marks.Select(mark => (mark.At, mark.Mark.Label))], over, plot, Lettering.Label, [], [.. lines.Select(line => line.Way)]);
        Box[] taken =
        [
            .. rooms.Where(room => room.Width > 0.0).Select(room => room.Grown(0.8)),
            .. marks.Select(mark => new Box(mark.At.X, mark.At.Y, mark.At.X, mark.At.Y).Grown(Symbols.Reach + 0.8)),
        ];
        var numbers = MapNumbers.Of(lines, scale.Numbers(), plot, taken, over);
        Box[] gaps = [.. taken, .. numbers.Select(number => number.Room)];

        DrawHatches(sheet, field, plot, gaps, x, y);
        MapShading.DrawLines(sheet, lines, scale, gaps);
        foreach (var (way, stroke) in curves)
        {
            // A light rim keeps a curve apart from the lines and shades under it.
            sheet.Line(way, new Stroke(Colour.White, stroke.Width + 1.6));
            sheet.Line(way, stroke);
        }

        numbers.ForEach(number => sheet.TextCentredOn(
            number.Text, number.Room.Centre.X, number.Room.Centre.Y, MapNumbers.Lettering, TextAlign.Middle));
        for (var i = 0; i < marks.Length; i++)
        {
            Symbols.DrawDoubt(sheet, marks[i].Mark, marks[i].At.X, y);
            sheet.Circle(marks[i].At, Symbols.Reach + 0.7, Colour.White, null);
            Symbols.Draw(sheet, marks[i].Mark.Symbol, marks[i].At, Palette.Of(marks[i].Mark.Ink));
            if (marks[i].Mark.Label.Length > 0)
            {
                Anchored.Draw(sheet, marks[i].Mark.Label, rooms[i], Lettering.Label);
            }
        }

        AxisDrawing.Upright(sheet, plot, yTicks, y);
        AxisDrawing.Level(sheet, plot, AxisDrawing.TicksAlong(x), x, panel.X.Heading);
        if (named)
        {
            ends.Draw(sheet, plot, end => new Spot(x.At(end.X), y.At(end.Y)));
        }

        MapBar.Draw(sheet, scale, panel.Hatch, plot.Right + NamesWidth + ToBar, plot.Top, plot.Bottom);
    }

    private double NamesWidth => named ? ends.Width : 0.0;

    private bool HasBlanks => panel.Grid.Values.Where((value, i) => double.IsNaN(value) && !panel.Zones.Any(zone => zone.Nodes[i])).Any();

    // Where a map has no value the zone is that of the nodes around.
    private static Func<Spot, bool> ZoneOf(MapPanel panel, MapZone zone, Scale x, Scale y)
    {
        double[] xs = [.. panel.Grid.Xs.Select(x.At)];
        double[] ys = [.. panel.Grid.Ys.Select(at => -y.At(at))];
        static int Cell(double[] places, double at) => Math.Clamp(Array.FindLastIndex(places, place => place <= at), 0, places.Length - 2);
        return spot =>
        {
            var (i, j) = (Cell(xs, spot.X), Cell(ys, -spot.Y));
            bool At(int row, int column) => zone.Nodes[(row * xs.Length) + column];
            return At(j, i) || At(j, i + 1) || At(j + 1, i) || At(j + 1, i + 1);
        };
    }

    private static Stroke ZoneStroke(MapZone zone) =>
        zone.IsBetter is { } better ? new(Palette.Of(better ? Ink.First : Ink.Second), 0.6) : new(Palette.QuietText, 0.6);

    // In grey the inks look alike: what is on neither side is hatched wider.
    private static double ZoneApart(MapZone zone) => zone.IsBetter is null ? 5.5 : 2.4;

    private void DrawHatches(ISheet sheet, ContourField field, Box plot, Box[] gaps, Scale x, Scale y)
    {
        if (panel.Hatch is { } hatch)
        {
            // Below zero a logarithm has no place: the range then reaches down without end.
            var from = hatch.From <= 0.0 && panel.Value.Scale == AxisScale.Logarithmic ? double.NegativeInfinity : scale.Inner(hatch.From);
            var to = scale.Inner(hatch.To);
            MapShading.Hatch(
                sheet, plot, HatchStroke, 3.6, falls: true, gaps, spot => field.At(spot.X, spot.Y) is var value && value >= from && value <= to);
        }

        bool None(Spot spot) => double.IsNaN(field.At(spot.X, spot.Y));
        Func<Spot, bool>[] zones = [.. panel.Zones.Select(zone => ZoneOf(panel, zone, x, y))];
        foreach (var (k, zone) in panel.Zones.Index())
        {
            bool Here(Spot spot) => None(spot) && Array.FindIndex(zones, z => z(spot)) == k;
            MapShading.Hatch(sheet, plot, ZoneStroke(zone), ZoneApart(zone), falls: zone.IsBetter != false, gaps, Here);
        }

        if (HasBlanks)
        {
            MapShading.Hatch(sheet, plot, BlankStroke, 5.0, falls: false, gaps, spot => None(spot) && !zones.Any(zone => zone(spot)));
        }
    }

    private List<(Spot[] Way, Stroke Stroke)> CurvesOf(Box plot, Scale x, Scale y) =>
    [
        .. from trace in panel.Traces.Reverse()
           let way = trace.Xs.Select((at, i) => new Spot(x.At(at), y.At(trace.Ys[i]))).ToArray()
           from run in Clipped.Of(way, plot)
           select (Thinned.Of(run), Stroke.Of(trace.Pen)),
    ];

    private Legend LegendOf(double width) =>
        new(named ? [] : panel.Traces.Where(trace => trace.Name.Length > 0 && ChartContent.EndOf(trace, xSpan, ySpan) is not null)
            .Select(trace => (trace.Name, Stroke.Of(trace.Pen))), width);

    private List<(string Text, Stroke Stroke, double Apart, bool Falls)> Hatchings =>
    [
        .. panel.Hatch is { } hatch ? [(hatch.Label, HatchStroke, 3.0, true)] : Array.Empty<(string, Stroke, double, bool)>(),
        .. panel.Zones.Select(zone => (zone.Label, ZoneStroke(zone), ZoneApart(zone), zone.IsBetter != false)),
        .. HasBlanks ? [("no value", BlankStroke, 3.0, false)] : Array.Empty<(string, Stroke, double, bool)>(),
    ];

    private bool SharesRow(double width) =>
        Lettering.AxisHeading.WidthOf(panel.Y.Heading) + Lettering.AxisHeading.WidthOf(panel.Value.Heading) + 12.0 <= width;

    private string[] HeadLines(string text, double width) => Wrapped.Of(text, Lettering.AxisHeading, width);

    private double HeadHeight(double width)
    {
        var rows = SharesRow(width) ? 1 : HeadLines(panel.Y.Heading, width).Length + HeadLines(panel.Value.Heading, width).Length;
        return (rows * Lettering.AxisHeading.LineHeight) + LegendOf(width).Height
            + (KeyPlaces(width).Select(place => place.Row + 1).DefaultIfEmpty(0).Max() * Lettering.Label.LineHeight) + 5.0;
    }

    // The y axis is named over its left end, the measure over the scale at the right; curves and hatchings in rows between them and the plot.
    private void DrawHead(ISheet sheet, Box box)
    {
        var top = box.Top;
        foreach (var (text, align) in new[] { (panel.Value.Heading, TextAlign.End), (panel.Y.Heading, TextAlign.Start) })
        {
            top = SharesRow(box.Width) ? box.Top : top;
            foreach (var line in HeadLines(text, box.Width))
            {
                sheet.TextCentredOn(
                    line,
                    align == TextAlign.Start ? box.Left : box.Right,
                    top + (Lettering.AxisHeading.LineHeight / 2.0),
                    Lettering.AxisHeading,
                    align);
                top += Lettering.AxisHeading.LineHeight;
            }
        }

        var legend = LegendOf(box.Width);
        legend.Draw(sheet, box.Left, top);
        top += legend.Height;
        foreach (var (k, (text, left, row)) in KeyPlaces(box.Width).Index())
        {
            var line = top + (row * Lettering.Label.LineHeight);
            var room = new Box(box.Left + left, line + 1.2, box.Left + left + Sample, line + Lettering.Label.LineHeight - 1.2);
            var (_, stroke, apart, falls) = Hatchings[k];
            MapShading.Hatch(sheet, room, stroke, apart, falls, [], _ => true);
            sheet.Line(
                [new(room.Left, room.Top), new(room.Right, room.Top), new(room.Right, room.Bottom), new(room.Left, room.Bottom)],
                new Stroke(Palette.Zero, 0.4),
                closed: true);
            sheet.TextCentredOn(text, room.Right + 3.0, room.Centre.Y, Lettering.Label);
        }
    }

    // The keys of the hatchings stand side by side where they fit.
    private List<(string Text, double Left, int Row)> KeyPlaces(double width)
    {
        var places = new List<(string, double, int)>();
        var (left, row) = (0.0, 0);
        foreach (var (text, _, _, _) in Hatchings)
        {
            var need = Sample + 3.0 + Lettering.Label.WidthOf(text);
            if (left > 0.0 && left + need > width)
            {
                (left, row) = (0.0, row + 1);
            }

            places.Add((text, left, row));
            left += need + 9.0;
        }

        return places;
    }
}
