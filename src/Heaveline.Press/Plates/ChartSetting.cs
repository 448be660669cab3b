using Heaveline.Figures;
using Heaveline.Press.Paper;
using Heaveline.Press.Scales;
using Heaveline.Press.Type;

namespace Heaveline.Press.Plates;

/// <summary>A chart panel on the sheet.</summary>
internal sealed class ChartSetting : PanelSetting
{
    private readonly ChartPanel panel;
    private readonly ChartPlace place;
    private readonly Axis xAxis;
    private readonly Span xSpan, ySpan;
    private readonly Ticks yTicks;
    private readonly EndLabels ends;
    private readonly bool named;

    /// <summary>Measures a panel.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="xAxis">The x axis it stands on.</param>
    /// <param name="xSpan">The range of that axis.</param>
    /// <param name="place">Its place among the others.</param>
    public ChartSetting(ChartPanel panel, Axis xAxis, Span xSpan, ChartPlace place)
        : base(panel)
    {
        (this.panel, this.xAxis, this.xSpan, this.place) = (panel, xAxis, xSpan, place);
        var parts = Math.Clamp((int)(place.PlotHeight / 17.0), 2, 8);
        ySpan = Span.Of(panel.Y, ChartContent.Ys(panel), rounded: true, parts, ChartContent.RoomFor([panel]));
        yTicks = Ticks.Of(ySpan.Low, ySpan.High, parts + 1, panel.Y.Scale);
        ends = new EndLabels([.. ChartContent.EndsOf(panel, xAxis.Scale, xSpan, ySpan)], place.WidestName);
        named = ends.Fit(place.PlotHeight);
        if (!named)
        {
            ends = new EndLabels([.. ChartContent.LimitEndsOf(panel, ySpan)], place.WidestName);
        }
    }

    public override Gutters Gutters => new(AxisDrawing.NumbersWidth(yTicks), ends.Width);

    protected override double BodyHeight(double width, Gutters gutters) =>
        HeadHeight(width, gutters) + place.PlotHeight
        + (place.ShowsXNumbers ? AxisDrawing.NumbersHeight + AxisDrawing.HeadingHeight : AxisDrawing.Tick);

    protected override void DrawBody(ISheet sheet, Box box, Gutters gutters)
    {
        var top = box.Top + HeadHeight(box.Width, gutters);
        var plot = new Box(box.Left + gutters.Left, top, box.Right - gutters.Right, top + place.PlotHeight);
        var x = new Scale(xSpan, plot.Left, plot.Right, xAxis.Scale);
        var y = new Scale(ySpan, plot.Bottom, plot.Top, panel.Y.Scale);

        DrawHead(sheet, box, plot, x);
        BandDrawing.Grounds(sheet, Bands, plot, x);
        AxisDrawing.Across(sheet, plot, yTicks, y);
        ChartContent.DrawRibbons(sheet, panel, plot, x, y);
        BandDrawing.Uprights(sheet, Uprights, plot, x);
        foreach (var limit in panel.Limits.Where(limit => limit.Direction == LimitDirection.AtY && y.Shows(limit.At)))
        {
            sheet.Line(plot.Left, y.At(limit.At), plot.Right, y.At(limit.At), ChartContent.LimitStroke);
        }

        AxisDrawing.Upright(sheet, plot, yTicks, y);
        AxisDrawing.Level(sheet, plot, AxisDrawing.TicksAlong(x), x, place.ShowsXNumbers ? xAxis.Heading : null);
        var curves = ChartContent.DrawTraces(sheet, panel, plot, x, y);
        ends.Draw(sheet, plot, end => new Spot(double.IsInfinity(end.X) ? plot.Right : x.At(end.X), y.At(end.Y)));
        ChartContent.DrawMarksAndNotes(sheet, panel, plot, x, y, curves, named);
    }

    private IEnumerable<Band> Bands => place.SharedBands.Concat(panel.Bands);

    private IEnumerable<Limit> Uprights => panel.Limits.Where(limit => limit.Direction == LimitDirection.AtX);

    private Legend LegendOf(double width) =>
        new(named ? [] : panel.Traces.Where(trace => trace.Name.Length > 0).Select(trace => (trace.Name, Stroke.Of(trace.Pen))), width);

    private List<(string Text, double At)> NamesOver(double width, Gutters gutters)
    {
        var x = new Scale(xSpan, gutters.Left, width - gutters.Right, xAxis.Scale);
        return BandDrawing.NamesOf(place.NamesSharedBands ? Bands : panel.Bands, Uprights, x);
    }

    // Names over the plot take one row; when they would not fit side by side, a row each.
    private double NamesHeight(double width, Gutters gutters)
    {
        var names = NamesOver(width, gutters);
        var rows = names.Count == 0 ? 0 : BandDrawing.Rooms(names, 0.0, width, 0.0) is null ? names.Count : 1;
        return rows * BandDrawing.NamesHeight;
    }

    private double HeadHeight(double width, Gutters gutters) =>
        Wrapped.Of(panel.Y.Heading, Lettering.AxisHeading, width).Length * Lettering.AxisHeading.LineHeight
        + LegendOf(width).Height + Math.Max(NamesHeight(width, gutters) + 2.0, 4.5);

    private void DrawHead(ISheet sheet, Box box, Box plot, Scale x)
    {
        var top = box.Top;
        foreach (var line in Wrapped.Of(panel.Y.Heading, Lettering.AxisHeading, box.Width))
        {
            sheet.TextCentredOn(line, box.Left, top + Lettering.AxisHeading.LineHeight / 2.0, Lettering.AxisHeading);
            top += Lettering.AxisHeading.LineHeight;
        }

        var legend = LegendOf(box.Width);
        legend.Draw(sheet, box.Left, top);
        top += legend.Height;
        var names = BandDrawing.NamesOf(place.NamesSharedBands ? Bands : panel.Bands, Uprights, x);
        var rooms = BandDrawing.Rooms(names, box.Left, box.Right, top)
            ?? [.. names.Select((name, i) => BandDrawing.Rooms([name], box.Left, box.Right, top + i * BandDrawing.NamesHeight)![0])];
        for (var i = 0; i < names.Count; i++)
        {
            Anchored.Draw(sheet, names[i].Text, rooms[i], Lettering.Quiet);
        }
    }
}
