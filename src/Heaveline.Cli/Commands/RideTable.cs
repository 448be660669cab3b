using Heaveline.Cli.Output;
using Heaveline.Measures.Comfort;
using Heaveline.Responses;

namespace Heaveline.Cli.Commands;

/// <summary>One car on a random road: a column a speed.</summary>
internal static class RideTable
{
    public static FactTable Of(string car, IReadOnlyList<RandomResponse> responses, IReadOnlyList<RandomPass>? inTime)
    {
        string[] columns = [.. responses.Select(r => FormattableString.Invariant($"{3.6 * r.Speed:F0} km/h"))];
        IEnumerable<double?> All(Func<RandomResponse, double?> of) => responses.Select(of);
        var table = new FactTable(car, columns)
            .Add("rms-pitch-acceleration", "RMS pitch acceleration", "rad/s²", "F3", All(r => r.Rms(RideSignal.PitchAcceleration)));
        InTime(table, "rms-pitch-acceleration", "rad/s²", inTime, RideSignal.PitchAcceleration, 1.0);
        table
            .Add("rms-pitch", "RMS pitch angle", "°", "F3", All(r => Degrees * r.Rms(RideSignal.Pitch)))
            .Add("rms-heave-acceleration", "RMS heave acceleration", "m/s²", "F3", All(r => r.Rms(RideSignal.HeaveAcceleration)));
        InTime(table, "rms-heave-acceleration", "m/s²", inTime, RideSignal.HeaveAcceleration, 1.0);
        table.Add("rms-roll-acceleration", "RMS roll acceleration", "rad/s²", "F3", All(r => r.Model.Rolls ? r.Rms(RideSignal.RollAcceleration) : null));
        foreach (var seat in responses[0].Model.Car.Seats)
        {
            var comfort = responses.Select(r => RandomComfort.Of(r, seat)).ToList();
            var key = seat.Name.Replace(' ', '-');
            table
                .Add($"{key}-vertical", $"{seat.Name}: RMS vertical", "m/s²", "F3", comfort.Select(c => (double?)c.UnweightedVertical))
                .Add($"{key}-vertical-wk", $"{seat.Name}: the same by Wk", "m/s²", "F3", comfort.Select(c => (double?)c.Vertical))
                .Add($"{key}-pitch-we", $"{seat.Name}: pitch by We, times 0.4 m/rad", "m/s²", "F3", comfort.Select(c => (double?)(0.4 * c.Pitch)))
                .Add($"{key}-head-wd", $"{seat.Name}: head fore-aft by Wd", "m/s²", "F3", comfort.Select(c => (double?)c.HeadForeAft));
        }

        foreach (var (i, end) in new[] { (0, "front"), (2, "rear") })
        {
            table
                .Add($"{end}-travel", $"{end}: RMS travel", "mm", "F1", All(r => 1e3 * r.Rms(RideSignal.Travel(r.Model, i))))
                .Add($"{end}-load-variation", $"{end}: RMS change of tyre load", "% of static", "F1", All(r => 100.0 * r.LoadVariation(i)));
        }

        return table.Add("mean-heave", "mean height, pulled by unequal dampers", "mm", "F1", All(r => Math.Abs(r.MeanHeave) > 5e-5 ? 1e3 * r.MeanHeave : null));
    }

    private const double Degrees = 180.0 / Math.PI;

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
