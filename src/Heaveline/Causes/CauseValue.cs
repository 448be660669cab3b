using Heaveline.Models;
using Heaveline.Quantities;
using Heaveline.Rules;
using Heaveline.Tuning;

namespace Heaveline.Causes;

/// <summary>Causes of pitch that are one number which a load changes: the number, and the same loaded car with another.</summary>
internal static class CauseValue
{
    /// <summary>The causes that are such a number.</summary>
    public static IReadOnlyList<PitchCauseKind> Kinds { get; } =
        [PitchCauseKind.FrequencyRatio, PitchCauseKind.DynamicIndex, PitchCauseKind.DampingLevel, PitchCauseKind.DampingSplit];

    /// <summary>The number under the model's load (–): of the damping split, rear over front.</summary>
    /// <param name="model">Car and load.</param>
    /// <param name="kind">One of <see cref="Kinds"/>.</param>
    public static double Of(RideModel model, PitchCauseKind kind) => kind switch
    {
        PitchCauseKind.FrequencyRatio => RideTuning.Of(model).Ratio,
        PitchCauseKind.DynamicIndex => ModelChange.DynamicIndexOf(model),
        PitchCauseKind.DampingLevel => RideTuning.Of(model).MeanDamping,
        PitchCauseKind.DampingSplit => RideTuning.Of(model).DampingSplit,
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No single number."),
    };

    /// <summary>Frequencies and damping ratios under the model's load; null where its springs give way there.</summary>
    /// <param name="model">Car and load.</param>
    public static RideTuning? TuningOf(RideModel model)
    {
        try
        {
            return RideTuning.Of(model);
        }
        catch (RefusedValueException)
        {
            return null;
        }
    }

    /// <summary>
    /// The same loaded car with another number, the rest kept: springs about the same mean frequency, dampers, the body's own inertia.
    /// </summary>
    /// <param name="model">Car and load.</param>
    /// <param name="kind">One of <see cref="Kinds"/>.</param>
    /// <param name="value">The number (–).</param>
    /// <exception cref="RefusedValueException">There is no such car.</exception>
    public static RideModel Set(RideModel model, PitchCauseKind kind, double value) => kind switch
    {
        PitchCauseKind.FrequencyRatio => RideTuning.Of(model).WithRatio(value).ApplyTo(model),
        PitchCauseKind.DynamicIndex => ModelChange.DynamicIndex(model, value),
        PitchCauseKind.DampingLevel => RideTuning.Of(model).WithDamping(value).ApplyTo(model),
        PitchCauseKind.DampingSplit => RideTuning.Of(model).WithDampingSplit(value).ApplyTo(model),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No single number."),
    };
}
