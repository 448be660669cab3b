using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Why a car with something turned cannot stand, or does not get across.</summary>
internal static class CureCrossing
{
    /// <summary>An end with that behind it; any other end as it is.</summary>
    /// <param name="asked">What is asked: its road and speed.</param>
    /// <param name="trial">What is turned, so far that it ends there.</param>
    /// <param name="end">The end.</param>
    /// <param name="loads">The loads, its own among them.</param>
    /// <param name="cancellation">Stops the pass that is driven for it.</param>
    public static CureEnd Told(CureAsked asked, CureTrial trial, CureEnd end, IEnumerable<LoadState> loads, CancellationToken cancellation) =>
        end.Breach != CureBreach.NoCrossing
            ? end
            : end with { Why = Why(asked, trial, loads.First(load => load.Name == end.Load), cancellation) };

    private static string? Why(CureAsked asked, CureTrial trial, LoadState load, CancellationToken cancellation)
    {
        RideModel model;
        try
        {
            model = RideModel.Of(trial.Of(asked.Car.Car), load);
        }
        catch (RefusedValueException why)
        {
            return $"cannot stand ({why.Message.TrimEnd('.')})";
        }

        try
        {
            // By the pass as it is told: a batch may have stepped it otherwise, and then nothing more is known than that.
            var pass = Pass.Of(model, asked.Road, asked.Speed, cancellation: cancellation);
            return pass.Outcome == PassOutcome.Completed
                ? null
                : $"does not get across '{asked.Road.Caption}' at {SpeedRanges.Number(asked.Speed)} km/h ({GaveOut.In(pass)})";
        }
        catch (NoAnswerException)
        {
            // A pass that is refused says nothing of the crossing that ended the way: the answer stands without a reason.
            return null;
        }
    }
}
