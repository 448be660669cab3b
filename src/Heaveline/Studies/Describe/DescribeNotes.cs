using System.Globalization;
using Heaveline.Answers;
using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Modes;

namespace Heaveline.Studies;

/// <summary>What must be said beside the numbers of a standing car.</summary>
public static class DescribeNotes
{
    /// <summary>The notes, a sentence or two each.</summary>
    /// <param name="models">One car under each load state; at least one.</param>
    public static IEnumerable<Sentence> Of(IReadOnlyList<RideModel> models)
    {
        ArgumentNullException.ThrowIfNull(models);
        return All(models);
    }

    private static IEnumerable<Sentence> All(IReadOnlyList<RideModel> models)
    {
        var model = models[0];
        foreach (var (load, axles) in models.Select(m => (m.Load.Name, AxleRide.Of(m))))
        {
            if (axles[1].Rates.Frequency < axles[0].Rates.Frequency)
            {
                yield return new($"rear-softer-{load.Replace(' ', '-')}", string.Create(
                    CultureInfo.InvariantCulture,
                    $"Under '{load}' the rear rides softer than the front (ratio {axles[1].Rates.Frequency / axles[0].Rates.Frequency:F3}): "
                    + $"after a bump it cannot catch up with the front."));
            }
        }

        yield return new("definitions",
            "Ride frequencies: both wheels of the axle move, the other axle is held, the tyre in series; anti-roll bars do not count. "
            + "Damping ratio: c/(2√(k·m)) with the suspension's rate and the sprung mass on the axle.");
        if (model.Car.Body.PitchAxisHeight is null || model.Car.Body.RollAxisHeight is null)
        {
            yield return new("no-tilting-moment", "Gravity's tilting moment is left out where the car file gives no pitch or roll axis height.");
        }

        if (model.Car.Body.PitchInertia is null)
        {
            yield return new("estimated-pitch-inertia",
                model.Car.Body.DynamicIndex == InertiaEstimate.DynamicIndex
                    ? $"The pitch inertia comes from a dynamic index of {model.Car.Body.DynamicIndex} in the reference state, "
                        + "taken from 204 road vehicles (quartiles 0.927, 0.998, 1.078, range 0.816–1.298; two-wheelers are not among them)."
                    : $"The pitch inertia comes from the dynamic index that the car file states, {model.Car.Body.DynamicIndex} in the reference "
                        + "state.");
        }
    }
}
