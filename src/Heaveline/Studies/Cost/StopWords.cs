using Heaveline.Answers;
using Heaveline.Measures;

namespace Heaveline.Studies;

/// <summary>How far the pitch per g of a car holds, in words.</summary>
internal static class StopWords
{
    public static Sentence Of(CarAtRest car, string name)
    {
        var (braking, driving) = (car.SideEffects.Braking.FirstStop, car.SideEffects.Driving.FirstStop);
        const string Slope = "pitch per g is the slope at rest";
        if (StandingStops.Words(car.Model) is { Length: > 0 } stands)
        {
            return new("on-bump-stops", $"{name}: {stands} on the bump stops under '{car.Model.Load.Name}'. Pitch and roll per g, roll stiffness "
                + "and its balance are there the stops' as much as the springs', for motions so small that no wheel leaves its stop: "
                + "they hold no farther, and what a change makes of them is no guide to another load.");
        }

        return new("pitch-slope", (braking, driving) switch
        {
            (null, null) => $"{name}: {Slope}; by it no stop is met below 1 g.",
            ({ } brakes, null) => $"{name}: {Slope} and holds until a stop is met; by it {brakes} of braking.",
            (null, { } drives) => $"{name}: {Slope} and holds until a stop is met; by it {drives} of accelerating.",
            ({ } brakes, { } drives) =>
                $"{name}: {Slope} and holds until a stop is met; by it {brakes} of braking and {drives} of accelerating.",
        });
    }
}
