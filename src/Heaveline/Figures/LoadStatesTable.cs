using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>Load states in rows: what the car weighs, how it stands, how it rides, what travel is left.</summary>
internal static class LoadStatesTable
{
    // In the order of the columns: heights and pitch are changes, and travel may have no stop.
    private static readonly (string Key, bool IsChange)[] Shown =
    [
        ("mass", false), ("front-load", false), ("rear-load", false), ("front-frequency", false), ("rear-frequency", false), ("ratio", false),
        ("front-height", true), ("rear-height", true), ("attitude", true), ("lamp-drop", false),
        ("front-bump-left", false), ("rear-bump-left", false),
    ];

    /// <summary>The table. A column of the headlamp only for a car that has one.</summary>
    public static TablePanel Of(IReadOnlyList<RideModel> models)
    {
        (Measure<CarAtRest> Measure, bool IsChange)[] columns =
        [
            .. Shown.Where(column => column.Key != SideEffectCatalogue.LampDrop.Key || models[0].Car.Headlamp is not null)
                .Select(column => (RestCatalogue.All.Single(m => m.Key == column.Key), column.IsChange)),
        ];
        return new TablePanel
        {
            Columns =
            [
                new TableColumn { Heading = "Load state", Alignment = ColumnAlignment.Left },
                .. columns.Select(column => new TableColumn { Heading = column.Measure.Heading, Unit = column.Measure.Unit.Symbol }),
            ],
            Rows = [.. models.Select(model => RowOf(model, columns))],
        };
    }

    private static TableRow RowOf(RideModel model, (Measure<CarAtRest> Measure, bool IsChange)[] columns)
    {
        var car = new CarAtRest(model);
        return TableRow.Of(
        [
            model.Load.Name, .. columns.Select(column => Cell(column.Measure, column.IsChange)),
        ]);

        string Cell(Measure<CarAtRest> measure, bool isChange) => measure.ShownOf(car) is not { } shown ? "no stop"
            : isChange ? Numeral.Change(shown, measure.HeadingDigits)
            : Numeral.Of(shown, measure.HeadingDigits);
    }
}
