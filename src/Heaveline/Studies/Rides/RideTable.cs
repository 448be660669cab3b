using Heaveline.Answers;
using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Rides;

namespace Heaveline.Studies;

/// <summary>One car on a random road: a column a speed.</summary>
public static class RideTable
{
    /// <summary>The table.</summary>
    /// <param name="car">Its name, the title of the table.</param>
    /// <param name="responses">Responses at rising speeds.</param>
    /// <param name="inTime">The same driven in time; null for none.</param>
    public static FactTable Of(string car, IReadOnlyList<RandomResponse> responses, IReadOnlyList<RandomPass>? inTime)
    {
        string[] columns = [.. responses.Select(r => FormattableString.Invariant($"{3.6 * r.Speed:F0} km/h"))];
        var rides = responses.Select(r => new CarOnRoad(r)).ToList();
        var table = new FactTable(car, columns);
        foreach (var (row, measure) in Rows(responses[0].Model.Car))
        {
            // A mean height below a twentieth of a millimetre is none.
            var shown = rides.Select(r => row.Of(measure.Of(r))).Select(v => measure == RideMeasure.MeanHeave && Math.Abs(v ?? 0.0) <= 0.05 ? null : v);
            table.Add(row.Key, row.Label, row.Unit, row.Format, shown);
            if (measure == RideMeasure.PitchAcceleration)
            {
                InTime(table, row.Key, row.Unit, inTime, RideSignal.PitchAcceleration, row.Factor);
            }
            else if (measure == RideMeasure.HeaveAcceleration)
            {
                InTime(table, row.Key, row.Unit, inTime, RideSignal.HeaveAcceleration, row.Factor);
            }
        }

        return table;
    }

    /// <summary>The rows that a car has, each with its measure.</summary>
    /// <param name="car">The car.</param>
    public static IReadOnlyList<(Shown Row, RideMeasure Measure)> Rows(Car car) =>
    [
        (new("rms-pitch-acceleration", "RMS pitch acceleration", "rad/s²", "F3", 1.0), RideMeasure.PitchAcceleration),
        (new("rms-pitch", "RMS pitch angle", "°", "F3", Shown.Degrees), RideMeasure.PitchAngle),
        (new("rms-heave-acceleration", "RMS heave acceleration", "m/s²", "F3", 1.0), RideMeasure.HeaveAcceleration),
        (new("rms-roll-acceleration", "RMS roll acceleration", "rad/s²", "F3", 1.0), RideMeasure.RollAcceleration),
        .. car.Seats.SelectMany(s => Seat(s.Name, s.Name.Replace(' ', '-'))),
        .. Axle("front", AxleEnd.Front),
        .. Axle("rear", AxleEnd.Rear),
        (new("mean-heave", "mean height, pulled by unequal dampers", "mm", "F1", 1e3), RideMeasure.MeanHeave),
    ];

    private static IEnumerable<(Shown Row, RideMeasure Measure)> Seat(string name, string key) =>
    [
        (new($"{key}-vertical", $"{name}: RMS vertical", "m/s²", "F3", 1.0), RideMeasure.SeatVertical(name)),
        (new($"{key}-vertical-wk", $"{name}: the same by Wk", "m/s²", "F3", 1.0), RideMeasure.SeatVerticalWeighted(name)),
        (new($"{key}-pitch-we", $"{name}: pitch by We, times 0.4 m/rad", "m/s²", "F3", 1.0), RideMeasure.SeatPitch(name)),
        (new($"{key}-head-wd", $"{name}: head fore-aft by Wd", "m/s²", "F3", 1.0), RideMeasure.HeadForeAft(name)),
    ];

    private static IEnumerable<(Shown Row, RideMeasure Measure)> Axle(string name, AxleEnd end) =>
    [
        (new($"{name}-travel", $"{name}: RMS travel", "mm", "F1", 1e3), RideMeasure.Travel(end)),
        (new($"{name}-load-variation", $"{name}: RMS change of tyre load", "% of static", "F1", 100.0), RideMeasure.LoadVariation(end)),
    ];

    private static void InTime(FactTable table, string key, string unit, IReadOnlyList<RandomPass>? passes, RideSignal signal, double factor)
    {
        if (passes is null)
        {
            return;
        }

        var readings = passes.Select(p => p.Of(signal)).ToList();
        table
            .Add($"{key}-in-time", "  in time, every bend in", unit, "F3", readings.Select(r => (double?)(factor * r.Rms)))
            .Add($"{key}-in-time-low", "  its 95 % interval, from", unit, "F3", readings.Select(r => (double?)(factor * r.Low)))
            .Add($"{key}-in-time-high", "  its 95 % interval, to", unit, "F3", readings.Select(r => (double?)(factor * r.High)));
    }
}
