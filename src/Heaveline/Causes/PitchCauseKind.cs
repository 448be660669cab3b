namespace Heaveline.Causes;

/// <summary>What can make a car pitch, in the order in which it is taken out.</summary>
public enum PitchCauseKind
{
    /// <summary>What is in the car.</summary>
    Load,

    /// <summary>The front–rear interconnection.</summary>
    Interconnection,

    /// <summary>The wheelbase, against the speed.</summary>
    Wheelbase,

    /// <summary>The dynamic index: how the mass is spread along the car.</summary>
    DynamicIndex,

    /// <summary>The rear/front frequency ratio.</summary>
    FrequencyRatio,

    /// <summary>The mean damping ratio of both ends.</summary>
    DampingLevel,

    /// <summary>Unequal damping ratios of front and rear.</summary>
    DampingSplit,

    /// <summary>The tyres' rate against the springs'.</summary>
    Tyre,

    /// <summary>Dry friction of the suspension.</summary>
    Friction,

    /// <summary>Bump and rebound stops that are touched.</summary>
    Stops,
}
