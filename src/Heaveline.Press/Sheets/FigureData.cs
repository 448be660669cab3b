using Heaveline.Answers;
using Heaveline.Figures;
using Heaveline.Quantities;

namespace Heaveline.Press.Sheets;

/// <summary>The numbers that a figure draws, where they are few enough to be read as a table.</summary>
internal static class FigureData
{
    // A trace of a pass has a thousand points: those belong into a file of their own.
    private const int MostPoints = 40;
    private const int MostPlaces = 600;

    public static IReadOnlyList<Tabulated> Of(Figure figure) => [.. figure.Panels.Select(panel => panel switch
    {
        CategoryPanel category => Of(category),
        ChartPanel chart => Of(chart, figure.XAxisOf(chart)),
        MapPanel map => Of(map),
        _ => null,
    }).OfType<Tabulated>()];

    private static Tabulated Of(CategoryPanel panel)
    {
        var intervals = panel.Categories.Any(c => c.Values.Any(v => v.Low is not null));
        return new Tabulated
        {
            Caption = panel.Title.Length > 0 ? panel.Title : panel.Value.Heading,
            Table = new TablePanel
            {
                Columns =
                [
                    new TableColumn { Heading = "what", Alignment = ColumnAlignment.Left },
                    new TableColumn { Heading = panel.Value.Heading },
                    .. intervals ? new[] { new TableColumn { Heading = "from" }, new TableColumn { Heading = "to" } } : [],
                ],
                Rows =
                [
                    .. from category in panel.Categories
                       from value in category.Values
                       select TableRow.Of(
                       [
                           value.Series.Length > 0 ? $"{category.Name}, {value.Series}" : category.Name,
                           Number(value.Value),
                           .. intervals ? new[] { Number(value.Low ?? double.NaN), Number(value.High ?? double.NaN) } : [],
                       ]),
                ],
            },
        };
    }

    private static Tabulated? Of(ChartPanel chart, Axis x) =>
        chart.Traces.Length > 0 && chart.Traces[0].Xs.Length <= MostPoints
        && chart.Traces.All(t => t.Xs.AsSpan().SequenceEqual(chart.Traces[0].Xs.AsSpan()))
            ? new Tabulated
            {
                Caption = chart.Y.Heading,
                Table = new TablePanel
                {
                    Columns =
                    [
                        new TableColumn { Heading = x.Heading },
                        .. chart.Traces.Select(t => new TableColumn { Heading = t.Name.Length > 0 ? t.Name : chart.Y.Label }),
                    ],
                    Rows = [.. chart.Traces[0].Xs.Select((at, k) => TableRow.Of([Number(at), .. chart.Traces.Select(t => Number(t.Ys[k]))]))],
                },
            }
            : null;

    private static Tabulated? Of(MapPanel map) => map.Grid.Values.Length > MostPlaces
        ? null
        : new Tabulated
        {
            Caption = $"{map.Value.Heading}: a row for each {map.Y.Heading}, a column for each {map.X.Heading}",
            Table = new TablePanel
            {
                Columns = [new TableColumn { Heading = map.Y.Heading }, .. map.Grid.Xs.Select(at => new TableColumn { Heading = Number(at) })],
                Rows = [.. map.Grid.Ys
                    .Select((at, row) => TableRow.Of([Number(at), .. map.Grid.Xs.Select((_, column) => Number(map.Grid.At(row, column)))]))],
            },
        };

    private static string Number(double value) =>
        double.IsFinite(value) ? Numeral.Of(value, "0.####") : "–";
}
