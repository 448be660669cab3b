using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Quantities;
using Heaveline.Tuning;

namespace Heaveline.Rules;

/// <summary>What a rule of the trade turns: one quantity of a car, the values to try and the value to judge against.</summary>
public sealed record RuleAxis
{
    /// <summary>Which rule it is of.</summary>
    public required RuleKind Kind { get; init; }

    /// <summary>What is turned and what is kept.</summary>
    public string Name => ShortName + Unchanged;

    /// <summary>What is turned, without what is kept.</summary>
    public required string ShortName { get; init; }

    /// <summary>What is kept, as it follows upon what is turned; empty where that says itself.</summary>
    public required string Unchanged { get; init; }

    /// <summary>Unit, empty for a plain number.</summary>
    public required string Symbol { get; init; }

    /// <summary>The rule in words.</summary>
    public required string Claim { get; init; }

    /// <summary>The car at the reference, in words.</summary>
    public required RuleSide Plain { get; init; }

    /// <summary>The car that the rule recommends, in words.</summary>
    public required RuleSide Turned { get; init; }

    /// <summary>Values to try, rising, at least two.</summary>
    public required IReadOnlyList<double> Values
    {
        get;
        init => field = value.Count >= 2 && value.Zip(value.Skip(1)).All(p => p.First < p.Second)
            ? value
            : throw new RefusedValueException("values of a rule's axis", $"{value.Count} values", "at least two, rising", "Sort them.");
    }

    /// <summary>The value that the others are judged against; null: the car as it is.</summary>
    public required double? Reference { get; init; }

    /// <summary>The car's own value.</summary>
    public required Func<RideModel, double> Own { get; init; }

    /// <summary>The car with another value.</summary>
    public required Func<RideModel, double, RideModel> Change { get; init; }

    /// <summary>Whether a linear car stands in for the one that is asked about.</summary>
    internal bool HasStandIn => Kind is RuleKind.SharedSprings or RuleKind.SharedDamping;

    /// <summary>The rule in words that fit a measure: of another one than pitch nothing is said to pitch.</summary>
    internal string ClaimBy(Measure measure) => measure.Name.Contains("pitch", StringComparison.Ordinal)
        ? Claim
        : Claim.Replace(" pitches less.", " does better.", StringComparison.Ordinal).Replace(" pitch less.", " do better.", StringComparison.Ordinal);

    /// <summary>What the values are judged against, in words.</summary>
    public string Against => Reference is { } reference ? FormattableString.Invariant($"{ShortName} {reference:0.###}") : "the car as it is";

    /// <summary>
    /// "A front softer than the rear pitches less": rear over front frequency about the same mean, damping ratios kept, against equal ends.
    /// </summary>
    /// <param name="values">Ratios (–).</param>
    /// <param name="onRigidTyres">Whether the ratio is that of the springs alone.</param>
    public static RuleAxis FrequencyRatio(IReadOnlyList<double> values, bool onRigidTyres = false) => new()
    {
        Kind = RuleKind.FrequencyRatio,
        ShortName = AxleCatalogue.FrequencyRatio.Name + (onRigidTyres ? " of the springs alone" : ""),
        Unchanged = ", mean and damping ratios kept",
        Symbol = "",
        Claim = "A front softer than the rear pitches less.",
        Plain = new("equal ends", IsPlural: true),
        Turned = new("the softer front"),
        Values = values,
        Reference = 1.0,
        Own = m => RideTuning.Of(m, onRigidTyres).Ratio,
        Change = (m, ratio) => RideTuning.Of(m, onRigidTyres).WithRatio(ratio).ApplyTo(m),
    };

    /// <summary>"More damping pitches less": mean damping ratio, split and springs kept, against the car as it is.</summary>
    public static RuleAxis Damping(IReadOnlyList<double> values) => new()
    {
        Kind = RuleKind.Damping,
        ShortName = "mean damping ratio",
        Unchanged = ", split kept",
        Symbol = "",
        Claim = "More damping pitches less.",
        Plain = new("the car as it is"),
        Turned = new("the car with more damping"),
        Values = values,
        Reference = null,
        Own = m => RideTuning.Of(m).MeanDamping,
        Change = (m, mean) => RideTuning.Of(m).WithDamping(mean).ApplyTo(m),
    };

    /// <summary>"Mass at the ends pitches less": dynamic index, springs and dampers kept, against 1.</summary>
    public static RuleAxis DynamicIndex(IReadOnlyList<double> values) => new()
    {
        Kind = RuleKind.DynamicIndex,
        ShortName = "dynamic index",
        Unchanged = "",
        Symbol = "",
        Claim = "Mass towards the ends pitches less.",
        Plain = new("the car of dynamic index 1"),
        Turned = new("the car with more mass at its ends"),
        Values = values,
        Reference = 1.0,
        Own = ModelChange.DynamicIndexOf,
        Change = ModelChange.DynamicIndex,
    };

    /// <summary>"A longer wheelbase pitches less": wheelbase with all places along the car in proportion, against the car as it is.</summary>
    /// <param name="values">Wheelbases, m.</param>
    /// <param name="inertiaGrows">Whether the pitch inertia grows with its square (the dynamic index is kept) or stays.</param>
    public static RuleAxis Wheelbase(IReadOnlyList<double> values, bool inertiaGrows) => new()
    {
        Kind = inertiaGrows ? RuleKind.Wheelbase : RuleKind.WheelbaseSameBody,
        ShortName = "wheelbase",
        Unchanged = inertiaGrows ? ", dynamic index kept" : ", pitch inertia kept",
        Symbol = "m",
        Claim = "A longer wheelbase pitches less.",
        Plain = new("the car as it is"),
        Turned = new("the longer wheelbase"),
        Values = values,
        Reference = null,
        Own = m => m.Car.Wheelbase.Si,
        Change = (m, length) => ModelChange.Wheelbase(m, length, inertiaGrows),
    };

    /// <summary>
    /// "Front and rear joined pitch less": share of the heave stiffness in a common spring, on the linear car of the same frequencies, against none.
    /// </summary>
    public static RuleAxis SharedSprings(IReadOnlyList<double> values) => new()
    {
        Kind = RuleKind.SharedSprings,
        ShortName = "share of the heave stiffness in a common spring",
        Unchanged = " (linear car of the same masses and frequencies)",
        Symbol = "",
        Claim = "Front and rear springs joined pitch less.",
        Plain = new("separate springs", IsPlural: true),
        Turned = new("joined springs", IsPlural: true),
        Values = values,
        Reference = 0.0,
        Own = _ => 0.0,
        Change = (m, share) => (SimpleCar.From(m) with { SharedSprings = share }).Model(),
    };

    /// <summary>
    /// "Front and rear dampers joined pitch less": share of the heave damping in a common damper, on the
    /// linear car of the same damping, against none.
    /// </summary>
    public static RuleAxis SharedDamping(IReadOnlyList<double> values) => new()
    {
        Kind = RuleKind.SharedDamping,
        ShortName = "share of the heave damping in a common damper",
        Unchanged = " (linear car of the same masses, frequencies and damping)",
        Symbol = "",
        Claim = "Front and rear dampers joined pitch less.",
        Plain = new("separate dampers", IsPlural: true),
        Turned = new("joined dampers", IsPlural: true),
        Values = values,
        Reference = 0.0,
        Own = _ => 0.0,
        Change = (m, share) => (SimpleCar.From(m) with { SharedDamping = share }).Model(),
    };
}
