using System.Collections.Immutable;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Quantities;
using Heaveline.Rules;

namespace Heaveline.Studies;

/// <summary>The rules that can be mapped, by their words, and what values are tried.</summary>
public static class MapRule
{
    /// <summary>The words: ratio, damping, index, wheelbase (inertia grows), wheelbase-same-body, shared-springs, shared-damping.</summary>
    public static ImmutableArray<string> Words { get; } = ["ratio", "damping", "index", "wheelbase", "wheelbase-same-body", "shared-springs", "shared-damping"];

    /// <summary>The words of the measures: settling (first second after the rear has left), late (after 0.8 s), hit (peak acceleration), hit-angle.</summary>
    public static ImmutableArray<string> Measures { get; } = ["settling", "late", "hit", "hit-angle"];

    /// <summary>The rule's axis; the reference is one of the values wherever it is not the car's own.</summary>
    /// <param name="word">One of <see cref="Words"/>.</param>
    /// <param name="model">Car and load.</param>
    /// <param name="count">How many values, at least 2.</param>
    /// <exception cref="RefusedValueException">No such rule.</exception>
    public static RuleAxis Of(string word, RideModel model, int count)
    {
        ArgumentNullException.ThrowIfNull(model);
        // In sixths, so that the columns of a short table are plain numbers.
        double[] Even(double from, double to) => [.. Enumerable.Range(0, count).Select(i => Math.Round(from + ((to - from) * i / (count - 1)), 12))];
        double[] Lengths() => [.. Even(0.76, 1.24).Select(share => share * model.Car.Wheelbase.Si)];
        return word switch
        {
            "ratio" => RuleAxis.FrequencyRatio(Even(0.8, 1.4)),
            "damping" => RuleAxis.Damping(Even(0.05, 0.65)),
            "index" => RuleAxis.DynamicIndex(Even(0.6, 1.2)),
            "wheelbase" => RuleAxis.Wheelbase(Lengths(), inertiaGrows: true),
            "wheelbase-same-body" => RuleAxis.Wheelbase(Lengths(), inertiaGrows: false),
            "shared-springs" => RuleAxis.SharedSprings(Even(0.0, 0.9)),
            "shared-damping" => RuleAxis.SharedDamping(Even(0.0, 0.9)),
            _ => throw new RefusedValueException("rule", $"'{word}'", string.Join(", ", Words), "Take one of these words."),
        };
    }

    /// <summary>The measure of a word.</summary>
    /// <param name="word">One of <see cref="Measures"/>.</param>
    /// <exception cref="RefusedValueException">No such measure.</exception>
    public static PassMeasure Measure(string word) => word switch
    {
        "settling" => PassMeasure.SettlingAngle,
        "late" => PassMeasure.LateAngle,
        "hit" => PassMeasure.HitAcceleration,
        "hit-angle" => PassMeasure.HitAngle,
        _ => throw new RefusedValueException("measure", $"'{word}'", string.Join(", ", Measures), "Take one of these words."),
    };
}
