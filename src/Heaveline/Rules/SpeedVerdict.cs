namespace Heaveline.Rules;

/// <summary>What a rule is worth at one speed of a map, over all values on the side that it recommends.</summary>
public enum SpeedVerdict
{
    /// <summary>Some values are better, none is worse.</summary>
    Holds,

    /// <summary>Some values are better and some are worse.</summary>
    Depends,

    /// <summary>Some values are worse, none is better.</summary>
    Fails,

    /// <summary>All values are within 3 %.</summary>
    NoDifference,

    /// <summary>The car runs past the end of its travel at the reference and at every value: neither is better.</summary>
    NeitherPasses,

    /// <summary>Nothing could be computed.</summary>
    NotComputed,
}
