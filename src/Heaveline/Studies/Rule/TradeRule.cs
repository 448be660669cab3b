using System.Collections.Immutable;
using Heaveline.Models;
using Heaveline.Quantities;
using Heaveline.Rules;

namespace Heaveline.Studies;

/// <summary>A rule of the trade that can be mapped: its word, its names and the values that are tried.</summary>
public sealed record TradeRule
{
    private readonly Func<RideModel, Func<double, double, double[]>, RuleAxis> axis;

    private TradeRule(RuleKind kind, string word, string name, string question, Func<RideModel, Func<double, double, double[]>, RuleAxis> axis) =>
        (Kind, Word, Name, Question, this.axis) = (kind, word, name, question, axis);

    /// <summary>All of them; the first is the usual one.</summary>
    public static ImmutableArray<TradeRule> All { get; } =
    [
        new(
            RuleKind.FrequencyRatio, "ratio", "rear over front frequency", "Does a front softer than the rear pitch less?",
            (_, even) => RuleAxis.FrequencyRatio(even(0.8, 1.4))),
        new(RuleKind.Damping, "damping", "damping", "Does more damping pitch less?", (_, even) => RuleAxis.Damping(even(0.05, 0.65))),
        new(
            RuleKind.DynamicIndex, "index", "dynamic index", "Does mass towards the ends pitch less?",
            (_, even) => RuleAxis.DynamicIndex(even(0.6, 1.2))),
        new(
            RuleKind.Wheelbase, "wheelbase", "wheelbase, inertia growing with it", "Does a longer car pitch less?",
            (model, even) => RuleAxis.Wheelbase(Lengths(model, even), inertiaGrows: true)),
        new(
            RuleKind.WheelbaseSameBody, "wheelbase-same-body", "wheelbase, the same body", "Does a longer wheelbase under the same body pitch less?",
            (model, even) => RuleAxis.Wheelbase(Lengths(model, even), inertiaGrows: false)),
        new(
            RuleKind.SharedSprings, "shared-springs", "springs shared front to rear", "Do springs joined front to rear pitch less?",
            (_, even) => RuleAxis.SharedSprings(even(0.0, 0.9))),
        new(
            RuleKind.SharedDamping, "shared-damping", "damping shared front to rear", "Do dampers joined front to rear pitch less?",
            (_, even) => RuleAxis.SharedDamping(even(0.0, 0.9))),
    ];

    /// <summary>The words of all rules.</summary>
    public static ImmutableArray<string> Words { get; } = [.. All.Select(r => r.Word)];

    /// <summary>Which rule it is.</summary>
    public RuleKind Kind { get; }

    /// <summary>Its word at a command line and in an address.</summary>
    public string Word { get; }

    /// <summary>What is turned, for people.</summary>
    public string Name { get; }

    /// <summary>The rule as a question.</summary>
    public string Question { get; }

    /// <summary>The rule of a word.</summary>
    /// <param name="word">One of <see cref="Words"/>.</param>
    /// <exception cref="RefusedValueException">No such rule.</exception>
    public static TradeRule Of(string word) =>
        All.FirstOrDefault(r => r.Word == word)
        ?? throw new RefusedValueException("rule", $"'{word}'", string.Join(", ", Words), "Take one of these words.");

    /// <summary>What it turns on one car; the reference is one of the values wherever it is not the car's own.</summary>
    /// <param name="model">Car and load.</param>
    /// <param name="count">How many values, at least 2; one more than a multiple of three to have the reference among them.</param>
    public RuleAxis Axis(RideModel model, int count) =>
        axis(model, (from, to) => [.. Enumerable.Range(0, count).Select(i => Math.Round(from + ((to - from) * i / (count - 1)), 12))]);

    private static double[] Lengths(RideModel model, Func<double, double, double[]> even) =>
        [.. even(0.76, 1.24).Select(share => share * model.Car.Wheelbase.Si)];
}
