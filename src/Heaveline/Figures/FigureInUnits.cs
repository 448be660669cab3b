using System.Collections.Immutable;
using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>A figure in the units of a reader: curves and places by the factor of their axis, words and cells number by number.</summary>
internal static class FigureInUnits
{
    public static Figure Of(Figure figure, ReaderUnits units) => !units.IsImperial ? figure : figure with
    {
        Title = units.Text(figure.Title),
        AltText = units.Text(figure.AltText),
        Caption = units.Text(figure.Caption),
        SignNote = units.Text(figure.SignNote),
        SharedX = figure.SharedX is { } x ? Turned(x, units) : null,
        SharedBands = Bands(figure.SharedBands, figure.SharedX, units),
        Panels = [.. figure.Panels.Select(panel => Turned(panel, figure.SharedX, units))],
    };

    /// <summary>A table's columns and cells.</summary>
    public static TablePanel Of(TablePanel table, ReaderUnits units) => !units.IsImperial ? table : table with
    {
        Title = units.Text(table.Title),
        Columns = [.. table.Columns.Select(c => c with { Heading = units.Text(c.Heading), Unit = units.Unit(c.Unit) })],
        Rows =
        [
            .. table.Rows.Select(r => r with
            {
                Unit = units.Unit(r.Unit),
                Cells = [.. r.Cells.Select((cell, k) => Cell(cell, table.Columns[k].Unit.Length > 0 ? table.Columns[k].Unit : r.Unit, units))],
            }),
        ],
    };

    private static string Cell(string cell, string unit, ReaderUnits units) =>
        units.For(unit) is null ? units.Text(cell)
        : cell == unit ? units.Unit(unit)
        : units.Number(unit, cell) is var number && number != cell ? number
        : units.Text(cell);

    private static Panel Turned(Panel panel, Axis? shared, ReaderUnits units) => panel switch
    {
        ChartPanel chart => Turned(chart, (chart.X ?? shared)!, units),
        CategoryPanel categories => Turned(categories, units),
        MapPanel map => Turned(map, units),
        ScenePanel scene => Turned(scene, units),
        TablePanel table => Of(table, units),
        _ => throw new ArgumentOutOfRangeException(nameof(panel), panel, "No such panel."),
    };

    private static ChartPanel Turned(ChartPanel panel, Axis across, ReaderUnits units)
    {
        var (x, y) = (units.Factor(across.Unit), units.Factor(panel.Y.Unit));
        return panel with
        {
            Title = units.Text(panel.Title),
            X = panel.X is { } own ? Turned(own, units) : null,
            Y = Turned(panel.Y, units),
            Traces = Traces(panel.Traces, x, y, units),
            Ribbons = [.. panel.Ribbons.Select(r => new Ribbon { Xs = By(r.Xs, x), Lows = By(r.Lows, y), Highs = By(r.Highs, y), Ink = r.Ink })],
            Bands = Bands(panel.Bands, across, units),
            Limits =
            [
                .. panel.Limits.Select(l => l with { At = l.At * (l.Direction == LimitDirection.AtX ? x : y), Label = units.Text(l.Label) }),
            ],
            Marks = Marks(panel.Marks, x, y, units),
            Notes = [.. panel.Notes.Select(n => n with { X = n.X * x, Y = n.Y * y, Text = units.Text(n.Text) })],
        };
    }

    private static CategoryPanel Turned(CategoryPanel panel, ReaderUnits units)
    {
        var by = units.Factor(panel.Value.Unit);
        return panel with
        {
            Title = units.Text(panel.Title),
            Value = Turned(panel.Value, units),
            Categories =
            [
                .. panel.Categories.Select(c => c with
                {
                    Name = units.Text(c.Name),
                    Values =
                    [
                        .. c.Values.Select(v => v with
                        {
                            Value = v.Value * by,
                            Low = v.Low * by,
                            High = v.High * by,
                            Series = units.Text(v.Series),
                        }),
                    ],
                }),
            ],
            Limits = [.. panel.Limits.Select(l => l with { At = l.At * by, Label = units.Text(l.Label) })],
        };
    }

    private static MapPanel Turned(MapPanel panel, ReaderUnits units)
    {
        var (x, y, value) = (units.Factor(panel.X.Unit), units.Factor(panel.Y.Unit), units.Factor(panel.Value.Unit));
        return panel with
        {
            Title = units.Text(panel.Title),
            X = Turned(panel.X, units),
            Y = Turned(panel.Y, units),
            Value = Turned(panel.Value, units),
            Grid = new MapGrid { Xs = By(panel.Grid.Xs, x), Ys = By(panel.Grid.Ys, y), Values = By(panel.Grid.Values, value) },
            Levels = By(panel.Levels, value),
            Middle = panel.Middle * value,
            Hatch = panel.Hatch is { } hatch
                ? new MapHatch { From = hatch.From * value, To = hatch.To * value, Label = units.Text(hatch.Label) }
                : null,
            Zones = [.. panel.Zones.Select(zone => zone with { Label = units.Text(zone.Label) })],
            Traces = Traces(panel.Traces, x, y, units),
            Marks = Marks(panel.Marks, x, y, units),
        };
    }

    // Its places stay in metres: it is to scale, and only its words and its scale bar are read.
    private static ScenePanel Turned(ScenePanel panel, ReaderUnits units) => panel with
    {
        Title = units.Text(panel.Title),
        Shapes =
        [
            .. panel.Shapes.Select(shape => shape switch
            {
                TextShape text => text with { Text = units.Text(text.Text) },
                ArrowShape arrow => arrow with { Label = units.Text(arrow.Label) },
                DimensionShape dimension => dimension with { Text = units.Text(dimension.Text) },
                _ => shape,
            }),
        ],
        ScaleBar = WholeFeet(panel.ScaleBar, units) is { } feet ? feet / units.Factor("m") : null,
        ScaleLabel = WholeFeet(panel.ScaleBar, units) is { } bar ? FormattableString.Invariant($"{bar} {units.Unit("m")}") : "",
    };

    // The bar of a reader is as long as the nearest whole length below the metric one.
    private static double? WholeFeet(double? metres, ReaderUnits units) =>
        metres is { } bar ? Math.Max(1.0, Math.Floor(bar * units.Factor("m"))) : null;

    private static Axis Turned(Axis axis, ReaderUnits units)
    {
        var by = units.Factor(axis.Unit);
        return new Axis
        {
            Label = units.Text(axis.Label),
            Unit = units.Unit(axis.Unit),
            From = axis.From * by,
            To = axis.To * by,
            Scale = axis.Scale,
        };
    }

    private static ImmutableArray<Trace> Traces(ImmutableArray<Trace> traces, double x, double y, ReaderUnits units) =>
        [.. traces.Select(t => t with { Name = units.Text(t.Name), Xs = By(t.Xs, x), Ys = By(t.Ys, y) })];

    private static ImmutableArray<Mark> Marks(ImmutableArray<Mark> marks, double x, double y, ReaderUnits units) =>
        [.. marks.Select(m => m with { X = m.X * x, Y = m.Y * y, Low = m.Low * y, High = m.High * y, Label = units.Text(m.Label) })];

    private static ImmutableArray<Band> Bands(ImmutableArray<Band> bands, Axis? across, ReaderUnits units)
    {
        var by = units.Factor(across?.Unit ?? "");
        return [.. bands.Select(b => new Band { From = b.From * by, To = b.To * by, Label = units.Text(b.Label), Shade = b.Shade })];
    }

    private static ImmutableArray<double> By(ImmutableArray<double> values, double factor) =>
        factor == 1.0 ? values : [.. values.Select(value => value * factor)];
}
