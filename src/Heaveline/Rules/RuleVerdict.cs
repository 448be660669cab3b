namespace Heaveline.Rules;

/// <summary>What a rule is worth in one place of a map.</summary>
public enum RuleVerdict
{
    /// <summary>The measure is better by 3 % or more: the rule holds.</summary>
    Holds,

    /// <summary>Less than 3 % either way.</summary>
    NoDifference,

    /// <summary>The measure is worse by 3 % or more: the rule fails.</summary>
    Fails,

    /// <summary>No such car, or its pass did not run to its end.</summary>
    NotComputed,
}
