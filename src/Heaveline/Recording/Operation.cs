namespace Heaveline.Recording;

/// <summary>What a recorded line does. Every number is a pair: of the front and of the rear axle, or the same twice.</summary>
internal enum Operation
{
    /// <summary>A pair known when the record was made.</summary>
    Constant,

    /// <summary>A number given from outside ahead of a run, twice.</summary>
    Given,

    /// <summary>A pair of the state before a step.</summary>
    State,

    /// <summary>A pair of the road at a step.</summary>
    Road,

    Add,
    Less,
    Times,
    Over,
    Negative,

    /// <summary>a·b + c.</summary>
    Fused,
    Larger,
    Smaller,
    Root,
    Power,

    /// <summary>a to the power b, a the larger of something and c; where a is c in both places it is d.</summary>
    PowerAbove,

    /// <summary>Where a ≤ b, c; elsewhere d.</summary>
    Choice,

    /// <summary>Both places exchanged.</summary>
    Exchanged,

    /// <summary>The first place twice.</summary>
    First,

    /// <summary>The second place twice.</summary>
    Second,

    /// <summary>The first places of two.</summary>
    Joined,
}
