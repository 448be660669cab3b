using Heaveline.Answers;
using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Quantities;
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
        ArgumentNullException.ThrowIfNull(responses);
        var rides = responses.Select(r => new CarOnRoad(r)).ToList();
        var table = new FactTable(car, [.. responses.Select(r => FormattableString.Invariant($"{In.KilometresPerHour.Of(r.Speed):0.#} km/h"))]);
        foreach (var measure in RideCatalogue.Of(responses[0].Model.Car))
        {
            table.Add(measure, rides.Select(r => r.Response.Outcome == RandomOutcome.NotConverged ? double.NaN : measure.Of(r)));
            if (measure == RideCatalogue.PitchAcceleration)
            {
                InTime(table, measure, inTime, RideSignal.PitchAcceleration);
            }
            else if (measure == RideCatalogue.HeaveAcceleration)
            {
                InTime(table, measure, inTime, RideSignal.HeaveAcceleration);
            }
        }

        return table;
    }

    private static void InTime(FactTable table, Measure measure, IReadOnlyList<RandomPass>? passes, RideSignal signal)
    {
        if (passes is null)
        {
            return;
        }

        var readings = passes.Select(p => p.Of(signal)).ToList();
        void Add(string key, string label, Func<RandomReading, double> of) =>
            table.Add($"{measure.Key}-in-time{key}", label, measure.Unit.Symbol, measure.Format, readings.Select(r => measure.Shown(of(r))));
        Add("", "  in time, nonlinear", r => r.Rms);
        Add("-low", "  its 95 % interval, from", r => r.Low);
        Add("-high", "  its 95 % interval, to", r => r.High);
    }
}
