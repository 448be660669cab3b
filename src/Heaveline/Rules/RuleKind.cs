namespace Heaveline.Rules;

/// <summary>The rules of the trade, by what each turns.</summary>
public enum RuleKind
{
    /// <summary>A front softer than the rear pitches less: rear over front frequency.</summary>
    FrequencyRatio,

    /// <summary>More damping pitches less.</summary>
    Damping,

    /// <summary>Mass towards the ends pitches less: dynamic index.</summary>
    DynamicIndex,

    /// <summary>A longer wheelbase pitches less, the inertia growing with it.</summary>
    Wheelbase,

    /// <summary>A longer wheelbase under the same body pitches less.</summary>
    WheelbaseSameBody,

    /// <summary>Front and rear springs joined pitch less; judged on a linear car of the same masses and frequencies.</summary>
    SharedSprings,

    /// <summary>Front and rear dampers joined pitch less; judged on a linear car of the same masses, frequencies and damping.</summary>
    SharedDamping,
}
