using Heaveline.Drives.Events;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Roads;

namespace Heaveline.Drives.Planning;

/// <summary>Whether a pass would be found in the log of a drive, by the rule that drives are read by.</summary>
internal static class SeenPass
{
    // What a pass must have to spare: nobody holds a speed to the dot, and a log has noise. A proposal of this program.
    private const double Spare = 1.2;

    // Stillness before and behind, as long as the filters remember, s.
    private const double Still = 3.0;

    private static readonly PassOptions Options = BatchedMeasures.Usual with { Record = new() { SettlingTime = 2.5 } };

    /// <summary>Whether every pass stands out from a road that is smooth; on a rougher one fewer do.</summary>
    /// <param name="model">The car under its load.</param>
    /// <param name="road">The hump.</param>
    /// <param name="speeds">The speeds, m/s.</param>
    /// <param name="phone">How far behind the front axle the phone lies, m.</param>
    /// <param name="stop">Stops it.</param>
    public static bool Is(RideModel model, Road road, IEnumerable<double> speeds, double phone, CancellationToken stop) =>
        PassBatch.Of([.. speeds.Select(v => new PassRequest(model, road, v))], Options, stop).All(p => StandsOut(p, phone));

    private static bool StandsOut(Pass pass, double phone)
    {
        var rate = 1.0 / pass.SampleStep;
        var swing = DriveStrip.SwingOf(Padded(pass.PitchRate, rate), rate).Max();
        if (EventFinder.OfSwing(swing / Spare, 0.0) >= EventFinder.Least)
        {
            return true;
        }

        var knock = DriveStrip.KnockOf(Padded(pass.VerticalAcceleration(phone, 0.0), rate), rate);
        var lag = (int)Math.Round(rate * pass.Model.Car.Wheelbase.Si / pass.Speed);
        return Enumerable.Range(0, knock.Length - lag)
            .Any(i => EventFinder.OfKnock(knock[i] / Spare, knock[i + lag] / Spare, 0.0) >= EventFinder.Least);
    }

    private static double[] Padded(IReadOnlyList<double> values, double rate)
    {
        var still = (int)(Still * rate);
        var result = new double[values.Count + (2 * still)];
        for (var i = 0; i < values.Count; i++)
        {
            result[still + i] = values[i];
        }

        return result;
    }
}
