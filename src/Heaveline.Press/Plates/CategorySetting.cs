using Heaveline.Figures;
using Heaveline.Press.Colours;
using Heaveline.Press.Curves;
using Heaveline.Press.Paper;
using Heaveline.Press.Scales;
using Heaveline.Press.Type;

namespace Heaveline.Press.Plates;

/// <summary>A category panel on the sheet: names at the left, bars or dots along one level axis.</summary>
internal sealed class CategorySetting : PanelSetting
{
    private const double Bar = 5.5, RowAir = 5.0, ToName = 4.0;

    private readonly CategoryPanel panel;
    private readonly Span span;
    private readonly string[][] names;
    private readonly Lettering lettering = Lettering.Label;

    /// <summary>Measures a panel.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="widestName">Width a name may take before it wraps, points.</param>
    public CategorySetting(CategoryPanel panel, double widestName)
        : base(panel)
    {
        this.panel = panel;
        names = [.. panel.Categories.Select(category => Wrapped.Of(category.Name, lettering, widestName))];
        var values = panel.Categories
            .SelectMany(category => category.Values).SelectMany(value => new[] { value.Value, value.Low ?? value.Value, value.High ?? value.Value })
            .Concat(panel.Limits.Select(limit => limit.At));
        var zero = panel.Style == CategoryStyle.Bars && panel.Value.Scale == AxisScale.Linear ? new[] { 0.0 } : [];
        span = Span.Of(panel.Value, values.Concat(zero), rounded: true, parts: 6);
    }

    public override Gutters Gutters => new(names.Max(name => Wrapped.WidthOf(name, lettering)) + ToName, 0.0);

    protected override double BodyHeight(double width, Gutters gutters) =>
        Series(width).Height + LimitsHeight + panel.Categories.Select((_, i) => RowHeight(i)).Sum() + AxisDrawing.NumbersHeight
        + AxisDrawing.HeadingHeight + 3.0;

    protected override void DrawBody(ISheet sheet, Box box, Gutters gutters)
    {
        var series = Series(box.Width);
        series.Draw(sheet, box.Left, box.Top);
        var top = box.Top + series.Height + LimitsHeight + 3.0;
        var plot = new Box(box.Left + gutters.Left, top, box.Right - gutters.Right, top + panel.Categories.Select((_, i) => RowHeight(i)).Sum());
        var x = new Scale(span, plot.Left, plot.Right, panel.Value.Scale);
        var ticks = AxisDrawing.TicksAlong(x);
        foreach (var value in ticks.Values)
        {
            sheet.Line(x.At(value), plot.Top, x.At(value), plot.Bottom, new Stroke(value == 0.0 ? Palette.Zero : Palette.Hairline, 0.5));
        }

        var y = plot.Top;
        for (var i = 0; i < names.Length; i++)
        {
            DrawRow(sheet, i, plot with { Top = y, Bottom = y + RowHeight(i) }, x);
            y += RowHeight(i);
        }

        BandDrawing.Uprights(sheet, panel.Limits, plot, x);
        var over = BandDrawing.NamesOf([], panel.Limits, x);
        var rooms = BandDrawing.Rooms(over, box.Left, box.Right, plot.Top - BandDrawing.NamesHeight)
            ?? [.. over.Select((name, i) => BandDrawing.Rooms([name], box.Left, box.Right, plot.Top - (i + 1) * BandDrawing.NamesHeight)![0])];
        for (var i = 0; i < over.Count; i++)
        {
            Anchored.Draw(sheet, over[i].Text, rooms[i], Lettering.Quiet);
        }

        AxisDrawing.Level(sheet, plot, ticks, x, panel.Value.Heading);
    }

    private double LimitsHeight => panel.Limits.Length * BandDrawing.NamesHeight;

    private Legend Series(double width) => new(
        from value in panel.Categories.SelectMany(category => category.Values)
        where value.Series.Length > 0
        group value by value.Series into one
        select (one.Key, new Stroke(Palette.Of(one.First().Ink), panel.Style == CategoryStyle.Bars ? 4.5 : 1.8)),
        width);

    private double RowHeight(int i) =>
        Math.Max(panel.Categories[i].Values.Length * Bar, names[i].Length * lettering.LineHeight) + RowAir;

    private void DrawRow(ISheet sheet, int i, Box row, Scale x)
    {
        var line = row.Centre.Y - (names[i].Length - 1) * lettering.LineHeight / 2.0;
        foreach (var text in names[i])
        {
            sheet.TextCentredOn(text, row.Left - ToName, line, lettering, TextAlign.End);
            line += lettering.LineHeight;
        }

        var values = panel.Categories[i].Values;
        for (var k = 0; k < values.Length; k++)
        {
            var y = row.Centre.Y + (k - (values.Length - 1) / 2.0) * Bar;
            DrawValue(sheet, values[k], y, row, x);
        }
    }

    private void DrawValue(ISheet sheet, CategoryValue value, double y, Box row, Scale x)
    {
        var colour = Palette.Of(value.Ink);
        double Place(double at) => Math.Clamp(x.At(at) is var place && double.IsNaN(place) ? row.Left : place, row.Left, row.Right);
        var bars = panel.Style == CategoryStyle.Bars;
        if (bars)
        {
            var (from, to) = (Place(Math.Clamp(0.0, x.Span.Low, x.Span.High)), Place(value.Value));
            sheet.Area(new Box(Math.Min(from, to), y - 0.42 * Bar, Math.Max(from, to), y + 0.42 * Bar), colour);
        }

        if (value.Low is not null || value.High is not null)
        {
            var (low, high) = (Place(value.Low ?? value.Value), Place(value.High ?? value.Value));

            // Over a dark bar a dark whisker vanishes: it gets a white edge.
            if (bars)
            {
                sheet.Line(low, y, high, y, new Stroke(Colour.White, 1.8));
            }

            var whisker = new Stroke(bars ? Palette.Text : colour, 0.8);
            sheet.Line(low, y, high, y, whisker);
            sheet.Line(low, y - 1.4, low, y + 1.4, whisker);
            sheet.Line(high, y - 1.4, high, y + 1.4, whisker);
        }

        if (!bars && x.Shows(value.Value))
        {
            Symbols.Draw(sheet, MarkSymbol.Dot, new Spot(x.At(value.Value), y), colour);
        }
    }
}
