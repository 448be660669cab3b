using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>Load states in rows: what the car weighs, how it stands, how it rides, what travel is left.</summary>
internal static class LoadStatesTable
{
    /// <summary>The table. A column of the headlamp only for a car that has one.</summary>
    public static TablePanel Of(IReadOnlyList<RideModel> models)
    {
        var lamp = models[0].Car.Headlamp is not null;
        return new TablePanel
        {
            Columns =
            [
                new TableColumn { Heading = "Load state", Alignment = ColumnAlignment.Left },
                new TableColumn { Heading = "mass", Unit = "kg" },
                new TableColumn { Heading = "front", Unit = "kg" },
                new TableColumn { Heading = "rear", Unit = "kg" },
                new TableColumn { Heading = "front f", Unit = "Hz" },
                new TableColumn { Heading = "rear f", Unit = "Hz" },
                new TableColumn { Heading = "ratio", Unit = "–" },
                new TableColumn { Heading = "front height", Unit = "mm" },
                new TableColumn { Heading = "rear height", Unit = "mm" },
                new TableColumn { Heading = "pitch", Unit = "°" },
                .. lamp ? [new TableColumn { Heading = "lamp", Unit = "%" }] : Array.Empty<TableColumn>(),
                new TableColumn { Heading = "front bump", Unit = "mm" },
                new TableColumn { Heading = "rear bump", Unit = "mm" },
            ],
            Rows = [.. models.Select(RowOf)],
        };
    }

    /// <summary>Rear over front axle ride frequency, tyres included (–).</summary>
    public static double Ratio(RideModel model) =>
        AxleRide.Of(model, AxleEnd.Rear).Rates.Frequency / AxleRide.Of(model, AxleEnd.Front).Rates.Frequency;

    private static TableRow RowOf(RideModel model)
    {
        var axles = AxleRide.Of(model);
        var (front, rear) = (axles[0].Rates.Frequency, axles[1].Rates.Frequency);
        var trim = model.Trim;
        string[] lamp = HeadlampMeasures.DropAtTrim(model) is { } drop ? [Numeral.Of(In.Percent.Of(drop), 2)] : [];
        return TableRow.Of(
        [
            model.Load.Name,
            Numeral.Of(trim.Weight / Gravity.Standard, 0),
            Numeral.Of(trim.AxleLoad[0] / Gravity.Standard, 0),
            Numeral.Of(trim.AxleLoad[1] / Gravity.Standard, 0),
            Numeral.Of(front, 2),
            Numeral.Of(rear, 2),
            Numeral.Of(rear / front, 2),
            Numeral.Change(In.Millimetres.Of(trim.FrontHeight), 0),
            Numeral.Change(In.Millimetres.Of(trim.RearHeight), 0),
            Numeral.Change(-In.Degrees.Factor * trim.Pitch, 2),
            .. lamp,
            Left(trim.BumpLeft[0], trim.BumpLeft[1]),
            Left(trim.BumpLeft[2], trim.BumpLeft[3]),
        ]);
    }

    private static string Left(double one, double other) =>
        double.IsFinite(Math.Min(one, other)) ? Numeral.Of(In.Millimetres.Of(Math.Min(one, other)), 0) : "no stop";
}
