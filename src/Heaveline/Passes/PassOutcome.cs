namespace Heaveline.Passes;

/// <summary>How a pass ended.</summary>
public enum PassOutcome
{
    /// <summary>It ran to its end.</summary>
    Completed,

    /// <summary>The body pitched or rolled past 0.35 rad: small angles no longer hold.</summary>
    AngleOutOfRange,

    /// <summary>A wheel went past the hard end of a stop or the end of a gas volume.</summary>
    TravelOutOfRange,

    /// <summary>A displacer's line pressure fell to zero: its fluid would part.</summary>
    LineEmptied,

    /// <summary>The numbers grew without bound: the step was too long for the car.</summary>
    Diverged,
}
