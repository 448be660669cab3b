using System.Collections.Immutable;
using Heaveline.Models;
using Heaveline.Quantities;
using Heaveline.Rules;

namespace Heaveline.Studies;

/// <summary>A rule of the trade that can be mapped: its word, its names and the values that are tried.</summary>
public sealed record TradeRule
{
    private readonly (double From, double To) usual;
    private readonly Func<RideModel, IReadOnlyList<double>, RuleAxis> axis;

    private TradeRule(
        RuleKind kind,
        string word,
        string name,
        string question,
        (double From, double To) usual,
        Func<RideModel, IReadOnlyList<double>, RuleAxis> axis) =>
        (Kind, Word, Name, Question, this.usual, this.axis) = (kind, word, name, question, usual, axis);

    /// <summary>All of them; the first is the usual one.</summary>
    public static ImmutableArray<TradeRule> All { get; } =
    [
        new(
            RuleKind.FrequencyRatio, "ratio", "rear over front frequency", "Does a front softer than the rear pitch less?",
            (0.8, 1.4), (_, values) => RuleAxis.FrequencyRatio(values)),
        new(
            RuleKind.Damping, "damping", "damping", "Does more damping pitch less?", (0.05, 0.65), (_, values) => RuleAxis.Damping(values)),
        new(
            RuleKind.DynamicIndex, "index", "dynamic index", "Does mass towards the ends pitch less?",
            (0.6, 1.2), (_, values) => RuleAxis.DynamicIndex(values)),
        new(
            RuleKind.Wheelbase, "wheelbase", "wheelbase, inertia growing with it", "Does a longer car pitch less?",
            (0.76, 1.24), (model, shares) => RuleAxis.Wheelbase(Lengths(model, shares), inertiaGrows: true)),
        new(
            RuleKind.WheelbaseSameBody, "wheelbase-same-body", "wheelbase, the same body", "Does a longer wheelbase under the same body pitch less?",
            (0.76, 1.24), (model, shares) => RuleAxis.Wheelbase(Lengths(model, shares), inertiaGrows: false)),
        new(
            RuleKind.SharedSprings, "shared-springs", "springs shared front to rear", "Do springs joined front to rear pitch less?",
            (0.0, 0.9), (_, values) => RuleAxis.SharedSprings(values)),
        new(
            RuleKind.SharedDamping, "shared-damping", "damping shared front to rear", "Do dampers joined front to rear pitch less?",
            (0.0, 0.9), (_, values) => RuleAxis.SharedDamping(values)),
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
    public RuleAxis Axis(RideModel model, int count) => axis(model, RuleReach.Even(usual, count, []));

    /// <summary>
    /// The same, reaching past what the car itself is under any of its loads, see <see cref="RuleReach"/>: there are then more values than asked for.
    /// </summary>
    /// <param name="model">Car and load.</param>
    /// <param name="count">How many values in the usual range, as above.</param>
    /// <param name="owns">The car's own value under each of its loads.</param>
    public RuleAxis Axis(RideModel model, int count, IReadOnlyList<double> owns)
    {
        ArgumentNullException.ThrowIfNull(owns);
        // A wheelbase is tried in shares of the car's own; joined springs and dampers are of a car that has none.
        var reaches = Kind is RuleKind.FrequencyRatio or RuleKind.Damping or RuleKind.DynamicIndex;
        return axis(model, RuleReach.Even(usual, count, reaches ? owns : []));
    }

    private static double[] Lengths(RideModel model, IReadOnlyList<double> shares) => [.. shares.Select(share => share * model.Car.Wheelbase.Si)];
}
