using Heaveline.Answers;
using Heaveline.Causes;
using Heaveline.Models;
using Heaveline.Rules;

namespace Heaveline.Studies;

/// <summary>Says that the causes beside the load are those of the car without it.</summary>
internal static class AloneWords
{
    /// <summary>The sentence; null where the load is the neutral one.</summary>
    /// <param name="model">Car and load.</param>
    public static Sentence? Of(RideModel model)
    {
        var neutral = NeutralLoad.Of(model.Car, model.Load);
        if (neutral == model.Load)
        {
            return null;
        }

        var under = CauseValue.TuningOf(model) is { } tuning
            ? FormattableString.Invariant($"; under '{model.Load.Name}' the rear/front frequency ratio is {tuning.Ratio:F3}, the dynamic index ")
                + FormattableString.Invariant($"{ModelChange.DynamicIndexOf(model):F3} and the damping ratios {tuning.FrontDamping:F3} front and ")
                + FormattableString.Invariant($"{tuning.RearDamping:F3} rear")
            : "";
        return new("alone", $"All causes but the load and the stops are those of the vehicle under its neutral load ({NeutralLoad.Words(neutral)})"
            + $"{under}. What the load changes of them counts as the load's.");
    }
}
