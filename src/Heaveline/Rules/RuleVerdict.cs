namespace Heaveline.Rules;

/// <summary>What a rule is worth at one point of a map.</summary>
public enum RuleVerdict
{
    /// <summary>The measure is better by 3 % or more: the rule holds.</summary>
    Holds,

    /// <summary>Less than 3 % either way.</summary>
    NoDifference,

    /// <summary>The measure is worse by 3 % or more: the rule fails.</summary>
    Fails,

    /// <summary>The car at the reference runs past the end of its travel and this one does not: for the rule.</summary>
    OnlyThisPasses,

    /// <summary>This car runs past the end of its travel and the one at the reference does not: against the rule.</summary>
    OnlyReferencePasses,

    /// <summary>Both run past the end of their travel: neither is better.</summary>
    NeitherPasses,

    /// <summary>No such car, or a pass that left the model's range in another way than by its travel.</summary>
    NotComputed,
}
